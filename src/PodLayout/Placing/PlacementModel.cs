using System.Collections.Immutable;
using PodLayout.Choice;
using PodLayout.Geometry;
using PodLayout.Jobs;
using PodLayout.Support;

namespace PodLayout.Placing;

/// <summary>The layout model of one placement: its seats, and how near each is to each point.</summary>
/// <param name="Seats">The seats; the model numbers them from 0 in this order.</param>
/// <param name="Supporters">For each point the seats that support it.</param>
/// <param name="Shares">For each point the share of the limit at each of its supporters.</param>
/// <param name="Problem">The rows of the model.</param>
internal sealed record PlacementModel(
    ImmutableArray<FrameSeat> Seats,
    ImmutableArray<int[]> Supporters,
    ImmutableArray<double[]> Shares,
    CoverProblem Problem)
{
    /// <summary>The model at one offset with one shift.</summary>
    /// <param name="job">The job.</param>
    /// <param name="ground">Seats to pick from; its frame must be of one angle.</param>
    /// <param name="available">Which seats of the ground the board has.</param>
    /// <param name="offset">Where the pivot lies within its pitch.</param>
    public static PlacementModel At(Job job, SearchGround ground, bool[] available, Point2 offset)
    {
        var frame = ground.Frame;
        var number = new int[ground.Seats.Length];
        var seats = ImmutableArray.CreateBuilder<FrameSeat>();
        for (var s = 0; s < number.Length; s++)
        {
            number[s] = available[s] && frame.IsPossible(ground.Seats[s], offset) ? seats.Count : -1;
            if (number[s] >= 0)
            {
                seats.Add(ground.Seats[s]);
            }
        }

        PodFace[] faces = [.. frame.Poses.Select(pose => PodFace.Of(pose))];
        Point2[] centres = [.. seats.Select(s => frame.CentreOf(s, offset))];
        var supporters = ImmutableArray.CreateBuilder<int[]>(ground.Supporters.Length);
        var shares = ImmutableArray.CreateBuilder<double[]>(ground.Supporters.Length);
        for (var p = 0; p < ground.Supporters.Length; p++)
        {
            var near = from root in ground.Supporters[p]
                       let s = number[root]
                       where s >= 0
                       let share = frame.Reach.Share(p, faces[seats[s].Pose], centres[s])
                       where share <= 1
                       select (s, share);
            var found = near.ToArray();
            supporters.Add([.. found.Select(f => f.s)]);
            shares.Add([.. found.Select(f => f.share)]);
        }

        var all = seats.ToImmutable();
        return new(all, supporters.ToImmutable(), shares.ToImmutable(), ProblemOf(job, frame, all, supporters.ToImmutable()));
    }

    /// <summary>The rows for some seats and their supporters.</summary>
    public static CoverProblem ProblemOf(
        Job job, PlacingFrame frame, ImmutableArray<FrameSeat> seats, ImmutableArray<int[]> supporters) => new(
            seats.Length,
            supporters,
            RoomRows.Of(
                frame.Poses, [.. seats.Select(s => (s.Pose, s.Column, s.Row))], job.Shop.Board.PitchMm, job.Shop.PodGapMm),
            StocksOf(frame, seats));

    /// <summary>The model with only those supporters that are within a share of the limit.</summary>
    public CoverProblem Within(double share) => Problem with
    {
        Supporters =
        [
            .. Supporters.Select((of, p) => of.Where((_, i) => Shares[p][i] <= share).ToArray()),
        ],
    };

    private static ImmutableArray<StockRow> StocksOf(PlacingFrame frame, ImmutableArray<FrameSeat> seats) =>
    [
        .. seats.Select((seat, index) => (Type: frame.Poses[seat.Pose], index))
            .GroupBy(s => s.Type.TypeIndex).OrderBy(g => g.Key)
            .Select(g => new StockRow([.. g.Select(s => s.index)], g.First().Type.Type.Stock)),
    ];
}
