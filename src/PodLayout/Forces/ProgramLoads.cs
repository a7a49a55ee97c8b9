using System.Globalization;
using PodLayout.Findings;
using PodLayout.Geometry;
using PodLayout.Jobs;
using PodLayout.Parts;
using PodLayout.Programs;

namespace PodLayout.Forces;

/// <summary>The loads of a posted program: where its tools meet wood that has not been taken away before.</summary>
internal sealed class ProgramLoads
{
    // Wood less high than this above the tip is not counted as a cut, mm: rounding, and the last hair of a finished floor.
    private const double LeastDepthMm = 0.02;

    // So many ranges of lines are told of a tool.
    private const int MostRanges = 6;

    private readonly ToolPath _path;
    private readonly ProgramSetting _setting;
    private readonly Part _part;
    private readonly LoadGathering _loads;
    private readonly WoodLeft _wood;
    private readonly SortedDictionary<int, (CutterCut Cut, int Pass, List<(int First, int Last)> Lines)> _tools = [];
    private readonly SortedDictionary<int, StatedCuts> _stated = [];

    // Where the tool has just been: taken away once it is a whole diameter on, so that its own last steps do not hide what it cuts.
    private readonly Queue<(Point2 At, double TipMm, double OnPathMm)> _behind = new();
    private double _onPath;
    private int _cutting = int.MinValue;
    private double _lastLookedAt = double.NegativeInfinity;
    private double _lastTip;

    private ProgramLoads(ToolPath path, ProgramSetting setting, CutRequest request, Part part, Region blank, LoadGathering loads)
    {
        (_path, _setting, _part, _loads) = (path, setting, part, loads);
        var smallest = path.Tools.Where(setting.Tools.ContainsKey).Select(t => setting.Tools[t].DiameterMm).DefaultIfEmpty(CutterCut.UsualDiameterMm).Min();
        _wood = new(blank, part.ThicknessMm, smallest);
        foreach (var number in path.Tools.Where(setting.Tools.ContainsKey))
        {
            var setup = (request.Program?.Cutters.GetValueOrDefault(number) ?? new CutterSetup("$.program.tools")).Over(request.Cutter);
            _stated[number] = new(number, setting.Tools[number].DiameterMm);
            _tools[number] = (new(setup, setting.Tools[number].DiameterMm, part), -1, []);
        }
    }

    /// <summary>Adds the loads of a program; every tool of it must be in the table.</summary>
    /// <param name="path">The program.</param>
    /// <param name="setting">How it stands to the part.</param>
    /// <param name="request">What the job says of cuts.</param>
    /// <param name="part">The part.</param>
    /// <param name="blank">Where there is wood before it runs.</param>
    /// <param name="loads">Where they go.</param>
    /// <returns>Warnings where the program cuts more than the job states.</returns>
    public static IReadOnlyList<Finding> Add(ToolPath path, ProgramSetting setting, CutRequest request, Part part, Region blank, LoadGathering loads)
    {
        ProgramLoads run = new(path, setting, request, part, blank, loads);
        var tool = int.MinValue;
        foreach (ref readonly var stretch in path.Stretches.AsSpan())
        {
            if (!run._tools.ContainsKey(stretch.ToolNumber))
            {
                continue;
            }

            if (stretch.ToolNumber != tool || stretch.Kind is StretchKind.Rapid)
            {
                run.Clear(tool);
                tool = stretch.ToolNumber;
            }

            if (stretch.Kind is StretchKind.Line or StretchKind.Arc)
            {
                run.Follow(stretch);
            }
        }

        run.NameTools(request);
        return [.. run._stated.Values.SelectMany(s => s.Findings(path.FileName))];
    }

