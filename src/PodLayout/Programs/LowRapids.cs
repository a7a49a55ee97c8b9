using System.Collections.Immutable;
using System.Globalization;
using PodLayout.Findings;
using PodLayout.Geometry;
using PodLayout.Parts;

namespace PodLayout.Programs;

/// <summary>Rapid moves that pass below the part's face over the part, under which the pods stand.</summary>
public static class LowRapids
{
    // Told one by one; the rest are counted.
    private const int MostTold = 8;

    // Places looked at along a move are this far apart, and the part is taken larger by half of it.
    private const double StepMm = 1;

    /// <summary>A warning for each such line.</summary>
    /// <remarks>
    /// A way straight up is not one of them: the tool leaves the hole that it made. Nor is the way back down within a drilling
    /// cycle.
    /// </remarks>
    public static ImmutableArray<Finding> Of(ToolPath path, ProgramSetting setting, PartShape shape)
    {
        var wood = Region.Inside(shape.Outline, shape.Holes);
        var near = path.Tools.ToDictionary(
            t => t, t => new RegionIndex(wood.Grow((setting.Tools.TryGetValue(t, out var tool) ? tool.DiameterMm / 2 : 0) + StepMm / 2)));
        List<(Stretch Stretch, double BelowMm)> low = [];
        foreach (var stretch in path.Stretches)
        {
            if (stretch.Kind == StretchKind.Rapid && Below(stretch, setting, near[stretch.ToolNumber]) is { } below)
            {
                low.Add((stretch, below));
            }
        }

        var lines = low.GroupBy(l => l.Stretch.Line).Select(g => g.MaxBy(l => l.BelowMm)).ToList();
        var told = lines.Take(MostTold).Select(l => Finding(path, l.Stretch.Line, string.Create(
            CultureInfo.InvariantCulture, $"a rapid move of tool {l.Stretch.ToolNumber} passes {l.BelowMm:0.##} mm below the part's face over the part.")));
        return lines.Count <= MostTold ? [.. told] :
        [
            .. told,
            Finding(path, lines[MostTold].Stretch.Line, string.Create(
                CultureInfo.InvariantCulture, $"{lines.Count - MostTold} more lines with rapid moves below the part's face over the part, this the first.")),
        ];
    }

    private static Finding Finding(ToolPath path, int line, string message) => new(
        "rapid-low", Severity.Warning, FindingKind.Program, message, new Place.InFile(path.FileName, line), "Let the tool rise above the part's face first.");

    // How far below the face it passes over the part; null when it does not.
    private static double? Below(Stretch stretch, ProgramSetting setting, RegionIndex part)
    {
        TipPoint from = stretch.From, to = stretch.To;
        var isUpright = from.XMm == to.XMm && from.YMm == to.YMm;
        if (stretch.LowestZMm >= setting.FaceZMm || (isUpright && to.ZMm > from.ZMm))
        {
            return null;
        }

        var steps = Math.Max(1, (int)Math.Ceiling(stretch.LengthMm / StepMm));
        double? below = null;
        for (var i = 0; i <= steps; i++)
        {
            var at = stretch.At((double)i / steps);
            var depth = setting.FaceZMm - at.ZMm;
            if (depth > 0 && !(below >= depth) && part.Contains(new Point2(at.XMm, at.YMm) + setting.Offset))
            {
                below = depth;
            }
        }

        return below;
    }
}
