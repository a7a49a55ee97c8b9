using System.Collections.Immutable;
using PodLayout.Choice;
using PodLayout.Geometry;
using PodLayout.Jobs;
using PodLayout.Seats;

namespace PodLayout.Placing;

/// <summary>Among layouts with as few pods: less overhang, then fewer pod types.</summary>
internal static class Refinement
{
    // Overhangs are told apart to a hundredth of their limit.
    private const int Hundredths = 100;

    private static readonly ImmutableArray<double> RoundFiguresMm = [5, 1, 0.5, 0.1];

    /// <summary>
    /// Improves a layout without adding pods: moves the part under the pods (unless it must stay), chooses the pods at that
    /// placement whose worst overhang is least, and repeats while that helps; then looks for fewer pod types.
    /// </summary>
    /// <returns>The layout; its worst overhang is the least at its placement, to a hundredth of the limit, when not cut short.</returns>
    public static FoundLayout Improve(
        Job job, ImmutableArray<BoardSeats> board, FoundLayout found, bool mayMove, CancellationToken cancellation)
    {
        const int MostRounds = 4;
        for (var round = 0; round < MostRounds && !cancellation.IsCancellationRequested; round++)
        {
            var moved = mayMove ? Moved(found) : found;
            var chosen = LeastOverhang(job, board, moved, cancellation);
            var gain = found.WorstShare - chosen.WorstShare;
            found = chosen;
            if (!mayMove || gain < 1.0 / Hundredths)
            {
                break;
            }
        }

        found = FewerTypes(job, board, found, cancellation);
        return mayMove ? AtRoundFigures(found) : found;
    }

    // A place that can be read off a rule is easier to lay a part at: the coarsest round figures that cost no hundredth.
    private static FoundLayout AtRoundFigures(FoundLayout found)
    {
        var zeroFromPivot = Turn.FromDegrees(found.Frame.AngleDeg).Apply(found.Frame.Pivot) * -1;
        foreach (var stepMm in RoundFiguresMm)
        {
            // Shifts are whole pitches from the board's zero, which a pitch in round figures keeps round.
            var zero = found.Offset + zeroFromPivot;
            var offset = new Point2(Math.Round(zero.X / stepMm) * stepMm, Math.Round(zero.Y / stepMm) * stepMm) - zeroFromPivot;
            if (!found.Frame.ArePossible(found.Seats, offset) || !Holds(found, offset))
            {
                continue;
            }

            var worst = OffsetFitting.WorstShare(found.Frame, found.Seats, offset);
            if (Math.Ceiling(worst * Hundredths) <= Math.Ceiling(found.WorstShare * Hundredths))
            {
                return found with { Offset = offset, WorstShare = worst };
            }
        }

        return found;
    }

    private static FoundLayout Moved(FoundLayout found)
    {
        var (offset, worst) = OffsetFitting.Improve(found.Frame, found.Seats, found.Offset, goodEnough: 0);
        return Holds(found, offset) ? found with { Offset = offset, WorstShare = worst } : found;
    }

    private static bool Holds(FoundLayout found, Point2 offset) =>
        found.Frame.Holding?.Bodies.Holds(found.Frame, found.Seats, offset, found.Columns, found.Rows) != false;

    private static FoundLayout LeastOverhang(
        Job job, ImmutableArray<BoardSeats> board, FoundLayout found, CancellationToken cancellation)
    {
        var (ground, model) = ModelAt(job, board, found);
        // No choice can do better than each point's own nearest seat.
        var low = (int)Math.Floor(ground.FirstPoints.Select(model.LeastShare).DefaultIfEmpty(0).Max() * Hundredths);
        var high = (int)Math.Ceiling(found.WorstShare * Hundredths);
        while (low < high && !cancellation.IsCancellationRequested)
        {
            var middle = (low + high) / 2;
            if (Choose(found, ground, model, model.Within((double)middle / Hundredths), cancellation) is { } better)
            {
                found = better;
                high = Math.Min(middle, (int)Math.Ceiling(better.WorstShare * Hundredths));
            }
            else
            {
                low = middle + 1;
            }
        }

        return found;
    }

    private static FoundLayout FewerTypes(
        Job job, ImmutableArray<BoardSeats> board, FoundLayout found, CancellationToken cancellation)
    {
        var poses = found.Frame.Poses;
        var used = found.Seats.Select(s => poses[s.Pose].TypeIndex).Distinct().Order().ToArray();
        var (ground, model) = ModelAt(job, board, found);
        // Sets of types in order of size, then of the shop's list; the types are few.
        var all = poses.Select(p => p.TypeIndex).Distinct().Order().ToArray();
        foreach (var types in Subsets(all, used.Length - 1))
        {
            if (cancellation.IsCancellationRequested)
            {
                break;
            }

            var only = model.Within(found.WorstShare, seat => types.Contains(poses[seat.Pose].TypeIndex));
            if (Choose(found, ground, model, only, cancellation) is { } simpler)
            {
                return simpler;
            }
        }

        return found;
    }

    private static IEnumerable<int[]> Subsets(int[] all, int mostMembers) =>
        from bits in Enumerable.Range(1, (1 << Math.Min(all.Length, 12)) - 1)
        let members = all.Where((_, i) => (bits >> i & 1) == 1).ToArray()
        where members.Length <= mostMembers
        orderby members.Length, bits
        select members;

    private static (SearchGround Ground, PlacementModel Model) ModelAt(Job job, ImmutableArray<BoardSeats> board, FoundLayout found)
    {
        var spot = new OffsetBox(found.Offset, 0, 0);
        var ground = SearchGround.At(found.Frame, board, spot, found.Columns, found.Rows);
        return (ground, PlacementModel.At(job, ground, ground.Classes[0], found.Offset));
    }

    private static FoundLayout? Choose(
        FoundLayout found, SearchGround ground, PlacementModel model, CoverQuestion question, CancellationToken cancellation)
    {
        var answer = FewestPods.Of(question, ground.FirstPoints, found.Seats.Length, cancellation, Wanted.Any);
        if (!answer.HasChoice || answer.Filled.Length > found.Seats.Length)
        {
            return null;
        }

        ImmutableArray<FrameSeat> seats = [.. answer.Filled.Select(s => model.Seats[s])];
        return found with { Seats = seats, WorstShare = OffsetFitting.WorstShare(found.Frame, seats, found.Offset) };
    }
}
