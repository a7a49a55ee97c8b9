using System.Collections.Immutable;
using PodLayout.Geometry;
using PodLayout.Jobs;
using PodLayout.Parts;
using PodLayout.Seats;
using PodLayout.Support;

namespace PodLayout.Placing;

/// <summary>
/// Everything about the part at one angle, or at all angles within a small span of it, that does not depend on the offset.
/// </summary>
/// <remarks>
/// The part is turned about its pivot, the middle of its outline's box. An offset says where on the board the pivot lies. A
/// groove crossing at v from the pivot lies, in the frame of the part at another angle of the span, within |v| times the span of
/// v; a pod there is turned by at most the span. Both are given as slack, so that what the frame rules out is ruled out at
/// every angle of the span.
/// </remarks>
public sealed class PlacingFrame
{
    private readonly RegionIndex[] _regions;
    private readonly double _spanRad;
    private readonly double _farMm;
    private readonly Job _job;
    private readonly ImmutableArray<SeatGround> _grounds;
    private readonly Turn _turn;

    /// <summary>Prepares an angle.</summary>
    /// <param name="job">The job.</param>
    /// <param name="reach">The part's reach map.</param>
    /// <param name="poses">The pods in use.</param>
    /// <param name="angleDeg">The angle, or the middle of the span.</param>
    /// <param name="halfSpanDeg">Half the span of angles; 0 for one angle.</param>
    public PlacingFrame(Job job, ReachMap reach, ImmutableArray<PodPose> poses, double angleDeg, double halfSpanDeg)
        : this(job, reach, ClearWood.OfGrounds(job.Part.Shape, job.Margins), poses, angleDeg, halfSpanDeg)
    {
    }

    /// <summary>Prepares an angle of a part whose wood is known.</summary>
    /// <param name="job">The job.</param>
    /// <param name="reach">The part's reach map.</param>
    /// <param name="woods">What pods may use of each ground of the part, as drawn.</param>
    /// <param name="poses">The pods in use.</param>
    /// <param name="angleDeg">The angle, or the middle of the span.</param>
    /// <param name="halfSpanDeg">Half the span of angles; 0 for one angle.</param>
    public PlacingFrame(
        Job job, ReachMap reach, ImmutableArray<ClearWood> woods, ImmutableArray<PodPose> poses, double angleDeg, double halfSpanDeg)
    {
        _job = job;
        Poses = poses;
        AngleDeg = angleDeg;
        HalfSpanDeg = halfSpanDeg;
        _spanRad = halfSpanDeg * Math.PI / 180;
        var turn = Turn.FromDegrees(angleDeg);
        Pivot = job.Part.Shape.Outline.Bounds.Centre;
        ImmutableArray<ClearWood> turned = [.. woods.Select(w => w.Turned(turn, Pivot))];
        // The dearest geometry there is, one pose by itself: side by side, in the order of the poses.
        Centres = [.. poses.AsParallel().AsOrdered().Select(pose => SeatRegion.Of(turned[pose.Ground], pose, Tolerances.ContactMm + TurnSlack(pose)))];
        _regions = [.. Centres.Select(r => new RegionIndex(r.Centres))];
        Reach = new(reach, turn, Pivot);
        _farMm = job.Part.Shape.Held.Select(h => h.Outline).Append(job.Part.Shape.Outline).SelectMany(r => r.Points)
            .Max(p => (p - Pivot).Length);
        _grounds = SeatGround.Of(job.Part.Shape);
        Faces = [.. poses.Select(pose => FaceOf(pose))];
        _turn = turn;
    }

    private PlacingFrame(PlacingFrame other)
    {
        (_job, _grounds, _turn, _spanRad, _farMm, _regions) = (other._job, other._grounds, other._turn, other._spanRad, other._farMm, other._regions);
        (Poses, AngleDeg, HalfSpanDeg, Pivot) = (other.Poses, other.AngleDeg, other.HalfSpanDeg, other.Pivot);
        (Centres, Reach, Faces) = (other.Centres, other.Reach, other.Faces);
    }

