using System.Collections.Immutable;
using PodLayout.Choice;
using PodLayout.Geometry;
using PodLayout.Holding;
using PodLayout.Jobs;
using PodLayout.Support;

namespace PodLayout.Placing;

/// <summary>The layout model of one placement: its seats, and how near each is to each point.</summary>
internal sealed class PlacementModel
{
    private readonly PlacingFrame _frame;
    private readonly Point2[] _centres;

    // Null for a pod under a loose piece, which supports no point of the part.
    private readonly PodFace?[] _faces;
    private readonly (int[] Seats, double[] Shares)?[] _near;
    private readonly ImmutableArray<int[]> _asked;
    private readonly CoverQuestion _question;
    private int _rowsMade;
    private long _pairs;

    private PlacementModel(
        Job job, PlacingFrame frame, ImmutableArray<FrameSeat> seats, ShiftClass shift, Point2 offset, List<Weakness>? weaknesses)
    {
        _frame = frame;
        Seats = seats;
        _centres = [.. seats.Select(s => frame.CentreOf(s, offset))];
        _faces = [.. seats.Select(s => frame.PieceOver(s.Pose) is null ? frame.Faces[s.Pose] : null)];
        _near = new (int[], double[])?[frame.Reach.PointCount];
        _asked = AskedRows.Of(job, frame, seats, [shift], new(offset, 0, 0));
        _question = Question(job, frame, seats, _asked, p => Near(p).Seats, (s, p) => Share(s, p) <= 1) with
        {
            HoldsBrokenBy = weaknesses is null ? null : frame.Holding?.At(frame, seats, offset, shift, weaknesses, () => ShortBySprings++),
        };
    }

    /// <summary>The seats; the model numbers them from 0 in this order.</summary>
    public ImmutableArray<FrameSeat> Seats { get; }

    /// <summary>
    /// How many choices fell short by springs alone: where any did, what is found need not be the fewest.
    /// </summary>
    public int ShortBySprings { get; private set; }

    /// <summary>What it took so far.</summary>
    public SearchWork Work => new(_rowsMade, _pairs);

    /// <summary>The model at one offset with one shift.</summary>
    /// <param name="job">The job.</param>
    /// <param name="ground">Seats to pick from; its frame must be of one angle.</param>
    /// <param name="shift">The shift, with the seats of the ground that the board has.</param>
    /// <param name="offset">Where the pivot lies within its pitch.</param>
    /// <param name="weaknesses">Ways in which layouts give way; those that are found are added. Null for none known.</param>
    public static PlacementModel At(
        Job job, SearchGround ground, ShiftClass shift, Point2 offset, List<Weakness>? weaknesses = null) =>
        Of(job, ground, shift, offset, weaknesses ?? []);

    /// <summary>The same where holding is not asked for.</summary>
    public static PlacementModel OfSupport(Job job, SearchGround ground, ShiftClass shift, Point2 offset) => Of(job, ground, shift, offset, null);

    private static PlacementModel Of(Job job, SearchGround ground, ShiftClass shift, Point2 offset, List<Weakness>? weaknesses) => new(
        job,
        ground.Frame,
        [.. ground.Seats.Where((seat, s) => shift.Available[s] && ground.Frame.IsPossible(seat, offset))],
        shift,
        offset,
        weaknesses);

    /// <summary>The model's question for some seats of a frame; the points are followed by one for each pod to keep and each piece to hold.</summary>
    public static CoverQuestion Question(
        Job job,
        PlacingFrame frame,
        ImmutableArray<FrameSeat> seats,
        ImmutableArray<int[]> asked,
        Func<int, int[]> supportersOf,
        Func<int, int, bool> supports) => new(
            seats.Length,
            frame.Reach.PointCount + asked.Length,
            p => p < frame.Reach.PointCount ? supportersOf(p) : asked[p - frame.Reach.PointCount],
            (s, p) => p < frame.Reach.PointCount ? supports(s, p) : Array.BinarySearch(asked[p - frame.Reach.PointCount], s) >= 0,
            new(() => RoomRows.Of(
                frame.Poses, [.. seats.Select(s => (s.Pose, s.Column, s.Row))], job.Shop.Board.PitchMm, job.Shop.PodGapMm)),
            [
                .. seats.Select((seat, index) => (Pose: frame.Poses[seat.Pose], index))
                    .GroupBy(s => s.Pose.TypeIndex).OrderBy(g => g.Key)
                    .Select(g => new StockRow([.. g.Select(s => s.index)], g.First().Pose.Type.Stock)),
            ]);

    /// <summary>
    /// The question with only those supporters that are within a share of the limit, and only pods that count.
    /// </summary>
    /// <param name="share">The share, at most 1.</param>
    /// <param name="counts">Whether a seat counts; null for all.</param>
    public CoverQuestion Within(double share, Func<FrameSeat, bool>? counts = null) => share >= 1 && counts is null
        ? _question
        : _question with
        {
            SupportersOf = p =>
            {
                if (p >= _near.Length)
                {
                    return _question.SupportersOf(p);
                }

                var (seats, shares) = Near(p);
                return [.. seats.Where((s, i) => shares[i] <= share && (counts is null || counts(Seats[s])))];
            },
            Supports = (s, p) => p >= _near.Length ? _question.Supports(s, p) : Share(s, p) <= share && (counts is null || counts(Seats[s])),
        };

    /// <summary>The least share of its limit at which a point can be supported; infinite when it cannot.</summary>
    public double LeastShare(int point) => Near(point).Shares is { Length: > 0 } shares ? shares.Min() : double.PositiveInfinity;

    private double Share(int seat, int point)
    {
        _pairs++;
        return _faces[seat] is { } face && _frame.Reach.MayReach(point, face, _centres[seat])
            ? _frame.Reach.Share(point, face, _centres[seat]) : double.PositiveInfinity;
    }

    private (int[] Seats, double[] Shares) Near(int point)
    {
        if (_near[point] is { } known)
        {
            return known;
        }

        List<int> seats = [];
        List<double> shares = [];
        for (var s = 0; s < Seats.Length; s++)
        {
            var share = Share(s, point);
            if (share <= 1)
            {
                seats.Add(s);
                shares.Add(share);
            }
        }

        (int[], double[]) made = ([.. seats], [.. shares]);
        _near[point] = made;
        _rowsMade++;
        return made;
    }
}
