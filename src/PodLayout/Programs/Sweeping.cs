using System.Collections.Immutable;
using System.Globalization;
using PodLayout.Findings;
using PodLayout.Geometry;

namespace PodLayout.Programs;

/// <summary>What the tools of a program sweep where they go lower than they may above pods.</summary>
public static class Sweeping
{
    // How far the line that is shown of a tip's way may lie from it, mm: less than any picture shows.
    private const double ShownMm = 0.05;

    // With more points than this a tool's cut is swept a little larger and much quicker.
    private const int MuchPoints = 2000;

    /// <summary>The cuts below the height, by tool in order of number; a refusal when a tool is not in the table.</summary>
    /// <param name="path">The program.</param>
    /// <param name="setting">How it stands to the part.</param>
    /// <param name="notBelowMm">
    /// Moves of flat tools that lie wholly lower than this above the underside may be left out, mm; null to take all.
    /// </param>
    public static Outcome<IReadOnlyList<ToolCut>> Of(ToolPath path, ProgramSetting setting, double? notBelowMm = null)
    {
        if (Missing(path, setting.Tools) is { } missing)
        {
            return Outcome<IReadOnlyList<ToolCut>>.Refuse(missing);
        }

        var chains = new TipChains(setting);
        var byTool = new SortedDictionary<int, (int First, int Last, double Lowest, int LowestLine)>();
        var stretches = path.Stretches.AsSpan();
        foreach (ref readonly var stretch in stretches)
        {
            var tool = setting.Tools[stretch.ToolNumber];
            if (stretch.HighestEndMm - setting.UndersideZMm < notBelowMm && tool.Form is CutterForm.Flat
                && (stretch.TurnRad == 0 || stretch.Plane == ArcPlane.Xy))
            {
                chains.Break();
                continue;
            }

            if (!chains.Add(stretch, tool))
            {
                continue;
            }

            var lowest = stretch.LowestZMm - setting.UndersideZMm;
            byTool[stretch.ToolNumber] = byTool.TryGetValue(stretch.ToolNumber, out var seen)
                ? (seen.First, stretch.Line, Math.Min(seen.Lowest, lowest), lowest < seen.Lowest ? stretch.Line : seen.LowestLine)
                : (stretch.Line, stretch.Line, lowest, stretch.Line);
        }

        var cuts = byTool.Select(t => Cut(setting.Tools[t.Key], [.. chains.Chains.Where(c => c.ToolNumber == t.Key)], t.Value));
        return Outcome<IReadOnlyList<ToolCut>>.Of(cuts.ToArray());
    }

    /// <summary>The tool and line that come nearest to a point of the drawing below the height; null when nothing is cut.</summary>
    public static (Stretch Stretch, double DistanceMm)? Nearest(ToolPath path, ProgramSetting setting, Point2 point)
    {
        (Stretch, double)? best = null;
        foreach (var stretch in path.Stretches)
        {
            var chains = new TipChains(setting);
            if (!chains.Add(stretch, setting.Tools[stretch.ToolNumber]))
            {
                continue;
            }

            var distance = chains.Chains.Min(c => Distance(c, point));
            best = best is null || distance < best.Value.Item2 ? (stretch, distance) : best;
        }

        return best;
    }

    private static Finding? Missing(ToolPath path, ImmutableSortedDictionary<int, Tool> tools)
    {
        var missing = path.Tools.Where(t => !tools.ContainsKey(t)).ToList();
        if (missing.Count == 0)
        {
            return null;
        }

        var line = path.Stretches.First(s => s.ToolNumber == missing[0]).Line;
        var message = missing[0] == 0
            ? "a move comes before any tool is named by T; expected a tool, or one of number 0 in the table."
            : string.Create(CultureInfo.InvariantCulture, $"tool {missing[0]} moves here, but it is not in the tool table{(missing.Count > 1 ? $" (nor {string.Join(", ", missing.Skip(1))})" : "")}.");
        return new(
            "tool-missing", Severity.Refused, FindingKind.Program, message, new Place.InFile(path.FileName, line), "Add its diameter to the tools of the job's program.");
    }

    private static ToolCut Cut(Tool tool, List<TipChain> chains, (int First, int Last, double Lowest, int LowestLine) seen)
    {
        var distinct = Distinct(chains);
        var isMuch = distinct.Sum(c => c.Points.Count) > MuchPoints;
        return new(
            tool,
            Region.UnionOf(isMuch ? distinct.AsParallel().AsOrdered().Select(c => c.Swept(true)) : distinct.Select(c => c.Swept(false))),
            [.. distinct.Select(c => c.Shown(ShownMm).ToImmutableArray())],
            seen.First,
            seen.Last,
            seen.Lowest,
            seen.LowestLine);
    }

    private static double Distance(TipChain chain, Point2 point)
    {
        var points = chain.Points;
        var toLine = chain.CircleMm is { } circle ? Math.Abs((point - points[0]).Length - circle)
            : points.Zip(points.Skip(1).DefaultIfEmpty(points[0]), (a, b) => ToStep(a, b, point)).Min();
        return toLine - chain.RadiusMm;
    }

    private static List<TipChain> Distinct(List<TipChain> chains)
    {
        List<TipChain> distinct = [];
        foreach (var alike in chains.GroupBy(c => (c.Points.Count, c.Points[0], c.Points[^1])))
        {
            List<TipChain> kept = [];
            foreach (var chain in alike.Where(chain => !kept.Exists(chain.IsSameAs)))
            {
                kept.Add(chain);
            }

            distinct.AddRange(kept);
        }

        return distinct;
    }

    private static double ToStep(Point2 a, Point2 b, Point2 p)
    {
        var way = b - a;
        var square = way.Dot(way);
        var share = square == 0 ? 0 : Math.Clamp((p - a).Dot(way) / square, 0, 1);
        return (p - (a + way * share)).Length;
    }
}