    /// <summary>The angle, or the middle of the span, degrees.</summary>
    public double AngleDeg { get; }

    /// <summary>Half the span of angles, degrees.</summary>
    public double HalfSpanDeg { get; }

    /// <summary>How far the farthest place of the part moves about the pivot from the middle of the span to its end, mm.</summary>
    public double MostSwingMm => _farMm * _spanRad;

    /// <summary>The pods in use.</summary>
    public ImmutableArray<PodPose> Poses { get; }

    /// <summary>The point of the drawing about which the part turns, and whose place on the board is the offset.</summary>
    public Point2 Pivot { get; }

    /// <summary>Seat regions of the poses about the pivot.</summary>
    public ImmutableArray<SeatRegion> Centres { get; }

    /// <summary>The points to support, about the pivot.</summary>
    public TurnedReach Reach { get; private init; }

    /// <summary>The faces of the poses that can support the part.</summary>
    public ImmutableArray<PodFace> Faces { get; }

    /// <summary>The loose pieces to be held.</summary>
    public ImmutableArray<HeldPiece> Held => _job.Part.Shape.Held;

    /// <summary>Whether some seats are possible together at one offset, as far as the part and its loose pieces go.</summary>
    public bool ArePossible(ImmutableArray<FrameSeat> seats, Point2 offset) =>
        seats.All(s => IsPossible(s, offset)) && AskedRows.ArePiecesHeld(this, seats, offset);

    /// <summary>The loose piece that a pose stands under; null under the part.</summary>
    public HeldPiece? PieceOver(int pose) => _grounds[Poses[pose].Ground].Piece;

    /// <summary>
    /// A place and a direction of the drawing, both as they lie in the frame.
    /// </summary>
    public (Point2 At, Point2 Direction) Laid(Point2 at, Point2 direction) => (_turn.Apply(at - Pivot), _turn.Apply(direction));

    /// <summary>A seat's pose where its body keeps clear of all edges, when it is one that need not; else the same seat.</summary>
    public FrameSeat Plain(FrameSeat seat, Point2 offset)
    {
        if (!_grounds[Poses[seat.Pose].Ground].IsOverSkin)
        {
            return seat;
        }

        var plain = seat with { Pose = Poses.IndexOf(Poses[seat.Pose] with { Ground = 0 }) };
        return IsPossible(plain, offset) ? plain : seat;
    }

    /// <summary>How the part is to be held; null where that does not matter.</summary>
    internal HoldingModel? Holding { get; init; }

    /// <summary>The same frame where only some of the points are to be supported.</summary>
    internal PlacingFrame Demanding(ImmutableArray<int> points) => new(this) { Holding = Holding, Reach = Reach.Of(points) };

    /// <summary>The same frame with the part held otherwise.</summary>
    internal PlacingFrame HeldBy(HoldingModel? holding) => Holding == holding ? this : new(this) { Holding = holding };

    /// <summary>
    /// How far, at most, the middle and every spot of a pod may lie from where they lie at the middle of the box and of the span.
    /// </summary>
    internal double SpreadOf(FrameSeat seat, OffsetBox box)
    {
        var offsets = Math.Sqrt(box.HalfXMm * box.HalfXMm + box.HalfYMm * box.HalfYMm);
        return _spanRad == 0 ? offsets : offsets + Swing(CentreOf(seat, box.Centre), box) + Math.Sqrt(2) * TurnSlack(Poses[seat.Pose]);
    }

    /// <summary>Centre of a seat about the pivot when the pivot lies at an offset within its pitch.</summary>
    public Point2 CentreOf(FrameSeat seat, Point2 offset)
    {
        var board = _job.Shop.Board;
        var pose = Poses[seat.Pose];
        return new(
            board.ColumnXMm(seat.Column) + pose.ExtentXMm / 2 - offset.X,
            board.RowYMm(seat.Row) + pose.ExtentYMm / 2 - offset.Y);
    }

