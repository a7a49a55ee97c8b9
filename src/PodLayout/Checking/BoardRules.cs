using System.Collections.Immutable;
using PodLayout.Geometry;
using PodLayout.Jobs;
using PodLayout.Layouts;
using PodLayout.Seats;
using PodLayout.Shops;

namespace PodLayout.Checking;

/// <summary>Where bodies stand on the board: apart, on the lattice, inside the usable area, off what is in the way.</summary>
internal static class BoardRules
{
    public static IEnumerable<RuleCheck> Check(Job job, Layout layout, ImmutableArray<PodPose> poses)
    {
        var shop = job.Shop;
        yield return Apart(shop, layout, poses);
        yield return OnTheLattice(shop.Board, layout);
        yield return InsideUsableArea(shop.Board, layout);
        yield return ClearOfObstacles(job, layout, poses);
    }

    private static RuleCheck Apart(Shop shop, Layout layout, ImmutableArray<PodPose> poses)
    {
        var tally = new RuleTally(CheckedRule.PodsApart, Measure.LeastMm, LayoutCheck.ToleranceMm);
        for (var i = 0; i < layout.Pods.Length; i++)
        {
            for (var k = i + 1; k < layout.Pods.Length; k++)
            {
                var mm = Clearance.BetweenPods(poses[i], layout.Pods[i].BodyBox, poses[k], layout.Pods[k].BodyBox);
                var (a, b) = (CheckWords.Pod(i), CheckWords.Pod(k));
                tally.Add(mm, shop.PodGapMm, $"{a} and {b}", (i, k), () => (
                    mm < 0 ? $"{a} and {b} overlap by {CheckWords.Mm(-mm)} mm."
                        : $"{a} and {b} are {CheckWords.Mm(mm)} mm apart, less than the pod gap of {CheckWords.Mm(shop.PodGapMm)} mm.",
                    $"Move one of them away from the other by {CheckWords.Whole(Math.Ceiling((shop.PodGapMm - mm) / shop.Board.PitchMm))} pitch(es) or more."));
            }
        }

        return tally.Done("fewer than two pods");
    }

    private static RuleCheck OnTheLattice(GridBoard board, Layout layout)
    {
        var tally = new RuleTally(CheckedRule.OnTheLattice, Measure.MostMm, LayoutCheck.ToleranceMm);
        for (var i = 0; i < layout.Pods.Length; i++)
        {
            var (pod, name) = (layout.Pods[i], CheckWords.Pod(i));
            // Before the first groove there is none to stand on: the pod is off by the way back to it.
            var there = new Point2(
                board.ColumnXMm(Math.Max(0, pod.Column)) + pod.ExtentXMm / 2, board.RowYMm(Math.Max(0, pod.Row)) + pod.ExtentYMm / 2);
            double grooves = Math.Max(0, Math.Max(-pod.Column, -pod.Row)) * board.PitchMm;
            var off = Math.Max(grooves, Math.Max(Math.Abs(pod.Centre.X - there.X), Math.Abs(pod.Centre.Y - there.Y)));
            tally.Add(off, 0, name, (i, 0), () => (
                pod.Column < 0 || pod.Row < 0
                    ? $"{name}: column {CheckWords.Whole(pod.Column + 1)}, row {CheckWords.Whole(pod.Row + 1)} is no groove of the board; they are counted from 1."
                    : $"{name}: its centre ({CheckWords.At(pod.Centre)}) is {CheckWords.Mm(off)} mm off column {CheckWords.Whole(pod.Column + 1)}, row {CheckWords.Whole(pod.Row + 1)}, which put it at {CheckWords.At(there)}.",
                $"Set centreMm to {Pair(there)}, or columnFromDatum and rowFromDatum to {Nearest(board, pod)}."));
        }

        return tally.Done("no pods");
    }

    private static string Pair(Point2 p) => $"[{LayoutNumber(p.X)}, {LayoutNumber(p.Y)}]";

    private static string LayoutNumber(double mm) => Handover.CsvText.Mm(mm);

    private static string Nearest(GridBoard board, PlacedPod pod)
    {
        var box = pod.BodyBox;
        var column = Math.Max(0, Math.Round((box.MinX - board.FirstGroove.X) / board.PitchMm));
        var row = Math.Max(0, Math.Round((box.MinY - board.FirstGroove.Y) / board.PitchMm));
        return $"the grooves nearest to the centre, {CheckWords.Whole(column + 1)} and {CheckWords.Whole(row + 1)}";
    }

    private static RuleCheck InsideUsableArea(GridBoard board, Layout layout)
    {
        var tally = new RuleTally(CheckedRule.InsideUsableArea, Measure.LeastMm, LayoutCheck.ToleranceMm);
        var area = board.UsableArea;
        for (var i = 0; i < layout.Pods.Length; i++)
        {
            var (body, name) = (layout.Pods[i].BodyBox, CheckWords.Pod(i));
            foreach (var (mm, side) in new[]
            {
                (body.MinX - area.MinX, "left"), (body.MinY - area.MinY, "lower"), (area.MaxX - body.MaxX, "right"), (area.MaxY - body.MaxY, "upper"),
            })
            {
                tally.Add(mm, 0, $"{name} to the {side} edge", (i, 0), () => (
                    $"{name} passes the {side} edge of the usable area by {CheckWords.Mm(-mm)} mm.",
                    $"Move {name} back by {CheckWords.Whole(Math.Ceiling(-mm / board.PitchMm))} pitch(es) or more."));
            }
        }

        return tally.Done("no pods");
    }

    private static RuleCheck ClearOfObstacles(Job job, Layout layout, ImmutableArray<PodPose> poses)
    {
        var (board, turn) = (job.Shop.Board, Turn.FromDegrees(layout.Placement.AngleDeg));
        ImmutableArray<RingOnBoard> avoided =
            [.. job.Part.Shape.Avoided.Select(a => RingOnBoard.Of($"\"{a.Name}\"", a.Ring, turn, layout.Placement.ZeroOnBoard))];
        var tally = new RuleTally(CheckedRule.ClearOfObstacles, Measure.LeastMm, LayoutCheck.ToleranceMm);
        for (var i = 0; i < layout.Pods.Length; i++)
        {
            for (var k = 0; k < board.Obstacles.Length; k++)
            {
                var (obstacle, name) = (board.Obstacles[k], CheckWords.Pod(i));
                var mm = Clearance.ToObstacle(poses[i], layout.Pods[i].BodyBox, obstacle.Shape);
                tally.Add(mm, obstacle.ClearanceMm, $"{name} to \"{obstacle.Name}\"", (i, k), () => (
                    mm < 0 ? $"{name} overlaps \"{obstacle.Name}\" by {CheckWords.Mm(-mm)} mm."
                        : $"{name} is {CheckWords.Mm(mm)} mm from \"{obstacle.Name}\", less than its clearance of {CheckWords.Mm(obstacle.ClearanceMm)} mm.",
                    $"Move {name} away from it."));
            }

            for (var k = 0; k < avoided.Length; k++)
            {
                var (spot, name) = (avoided[k], CheckWords.Pod(i));
                var (mm, at) = StandingBody.Of(layout.Pods[i], 0).Clear(spot, inside: false);
                tally.Add(mm, 0, $"{name} to {spot.Words}", (i, board.Obstacles.Length + k), () => (
                    $"{name} reaches {CheckWords.Mm(-mm)} mm under {spot.Words} at {CheckWords.At(at)}, where the job wants no pod.",
                    $"Move {name} away from it."));
            }
        }

        return tally.Done(board.Obstacles.IsEmpty && avoided.IsEmpty ? "none" : "no pods");
    }
}
