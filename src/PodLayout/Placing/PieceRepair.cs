using System.Collections.Immutable;
using PodLayout.Choice;
using PodLayout.Geometry;
using PodLayout.Jobs;

namespace PodLayout.Placing;

/// <summary>
/// Other pods under a loose piece that is held too weakly, the part's own left where they are: which of the seats under a piece hold
/// it matters to nothing else, and there are few.
/// </summary>
internal static class PieceRepair
{
    private const int MostPods = 2;

    // So many sets of seats are tried for a piece.
    private const int MostTries = 400;

    /// <summary>The layout with the piece's pods exchanged so that everything holds; default when that is not found.</summary>
    /// <param name="job">The job.</param>
    /// <param name="ground">Seats to pick from, at one angle.</param>
    /// <param name="shift">The shift, with the seats of the ground that the board has.</param>
    /// <param name="offset">Where the pivot lies within its pitch.</param>
    /// <param name="chosen">The layout, which supports the part.</param>
    /// <param name="atMost">Most pods of the layouts that matter.</param>
    public static ImmutableArray<FrameSeat> Of(
        Job job, SearchGround ground, ShiftClass shift, Point2 offset, ImmutableArray<FrameSeat> chosen, int atMost)
    {
        if (ground.Frame.Holding is not { Grounds.Length: > 1 } holding)
        {
            return default;
        }

        var seats = chosen;
        for (var body = 1; body < holding.Grounds.Length; body++)
        {
            if (holding.Bodies.HoldsBody(body, ground.Frame, seats, offset, shift.Columns, shift.Rows))
            {
                continue;
            }

            seats = OfPiece(job, ground, shift, offset, seats, atMost, holding, body);
            if (seats.IsDefault)
            {
                return default;
            }
        }

        return holding.Bodies.Holds(ground.Frame, seats, offset, shift.Columns, shift.Rows) ? seats : default;
    }

    private static ImmutableArray<FrameSeat> OfPiece(
        Job job, SearchGround ground, ShiftClass shift, Point2 offset, ImmutableArray<FrameSeat> seats, int atMost, HoldingModel holding, int body)
    {
        var frame = ground.Frame;
        var piece = holding.Grounds[body].Piece;
        ImmutableArray<FrameSeat> others = [.. seats.Where(s => frame.PieceOver(s.Pose)?.Name != piece)];
        ImmutableArray<FrameSeat> under =
        [
            .. ground.Seats.Where((s, i) => shift.Available[i] && frame.PieceOver(s.Pose)?.Name == piece && frame.IsPossible(s, offset)
                && FitTogether(job, frame, [.. others, s])),
        ];
        // Those farthest apart first: they resist a twist best.
        var sets = Enumerable.Range(1, Math.Clamp(atMost - others.Length, 0, MostPods)).SelectMany(size => size == 1
            ? under.Select(s => (ImmutableArray<FrameSeat>)[s])
            : (from i in Enumerable.Range(0, under.Length)
               from j in Enumerable.Range(i + 1, under.Length - i - 1)
               let apart = (frame.CentreOf(under[i], offset) - frame.CentreOf(under[j], offset)).Length
               orderby -Math.Round(apart, 6), i, j
               select (ImmutableArray<FrameSeat>)[under[i], under[j]]).Take(MostTries));
        foreach (var set in sets)
        {
            ImmutableArray<FrameSeat> all = [.. others, .. set];
            if (frame.ArePossible(all, offset) && FitTogether(job, frame, all)
                && holding.Bodies.HoldsBody(body, frame, all, offset, shift.Columns, shift.Rows))
            {
                return all;
            }
        }

        return default;
    }

    private static bool FitTogether(Job job, PlacingFrame frame, ImmutableArray<FrameSeat> seats) =>
        RoomRows.Of(frame.Poses, [.. seats.Select(s => (s.Pose, s.Column, s.Row))], job.Shop.Board.PitchMm, job.Shop.PodGapMm).IsEmpty
        && seats.GroupBy(s => frame.Poses[s.Pose].TypeIndex).All(of => of.Count() <= frame.Poses[of.First().Pose].Type.Stock);
}
