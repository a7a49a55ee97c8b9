using System.Collections.Immutable;
using System.Globalization;
using PodLayout.Findings;
using PodLayout.Geometry;
using PodLayout.Jobs;
using PodLayout.Layouts;
using PodLayout.Support;

namespace PodLayout.Placing;

/// <summary>Why there is no layout: which stretches of edge cannot be supported, and what would do.</summary>
internal static class Impossible
{
    // How far beyond the limit a pod is looked for, to say what overhang would do: some times the limit, and half a metre at
    // least, since a limit of a few millimetres may itself be the cause.
    private const double LeastStretch = 8;
    private const double LeastLookMm = 500;

    /// <summary>The stretches that no pod can support, at one placement or over all offsets of a ground.</summary>
    /// <param name="job">The job.</param>
    /// <param name="reach">Its reach map.</param>
    /// <param name="ground">Seats, whether or not the board has them.</param>
    /// <param name="available">Which of them the board has.</param>
    /// <param name="box">The offsets that the ground stands for.</param>
    public static ImmutableArray<UnsupportedStretch> Stretches(
        Job job, ReachMap reach, SearchGround ground, bool[] available, OffsetBox box)
    {
        var points = reach.Points;
        var near = new BoxReach(ground.Frame, ground.Seats, box);
        ImmutableArray<int[]> supporters = [.. Enumerable.Range(0, points.Length).Select(near.SupportersOf)];
        bool[] isOut = [.. supporters.Select(of => !of.Any(s => available[s]))];

        if (!isOut.Contains(true))
        {
            return [];
        }

        var stretch = Math.Max(
            LeastStretch, LeastLookMm / Math.Min(job.Support.OverhangAlongGrainMm, job.Support.OverhangAcrossGrainMm));
        var wide = new TurnedReach(
            ReachMap.Of(job.Part, job.Support, stretch), Turn.FromDegrees(ground.Frame.AngleDeg), ground.Frame.Pivot);
        return
        [
            .. Runs(points, isOut).Select(run => Describe(job, points, run, ground, supporters, available, box, wide, stretch)),
        ];
    }

    // Neighbouring points of one ring that are out of reach belong together; so do all interior points.
    private static IEnumerable<int[]> Runs(ImmutableArray<PointToSupport> points, bool[] isOut)
    {
        foreach (var ring in points.Select((point, index) => (point.Ring, index)).GroupBy(p => p.Ring, p => p.index))
        {
            int[] members = [.. ring];
            if (ring.Key < 0 || members.All(p => isOut[p]))
            {
                if (members.Any(p => isOut[p]))
                {
                    yield return [.. members.Where(p => isOut[p])];
                }

                continue;
            }

            // Start behind a supported point, so that no run is cut in two where the ring closes.
            var start = Array.FindIndex(members, p => !isOut[p]);
            var run = new List<int>();
            for (var i = 1; i <= members.Length; i++)
            {
                var p = members[(start + i) % members.Length];
                if (isOut[p])
                {
                    run.Add(p);
                }
                else if (run.Count > 0)
                {
                    yield return [.. run];
                    run.Clear();
                }
            }
        }
    }

    private static UnsupportedStretch Describe(
        Job job,
        ImmutableArray<PointToSupport> points,
        int[] run,
        SearchGround ground,
        ImmutableArray<int[]> supporters,
        bool[] available,
        OffsetBox box,
        TurnedReach wide,
        double stretch)
    {
        var limits = points[run[0]].Limit;
        var isEdge = limits == SupportLimit.Edge;
        double length = 0;
        for (var i = 1; isEdge && i < run.Length; i++)
        {
            length += (points[run[i]].OnPart - points[run[i - 1]].OnPart).Length;
        }

        double? needed = 0;
        foreach (var p in run)
        {
            needed = Math.Max(needed ?? 0, Nearest(p, ground, available, box, wide) * stretch) is var share
                && double.IsFinite(share) && needed is not null ? share : null;
        }

        var limit = limits switch
        {
            SupportLimit.Edge => job.Support.OverhangAcrossGrainMm,
            SupportLimit.Interior => job.Support.InteriorSpanMm ?? 0,
            _ => job.Support.ThinFloorSpanMm,
        };
        double? wouldDo = needed is { } n ? Math.Ceiling(n * limit) : null;
        return new(
            points[run[0]].OnPart, points[run[^1]].OnPart, length, limits, Cause(job, run, ground, supporters, limits, wouldDo), wouldDo);
    }