    private void Follow(in Stretch stretch)
    {
        var tool = _setting.Tools[stretch.ToolNumber];
        var length = stretch.LengthMm;
        if (length == 0 || stretch.LowestZMm >= _setting.FaceZMm)
        {
            _onPath += length;
            return;
        }

        // A quarter of the radius is a hundredth of it in what is left between two discs.
        var step = Math.Min(LoadGathering.StepMm, Math.Max(0.25, tool.DiameterMm / 8));
        var steps = Math.Max(1, (int)Math.Ceiling(length / step));
        var before = stretch.From;
        for (var i = 1; i <= steps; i++)
        {
            var at = stretch.At((double)i / steps);
            _onPath += length / steps;
            if (_onPath - _lastLookedAt >= step * 0.999 || Math.Abs(at.ZMm - _lastTip) > LeastDepthMm || i == steps)
            {
                Look(stretch, tool, before, at);
                (_lastLookedAt, _lastTip) = (_onPath, at.ZMm);
            }

            before = at;
        }
    }

    private void Look(in Stretch stretch, Tool tool, TipPoint before, TipPoint at)
    {
        var centre = new Point2(at.XMm, at.YMm) + _setting.Offset;
        var tip = at.ZMm - _setting.UndersideZMm;
        while (_behind.TryPeek(out var past) && _onPath - past.OnPathMm > tool.DiameterMm)
        {
            Take(tool, past.At, past.TipMm);
            _behind.Dequeue();
        }

        _behind.Enqueue((centre, tip, _onPath));
        var top = Math.Min(_part.ThicknessMm, _wood.HighestUnder(centre, tool.DiameterMm / 2));
        var depth = top - Math.Max(0, tip);
        if (!(depth > LeastDepthMm))
        {
            return;
        }

        var (cut, pass, lines) = _tools[stretch.ToolNumber];
        if (pass < 0)
        {
            pass = _loads.Begin($"tool {stretch.ToolNumber.ToString(CultureInfo.InvariantCulture)}", "", cut.IsWorkedOut);
            _tools[stretch.ToolNumber] = (cut, pass, lines);
        }

        Cuts(stretch, lines);
        var forces = Forces(stretch, cut, before, at, depth);
        _loads.Add(pass, centre, top - depth / 2, forces, depth);
        if (tip < _setting.LowestTipMm)
        {
            _loads.AddFreeing(pass, centre, tool.DiameterMm / 2, top - depth / 2, forces, depth);
        }

        Compare(stretch, tool, cut, before, at, centre, depth);
    }

    // Where another tool has cut in between a range of its own begins.
    private void Cuts(in Stretch stretch, List<(int First, int Last)> lines)
    {
        if (_cutting == stretch.ToolNumber)
        {
            lines[^1] = (Math.Min(lines[^1].First, stretch.Line), Math.Max(lines[^1].Last, stretch.Line));
        }
        else
        {
            lines.Add((stretch.Line, stretch.Line));
        }

        _cutting = stretch.ToolNumber;
    }

    // Ranges that overlap, as those of a loop do, are one.
    private static string Ranges(List<(int First, int Last)> lines)
    {
        List<(int First, int Last)> apart = [];
        foreach (var range in lines.Order())
        {
            if (apart.Count > 0 && range.First <= apart[^1].Last)
            {
                apart[^1] = (apart[^1].First, Math.Max(apart[^1].Last, range.Last));
            }
            else
            {
                apart.Add(range);
            }
        }

        var words = apart.Take(MostRanges).Select(r => string.Create(CultureInfo.InvariantCulture, $"{r.First} to {r.Last}"));
        return string.Join(", ", words) + (apart.Count <= MostRanges ? "" : string.Create(CultureInfo.InvariantCulture, $" and in {apart.Count - MostRanges} more ranges"));
    }

