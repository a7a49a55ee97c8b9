using System.Collections.Immutable;
using System.Globalization;
using PodLayout.Findings;
using PodLayout.Geometry;
using PodLayout.Jobs;
using PodLayout.Layouts;
using PodLayout.Support;

namespace PodLayout.Placing;

/// <summary>What stays beyond the limits of every pod: which stretches, why, and what would do.</summary>
internal static class Stretches
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
    /// <param name="layout">The pods of a layout there: then the stretches that it leaves; null for those that no pod can support.</param>
    /// <param name="isBrief">Whether time is up: causes are then not looked for.</param>
    public static ImmutableArray<UnsupportedStretch> Of(
        Job job,
        ReachMap reach,
        SearchGround ground,
        bool[] available,
        OffsetBox box,
        ImmutableArray<FrameSeat>? layout = null,
        bool isBrief = false)
    {
        var points = reach.Points;
        var near = new BoxReach(ground.Frame, ground.Seats, box);
        ImmutableArray<int[]> supporters = [.. Enumerable.Range(0, points.Length).Select(near.SupportersOf)];
        int[]? filled = layout is null ? null : [.. Enumerable.Range(0, ground.Seats.Length).Where(s => layout.Value.Contains(ground.Seats[s]))];
        bool[] isOut = [.. supporters.Select((of, p) => filled is null ? !of.Any(s => available[s]) : !filled.Any(s => Supports(s, p)))];

        if (!isOut.Contains(true))
        {
            return [];
        }

        bool Supports(int seat, int point) => near.MayReach(seat, point)
            && ground.Frame.Reach.Share(point, ground.Frame.Faces[ground.Seats[seat].Pose], ground.Frame.CentreOf(ground.Seats[seat], box.Centre)) <= 1;

        var stretch = Math.Max(
            LeastStretch, LeastLookMm / Math.Min(job.Support.OverhangAlongGrainMm, job.Support.OverhangAcrossGrainMm));
        var wide = new TurnedReach(
            ReachMap.Of(job.Part, job.Support, stretch), Turn.FromDegrees(ground.Frame.AngleDeg), ground.Frame.Pivot);
        var lengths = PointLengths.Of(points, job.Support);
        var causes = isBrief ? null : new StretchCauses(job, reach, ground, available, box, filled);
        return
        [
            .. Runs(points, isOut).OrderBy(run => run[0]).Select(run => Describe(job, points, run, ground, supporters, available, box, wide, stretch, lengths, causes, filled)),
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
        double stretch,
        ImmutableArray<int> lengths,
        StretchCauses? causes,
        int[]? filled)
    {
        var limits = points[run[0]].Limit;
        var isEdge = limits == SupportLimit.Edge;
        var length = isEdge ? run.Sum(p => lengths[p]) / (double)PointLengths.ToMm : 0;
        double? Needed(IReadOnlyCollection<int> seats) =>
            run.Max(p => Nearest(p, ground, seats, box, wide) * stretch) is var share && double.IsFinite(share) ? share : null;
        var needed = Needed([.. Enumerable.Range(0, ground.Seats.Length).Where(s => available[s])]);

        var limit = UnsupportedFindings.LimitMm(limits, job.Support);
        double? wouldDo = needed is { } n ? Math.Ceiling(n * limit) : null;
        return new(
            points[run[0]].OnPart, points[run[^1]].OnPart, length, limits, causes?.Of(run, supporters) ?? "the cause was not looked for, since time was up.", wouldDo)
        {
            Points = [.. run.Select(p => points[p].OnPart)],
            OverhangNowMm = filled is not null && Needed(filled) is { } now ? Math.Ceiling(now * limit) : null,
        };
    }

    private static double Nearest(int p, SearchGround ground, IReadOnlyCollection<int> seats, OffsetBox box, TurnedReach wide)
    {
        var best = double.PositiveInfinity;
        foreach (var s in seats)
        {
            var seat = ground.Seats[s];
            if (ground.Frame.PieceOver(seat.Pose) is null)
            {
                best = Math.Min(best, wide.Share(p, ground.Frame.Faces[seat.Pose], ground.Frame.CentreOf(seat, box.Centre)));
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
            "Plan it with --try: what may mend it is then planned, and told with what it came to."));
}
