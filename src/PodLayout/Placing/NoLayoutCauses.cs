using System.Collections.Immutable;
using System.Globalization;
using PodLayout.Findings;
using PodLayout.Geometry;
using PodLayout.Jobs;
using PodLayout.Layouts;
using PodLayout.Seats;
using PodLayout.Support;

namespace PodLayout.Placing;

/// <summary>Finds out why there is no layout.</summary>
internal static class NoLayoutCauses
{
    // Offsets along each side of the pitch that are looked at for the placement that comes nearest.
    private const int Tries = 6;

    /// <summary>No pod is in stock.</summary>
    public static Finding NoPods(Job job) => new(
        "no-pods", Severity.Refused, FindingKind.NoLayout,
        string.Create(CultureInfo.InvariantCulture, $"None of the {job.Shop.Pods.Length} pod types is in stock."),
        null, "Give at least one pod type a stock above zero.");

    /// <summary>The work was stopped before a layout was found.</summary>
    public static Finding CutShort() => new(
        "cut-short", Severity.Refused, FindingKind.NoLayout,
        "The search was stopped before it found a layout.", null, "Give it more time.");

    /// <summary>What cannot be supported at the placement that comes nearest to a layout, and what would mend it.</summary>
    /// <param name="job">The job.</param>
    /// <param name="reach">Its reach map.</param>
    /// <param name="search">Searches a layout for a job that differs in stock only.</param>
    public static (ImmutableArray<UnsupportedStretch> Stretches, ImmutableArray<Finding> Findings) Of(
        Job job, ReachMap reach, Func<Job, FoundLayout?> search)
    {
        var nearest = Placements(job, reach).OrderBy(c => c.Out).First();
        var stretches = Stretches.Of(job, reach, nearest.Ground, nearest.Available, nearest.Box);
        if (!stretches.IsEmpty)
        {
            return (stretches, [Scope(job), .. Stretches.AsFindings(stretches, job.Part.Name)]);
        }

        return ([], [Scope(job), job.Keep.IsEmpty ? StockOrRoom(job, search) : Kept(job, nearest)]);
    }

    // Over which placements there is no layout, and which of them what follows is about.
    private static Finding Scope(Job job) => new(
        "no-layout", Severity.Refused, FindingKind.NoLayout,
        job.Placement is PlacementWish.Given
            ? "There is no layout at the place given."
            : "There is no layout at any offset of the part and any angle asked for; stretches are told of the place, of those looked at, that came nearest to one.");

    private static Finding Kept(Job job, Candidate nearest)
    {
        var rows = AskedRows.Of(job, nearest.Ground.Frame, nearest.Ground.Seats, nearest.Ground.Classes, nearest.Box);
        var lost = job.Placement is PlacementWish.Given
            ? job.Keep.Where((_, k) => !rows[k].Any(s => nearest.Available[s])).Select(kept => string.Create(
                CultureInfo.InvariantCulture, $"{kept.Type.Name} at column {kept.Column + 1}, row {kept.Row + 1}")).ToList()
            : [];
        return new(
            "kept-pods-prevent-layout", Severity.Refused, FindingKind.NoLayout,
            lost.Count > 0
                ? $"These pods to keep cannot stand under the part where it lies: {string.Join("; ", lost)}."
                : "There is no layout with all the pods to keep.",
            null, "Take pods out of keep, or let the part lie elsewhere.");
    }

    // Each single point could be supported: pods of the needed types are too few, or stand in each other's way.
    private static Finding StockOrRoom(Job job, Func<Job, FoundLayout?> search)
    {
        var ample = job with { Shop = job.Shop with { Pods = [.. job.Shop.Pods.Select(p => p with { Stock = 9999 })] } };
        if (search(ample) is not { } found)
        {
            return new(
                "pods-in-the-way", Severity.Refused, FindingKind.NoLayout,
                "Every point of the edge has a seat near it, but the pods would stand in each other's way.",
                null, "Plan it with --try: smaller pods, smaller margins, wider limits and the part turned are then planned.");
        }

        var needed = found.Seats.GroupBy(s => found.Frame.Poses[s.Pose].TypeIndex).OrderBy(g => g.Key)
            .Select(g => string.Create(
                CultureInfo.InvariantCulture,
                $"{g.Count()} x {job.Shop.Pods[g.Key].Name} (in stock: {job.Shop.Pods[g.Key].Stock})"));
        return new(
            "stock-too-small", Severity.Refused, FindingKind.NoLayout,
            $"There are too few pods: with ample stock the part needs for instance {string.Join(", ", needed)}.",
            null, "Bring more pods, or allow more overhang.");
    }

    private static IEnumerable<Candidate> Placements(Job job, ReachMap reach)
    {
        foreach (var height in job.Shop.Pods.Where(p => p.Stock > 0).Select(p => p.HeightMm).Distinct().Order())
        {
            var poses = PodPose.Of(job, height);
            ImmutableArray<BoardSeats> board = [.. poses.Select(pose => BoardSeats.Of(pose, job.Shop.Board))];
            if (job.Placement is PlacementWish.Given given)
            {
                var (offset, columns, rows) = GivenPlacement.Locate(job, given);
                yield return At(new PlacingFrame(job, reach, poses, given.AngleDeg, 0), board, offset, columns, rows);
                continue;
            }

            var pitch = job.Shop.Board.PitchMm;
            var middle = job.Shop.Board.UsableArea.Centre;
            foreach (var angle in AnglesOf(job.Placement))
            {
                var frame = new PlacingFrame(job, reach, poses, angle, 0);
                foreach (var i in Enumerable.Range(0, Tries * Tries))
                {
                    var offset = new Point2((i % Tries + 0.5) * pitch / Tries, (i / Tries + 0.5) * pitch / Tries);
                    yield return At(frame, board, offset, (int)(middle.X / pitch), (int)(middle.Y / pitch));
                }
            }
        }
    }

    private static IEnumerable<double> AnglesOf(PlacementWish wish) => wish switch
    {
        PlacementWish.Search search => search.AnglesDeg,
        PlacementWish.SearchInterval interval => Enumerable.Range(0, Tries)
            .Select(i => interval.FromDeg + (interval.ToDeg - interval.FromDeg) * i / (Tries - 1)),
        _ => [],
    };

    private static Candidate At(PlacingFrame frame, ImmutableArray<BoardSeats> board, Point2 offset, int columns, int rows)
    {
        var box = new OffsetBox(offset, 0, 0);
        var ground = SearchGround.At(frame, board, box, columns, rows);
        var available = ground.Classes[0].Available;
        var reach = new BoxReach(frame, [.. ground.Seats.Where((_, s) => available[s])], box);
        return new(ground, available, box, Enumerable.Range(0, frame.Reach.PointCount).Count(p => reach.SupportersOf(p).Length == 0));
    }

    private sealed record Candidate(SearchGround Ground, bool[] Available, OffsetBox Box, int Out);
}