    // With what the job says of the tool. How much a pointed or round tool takes of the wood under it is not known so well.
    private void Compare(in Stretch stretch, Tool tool, CutterCut cut, TipPoint before, TipPoint at, Point2 centre, double depth)
    {
        var stated = _stated[stretch.ToolNumber];
        stated.Chip(Chip(stretch, cut), stretch.Line);
        var way = new Point2(at.XMm - before.XMm, at.YMm - before.YMm);
        if (!cut.IsWorkedOut || tool.Form is not CutterForm.Flat || way.Length <= Math.Abs(at.ZMm - before.ZMm))
        {
            return;
        }

        if (cut.StatedPassDepthMm is { } pass)
        {
            stated.Depth(depth, pass, _onPath, stretch.Line);
        }

        if (cut.StatedWidthMm is { } width)
        {
            var found = _wood.WidthAhead(centre, way * (1 / way.Length), tool.DiameterMm / 2, at.ZMm - _setting.UndersideZMm + LeastDepthMm);
            stated.Width(found, width, _onPath, stretch.Line);
        }
    }

    private static double Chip(in Stretch stretch, CutterCut cut) => cut.ChipMm(
        stretch.FeedMmPerMin > 0 ? stretch.FeedMmPerMin : cut.FeedMmPerMin, stretch.SpindleRpm > 0 ? stretch.SpindleRpm : cut.SpindleRpm);

    private static CutForces Forces(in Stretch stretch, CutterCut cut, TipPoint before, TipPoint at, double depth)
    {
        var way = new Point2(at.XMm - before.XMm, at.YMm - before.YMm);
        var (flat, drop) = (way.Length, Math.Max(0, before.ZMm - at.ZMm));
        var whole = at.DistanceTo(before);
        var chip = Chip(stretch, cut);
        if (whole == 0 || flat <= 1e-9 * whole)
        {
            return drop > 0 ? cut.Down(chip) : default;
        }

        depth = Math.Min(depth, cut.StatedPassDepthMm ?? depth);
        return cut.Along(way * (1 / flat), 0, chip * flat / whole, depth, chip * drop / whole);
    }

    // A tool that narrows towards its tip leaves wood beside it: it takes what its outline passes, in a few steps of height.
    private void Take(Tool tool, Point2 at, double tip)
    {
        if (tool.Form is CutterForm.Flat)
        {
            _wood.Take(at, tool.DiameterMm / 2, tip);
            return;
        }

        const int Steps = 4;
        for (var i = 1; i <= Steps; i++)
        {
            var above = tool.DiameterMm / 2 * i / Steps;
            _wood.Take(at, tool.RadiusUpTo(above), tip + above);
        }
    }

    private void Clear(int tool)
    {
        while (_behind.TryDequeue(out var past))
        {
            Take(_setting.Tools[tool], past.At, past.TipMm);
        }

        _lastLookedAt = double.NegativeInfinity;
        if (_stated.TryGetValue(tool, out var stated))
        {
            stated.Break();
        }
    }

    private void NameTools(CutRequest request)
    {
        foreach (var (number, (cut, pass, lines)) in _tools.Where(t => t.Value.Pass >= 0))
        {
            _loads.Rename(pass, string.Create(CultureInfo.InvariantCulture, $"{_path.FileName} lines {Ranges(lines)}: {cut.Words}"));
            _loads.Assume(cut.Assumed(fromProgram: true));
        }

        var cuts = _path.Stretches.Where(s => s.Kind is StretchKind.Line or StretchKind.Arc && s.LowestZMm < _setting.FaceZMm && _tools.ContainsKey(s.ToolNumber)).ToList();
        if (cuts.Exists(s => s.FeedMmPerMin <= 0))
        {
            _loads.Assume(Text($"Where the program names no feed, {_tools.Values.Max(t => t.Cut.FeedMmPerMin) / 1000:0.###} m/min are reckoned with."));
        }

        if (cuts.Exists(s => s.SpindleRpm <= 0))
        {
            _loads.Assume(Text($"Where the program does not start the spindle, {_tools.Values.Min(t => t.Cut.SpindleRpm):0} rpm are reckoned with."));
        }

        _loads.Assume("The depth of a cut is the height of the wood that no earlier move has taken away under the tool, in a raster of the blank; its width is the tool's.");
        if (request.Blank is null)
        {
            _loads.Assume("The blank is taken to reach one tool's width beyond the part's outline.");
        }
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