    private static string Cause(
        Job job, int[] run, SearchGround ground, ImmutableArray<int[]> supporters, SupportLimit limit, double? wouldDo)
    {
        var what = limit == SupportLimit.Edge ? "" : string.Create(
            CultureInfo.InvariantCulture, $"{run.Length} {(limit == SupportLimit.Interior ? "interior point(s)" : "point(s) of a thin floor")}: ");
        var far = wouldDo is { } mm
            ? string.Create(CultureInfo.InvariantCulture, $"the nearest pod that could stand would leave {mm:0} mm")
            : "no pod could stand anywhere near";
        if (run.Any(p => supporters[p].Length > 0))
        {
            return $"{what}the board has no place for a pod there (no working port under it, off the usable area, or on a pin, a stop, or a spot damaged or to be avoided); {far}{Larger(job, run, ground, supporters)}.";
        }

        return ground.Seats.IsEmpty
            ? $"{what}no pod fits anywhere under the part: with these margins it is too narrow for every pod type, or taken up by cuts, defects and spots to avoid."
            : $"{what}no pod stands near enough: the wood there is too narrow, or taken up by a cut, a defect or a spot to avoid, or no groove lies right, or the limit is less than the distance that pods keep; {far}.";
    }

    // Where only small pods find room under the wood, that is half of the cause.
    private static string Larger(Job job, int[] run, SearchGround ground, ImmutableArray<int[]> supporters)
    {
        var fitting = run.SelectMany(p => supporters[p]).Select(s => ground.Frame.Poses[ground.Seats[s].Pose].Type.Name).ToHashSet(StringComparer.Ordinal);
        var others = job.Shop.Pods.Where(t => t.Stock > 0 && !fitting.Contains(t.Name)).Select(t => t.Name).ToList();
        return others.Count == 0 ? ""
            : $". Only {string.Join(", ", fitting.Order(StringComparer.Ordinal))} would find room there under sound wood; for {string.Join(", ", others)} the cuts, defects, edges and spots to avoid leave none";
    }

    private static double Nearest(
        int p, SearchGround ground, bool[] available, OffsetBox box, TurnedReach wide)
    {
        var best = double.PositiveInfinity;
        for (var s = 0; s < ground.Seats.Length; s++)
        {
            if (available[s] && ground.Frame.PieceOver(ground.Seats[s].Pose) is null)
            {
                var seat = ground.Seats[s];
                best = Math.Min(best, wide.Share(
                    p, ground.Frame.Faces[seat.Pose], ground.Frame.CentreOf(seat, box.Centre)));
            }
        }

        return best;
    }

    /// <summary>The stretches as findings.</summary>
    public static IEnumerable<Finding> AsFindings(ImmutableArray<UnsupportedStretch> stretches, string drawing) =>
        stretches.Select((s, i) => new Finding(
            "edge-unsupported",
            Severity.Refused,
            FindingKind.NoLayout,
            string.Create(
                CultureInfo.InvariantCulture,
                $"Stretch {i + 1}, {(s.IsEdge ? $"{s.LengthMm:0} mm of edge" : s.Limit == SupportLimit.Interior ? "interior" : "a thin floor")}, from ({s.From.X:0.#}, {s.From.Y:0.#}) to ({s.To.X:0.#}, {s.To.Y:0.#}) mm: {s.Cause}"),
            new Place.InDrawing(drawing, s.From.X, s.From.Y),
            s.OverhangThatWouldDoMm is { } mm
                ? string.Create(CultureInfo.InvariantCulture, $"Allow {(s.IsEdge ? "an overhang" : s.Limit == SupportLimit.Interior ? "an interior span" : "a span of thin floors")} of {mm:0} mm, or bring a smaller pod.")
                : "Bring a smaller pod, or make the margins smaller."));
}
