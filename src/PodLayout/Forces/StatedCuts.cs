using System.Globalization;
using PodLayout.Findings;

namespace PodLayout.Forces;

/// <summary>Holds what the job states of a tool's cut against what its program cuts, while that is followed.</summary>
/// <param name="toolNumber">The tool.</param>
/// <param name="diameterMm">Its diameter.</param>
internal sealed class StatedCuts(int toolNumber, double diameterMm)
{
    // A corner or the way from row to row takes more for a moment: what counts lasts for some diameters of the path.
    private const double DepthLasts = 1;
    private const double WidthLasts = 2;

    // Rounding of depths, mm, and of widths in a raster, as a share of the diameter.
    private const double DepthRoomMm = 0.2;
    private const double WidthRoom = 0.2;

    private Run _depth, _width, _chip;

    /// <summary>Whether the tool is followed without a break.</summary>
    public void Break() => (_depth.From, _width.From) = (null, null);

    /// <summary>A cut of a depth that the job states otherwise.</summary>
    public void Depth(double foundMm, double statedMm, double onPathMm, int line) =>
        Look(ref _depth, foundMm, statedMm, statedMm + DepthRoomMm, onPathMm, DepthLasts * diameterMm, line);

    /// <summary>A cut of a width that the job states otherwise.</summary>
    public void Width(double foundMm, double statedMm, double onPathMm, int line) =>
        Look(ref _width, foundMm, statedMm, statedMm + WidthRoom * diameterMm, onPathMm, WidthLasts * diameterMm, line);

    /// <summary>A feed for each cutting edge.</summary>
    public void Chip(double chipMm, int line)
    {
        if (chipMm > CutterDoubts.ThickestChipMm && chipMm > _chip.WorstMm)
        {
            (_chip.WorstMm, _chip.Line) = (chipMm, line);
        }
    }

    /// <summary>A warning for each that does not agree.</summary>
    /// <param name="file">The program.</param>
    public IEnumerable<Finding> Findings(string file)
    {
        if (_depth.WorstMm > 0)
        {
            yield return Warn(file, _depth.Line, "cut-above-stated",
                Text($"tool {toolNumber} cuts {_depth.WorstMm:0.##} mm deep here; passDepthMm says {_depth.StatedMm:0.##} mm, and the holding factor is reckoned with that."),
                "Correct passDepthMm, or take it out: then the program's own depths count.");
        }

        if (_width.WorstMm > 0)
        {
            yield return Warn(file, _width.Line, "cut-above-stated",
                Text($"tool {toolNumber} cuts about {_width.WorstMm:0.#} mm wide here; widthMm says {_width.StatedMm:0.##} mm, and the holding factor is reckoned with that."),
                "Correct widthMm, or take it out: then the whole width of the tool counts.");
        }

        if (_chip.WorstMm > 0)
        {
            yield return Warn(file, _chip.Line, "chip-too-thick",
                Text($"tool {toolNumber} is fed {_chip.WorstMm:0.###} mm for each cutting edge here; expected at most {CutterDoubts.ThickestChipMm:0.##} mm."),
                "Correct the feed, the spindle speed or the flutes.");
        }
    }

    private static void Look(ref Run run, double found, double stated, double most, double onPath, double lasts, int line)
    {
        if (found <= most)
        {
            run.From = null;
            return;
        }

        if (run.From is null)
        {
            (run.From, run.FromLine, run.MostMm) = (onPath, line, 0);
        }

        // What it takes all along the run, not for a moment.
        run.MostMm = Math.Max(run.MostMm, found);
        if (onPath - run.From >= lasts && run.MostMm > run.WorstMm)
        {
            (run.WorstMm, run.StatedMm, run.Line) = (run.MostMm, stated, run.FromLine);
        }
    }

    private static Finding Warn(string file, int line, string code, string message, string remedy) =>
        new(code, Severity.Warning, FindingKind.Program, message, new Place.InFile(file, line), remedy);

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);

    private struct Run
    {
        public double? From;
        public int FromLine;
        public double MostMm;
        public double WorstMm;
        public double StatedMm;
        public int Line;
    }
}