    /// <summary>Whether a seat is possible at some offset of a box, as far as the part goes.</summary>
    public bool IsPossible(FrameSeat seat, OffsetBox box)
    {
        var centre = CentreOf(seat, box.Centre);
        var swing = Swing(centre, box);
        return _regions[seat.Pose].Touches(new(
            centre.X - box.HalfXMm - swing, centre.Y - box.HalfYMm - swing,
            centre.X + box.HalfXMm + swing, centre.Y + box.HalfYMm + swing));
    }

    /// <summary>Whether a seat is possible at one offset, as far as the part goes. Only for a frame of one angle.</summary>
    public bool IsPossible(FrameSeat seat, Point2 offset) => _regions[seat.Pose].Contains(CentreOf(seat, offset));

    /// <summary>All seats possible at some offset of a box, in order of pose, row and column.</summary>
    public ImmutableArray<FrameSeat> PossibleSeats(OffsetBox box)
    {
        var board = _job.Shop.Board;
        var seats = ImmutableArray.CreateBuilder<FrameSeat>();
        for (var p = 0; p < Poses.Length; p++)
        {
            if (_regions[p].IsEmpty)
            {
                continue;
            }

            // Grooves are numbered from the first of the board, so these may be negative.
            var bounds = _regions[p].Bounds;
            var far = new Point2(bounds.Width, bounds.Height).Length + bounds.Centre.Length;
            var grow = far * _spanRad + board.PitchMm;
            var lowest = CentreOf(new(p, 0, 0), box.Centre);
            int fromColumn = Groove(bounds.MinX - grow - box.HalfXMm - lowest.X), toColumn = Groove(bounds.MaxX + grow + box.HalfXMm - lowest.X);
            int fromRow = Groove(bounds.MinY - grow - box.HalfYMm - lowest.Y), toRow = Groove(bounds.MaxY + grow + box.HalfYMm - lowest.Y);
            for (var row = fromRow; row <= toRow; row++)
            {
                for (var column = fromColumn; column <= toColumn; column++)
                {
                    var seat = new FrameSeat(p, column, row);
                    if (IsPossible(seat, box))
                    {
                        seats.Add(seat);
                    }
                }
            }
        }

        return seats.ToImmutable();

        int Groove(double mm) => (int)Math.Floor(mm / board.PitchMm);
    }

    /// <summary>All the places that a pod's face may take while the offset is in a box and the angle in the span.</summary>
    /// <param name="pose">Index of the pose.</param>
    /// <param name="centre">Its centre about the pivot at the middle of the box.</param>
    /// <param name="box">The offsets.</param>
    /// <param name="known">Faces made so far: many seats share one.</param>
    internal PodFace SweptFace(int pose, Point2 centre, OffsetBox box, Dictionary<(int, int), PodFace> known)
    {
        // A swing rounded up to a fortieth of a millimetre lets many seats share a face.
        var steps = _spanRad == 0 ? 0 : (int)Math.Ceiling(Swing(centre, box) * 40);
        if (!known.TryGetValue((pose, steps), out var face))
        {
            var spread = steps / 40.0 + TurnSlack(Poses[pose]);
            face = FaceOf(Poses[pose], box.HalfXMm + spread, box.HalfYMm + spread);
            known.Add((pose, steps), face);
        }

        return face;
    }

    private PodFace FaceOf(PodPose pose, double spreadXMm = 0, double spreadYMm = 0) => PodFace.Of(
        pose, spreadXMm, spreadYMm, _grounds[pose.Ground].IsOverSkin ? pose.Type.SealInsetAboveMm : 0);

    // How far a place may move about the pivot within the span of angles.
    private double Swing(Point2 centre, OffsetBox box) =>
        _spanRad == 0 ? 0 : (centre.Length + box.HalfXMm + box.HalfYMm) * _spanRad;

    // A rectangle turned by at most the span holds one that is smaller by this on each side, and lies in one larger by it.
    private double TurnSlack(PodPose pose) =>
        pose.IsRound ? 0 : Math.Max(pose.ExtentXMm, pose.ExtentYMm) / 2 * Math.Sin(_spanRad);
}
