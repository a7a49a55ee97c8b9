using System.Collections.Immutable;
using PodLayout.Findings;
using PodLayout.Geometry;
using PodLayout.Jobs;
using PodLayout.Layouts;
using PodLayout.Seats;
using PodLayout.Support;

namespace PodLayout.Checking;

/// <summary>Every point within its limit of a pod, through the wood.</summary>
internal static class SupportCheck
{
    // Points of a file and those worked out from its rounded outline are nearer than this, and farther apart from their neighbours.
    private const double SamePointMm = 0.05;

    // A reach map sees as far as the limits times this. A little beyond them first, for what rounding moved past its limit; far
    // only where something is out of reach, to say how far.
    private static readonly double[] Stretches = [1.1, 6];

    public static IEnumerable<RuleCheck> Check(
        Job job, Layout layout, ImmutableArray<PodPose> poses, ImmutableArray<UnsupportedStretch> unsupported)
    {
        var told = unsupported.SelectMany(s => s.Points.Select(p => (s.Limit, Cell(p.X), Cell(p.Y)))).ToHashSet();
        var rules = job.Support;
        var (points, shares, pods) = Shares(job, layout, poses);
        var perMm = 1 / Math.Min(rules.OverhangAlongGrainMm, rules.OverhangAcrossGrainMm);
        yield return Kind(
            CheckedRule.EdgeWithinLimit, SupportLimit.Edge, "edge", LayoutCheck.ToleranceMm * perMm, "the overhang limit", "no points");
        yield return Kind(
            CheckedRule.InteriorWithinLimit, SupportLimit.Interior, "interior", LayoutCheck.ToleranceMm / (rules.InteriorSpanMm ?? 1), "the span limit",
            rules.InteriorSpanMm is null ? "no such rule in this job" : "no points");
        yield return Kind(
            CheckedRule.FloorWithinLimit, SupportLimit.ThinFloor, "thin floor's", LayoutCheck.ToleranceMm / rules.ThinFloorSpanMm, "the span limit of thin floors",
            "no thin floors");

        RuleCheck Kind(CheckedRule rule, SupportLimit kind, string word, double tolerance, string limit, string otherwise)
        {
            var tally = new RuleTally(rule, Measure.ShareOfLimit, tolerance);
            int[] outside = [.. Enumerable.Range(0, points.Length).Where(p => points[p].Limit == kind && shares[p] > 1 + tolerance)];
            var left = outside.Where(p => IsLeft(told, points[p])).ToHashSet();
            var beyond = outside.Length - left.Count;
            for (var p = 0; p < points.Length; p++)
            {
                if (points[p].Limit != kind || left.Contains(p))
                {
                    continue;
                }

                var (share, at) = (shares[p], OnBoard(layout, points[p].OnPart));
                var nearest = pods[p] < 0 ? "no pod near" : $"nearest pod {CheckWords.Pod(pods[p])}";
                tally.Add(share, 1, $"{CheckWords.At(at)}, {nearest}", (0, 0), () => (
                    $"{CheckWords.Whole(beyond)} {word} point(s) are beyond {limit}; the worst is at {CheckWords.At(at)} on the board, "
                    + (double.IsInfinity(share) ? "with no pod in reach through the wood." : $"at {CheckWords.Percent(share)} of its limit ({nearest})."),
                    $"Put a pod nearer to that place, or move one towards it."));
            }

            var done = tally.Done(left.Count > 0 ? "no points but those that the plan leaves" : otherwise);
            return left.Count == 0 ? done : done with
            {
                Warnings = done.Warnings.Add(new(
                    UnsupportedFindings.Code, Severity.Warning, FindingKind.Request,
                    $"{CheckWords.Whole(left.Count)} {word} point(s) are beyond {limit}, as the plan says: they stay unsupported.", null,
                    "Deal with them as the plan says before they are cut.")),
            };
        }
    }

    // A point of the plan's stretches, or within rounding of one.
    private static bool IsLeft(HashSet<(SupportLimit, long, long)> told, PointToSupport point)
    {
        var near = from x in new[] { -1, 0, 1 }
                   from y in new[] { -1, 0, 1 }
                   select (point.Limit, Cell(point.OnPart.X) + x, Cell(point.OnPart.Y) + y);
        return told.Count > 0 && near.Any(told.Contains);
    }

    private static long Cell(double mm) => (long)Math.Floor(mm / SamePointMm);

    private static Point2 OnBoard(Layout layout, Point2 p) =>
        Turn.FromDegrees(layout.Placement.AngleDeg).Apply(p) + layout.Placement.ZeroOnBoard;

    private static (ImmutableArray<PointToSupport> Points, double[] Shares, int[] Pods) Shares(
        Job job, Layout layout, ImmutableArray<PodPose> poses)
    {
        var points = PointSampling.Of(job.Part.Shape, job.Support);
        var shares = Enumerable.Repeat(double.PositiveInfinity, points.Length).ToArray();
        var pods = Enumerable.Repeat(-1, points.Length).ToArray();
        PodFace?[] faces = [.. layout.Pods.Select((pod, i) => FaceOf(job, layout, pod, poses[i]))];
        foreach (var stretch in Stretches)
        {
            if (layout.Pods.IsEmpty || shares.All(double.IsFinite))
            {
                break;
            }

            // The pivot is the drawing's zero: centres of pods are then taken from where it lies on the board.
            var reach = new TurnedReach(
                ReachMap.Of(job.Part, job.Support, stretch), Turn.FromDegrees(layout.Placement.AngleDeg), default);
            for (var p = 0; p < points.Length; p++)
            {
                if (double.IsFinite(shares[p]))
                {
                    continue;
                }

                for (var i = 0; i < faces.Length; i++)
                {
                    if (faces[i] is not { } face)
                    {
                        continue;
                    }

                    var centre = layout.Pods[i].Centre - layout.Placement.ZeroOnBoard;
                    var share = reach.MayReach(p, face, centre) ? reach.Share(p, face, centre) * stretch : double.PositiveInfinity;
                    if (share < shares[p])
                    {
                        (shares[p], pods[p]) = (share, i);
                    }
                }
            }
        }

        return (points, shares, pods);
    }

    // A pod under a loose piece supports nothing of the part; one whose body passes an edge where a skin is left, as far as its seal.
    private static PodFace? FaceOf(Job job, Layout layout, PlacedPod pod, PodPose pose)
    {
        if (pod.Holds is not null)
        {
            return null;
        }

        var shape = job.Part.Shape;
        var turn = Turn.FromDegrees(layout.Placement.AngleDeg);
        var body = StandingBody.Of(pod, 0);
        var isPast = shape.Skinned.Any(ring => body.Clear(
            RingOnBoard.Of("", ring == 0 ? shape.Outline : shape.Holes[ring - 1], turn, layout.Placement.ZeroOnBoard), ring == 0).Mm
            < job.Margins.CutClearanceMm - LayoutCheck.ToleranceMm);
        return PodFace.Of(pose, insetMm: isPast ? pod.Type.SealInsetAboveMm : 0);
    }
}
