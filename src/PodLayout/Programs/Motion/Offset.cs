using PodLayout.Geometry;

namespace PodLayout.Programs.Motion;

/// <summary>A programmed move and the path of a tool at a distance beside it.</summary>
internal readonly record struct Offset
{
    private const double Small = 1e-7;

    private readonly double _distance;

    /// <summary>The path beside a move that has a length in X and Y.</summary>
    /// <param name="move">The move.</param>
    /// <param name="distance">Distance, mm: positive to the left.</param>
    public Offset(Stretch move, double distance)
    {
        Move = move;
        _distance = distance;
        Start = new Point2(move.From.XMm, move.From.YMm) + LeftOf(StartDirection) * distance;
    }

    public Stretch Move { get; }

    /// <summary>Where the tool begins.</summary>
    public Point2 Start { get; init; }

    /// <summary>The end of the programmed move.</summary>
    public Point2 Corner => new(Move.To.XMm, Move.To.YMm);

    /// <summary>Where the tool ends when nothing cuts its way short.</summary>
    public Point2 End => Corner + LeftOf(EndDirection) * _distance;

    public Point2 StartDirection => IsArc ? Tangent(new(Move.From.XMm, Move.From.YMm)) : Straightness;

    public Point2 EndDirection => IsArc ? Tangent(Corner) : Straightness;

    /// <summary>Radius of the tool's arc, mm; null for a straight move. Not positive where the tool does not fit.</summary>
    public double? RadiusMm => IsArc ? (Corner - Centre).Length - Math.Sign(Move.TurnRad) * _distance : null;

    private bool IsArc => Move.TurnRad != 0;

    private Point2 Centre => new(Move.CentreA, Move.CentreB);

    private Point2 Straightness
    {
        get
        {
            var way = new Point2(Move.To.XMm - Move.From.XMm, Move.To.YMm - Move.From.YMm);
            return way * (1 / way.Length);
        }
    }

    /// <summary>A move that only changes the height.</summary>
    public static Stretch Plunge(Stretch move, Point2 at) => move with
    {
        From = new(at.X, at.Y, move.From.ZMm),
        To = new(at.X, at.Y, move.To.ZMm),
    };

    /// <summary>The tool's arc about a corner, at the height at which the move ends.</summary>
    public static Stretch Around(Stretch move, Point2 corner, Point2 from, Point2 to, double turnRad) => move with
    {
        From = new(from.X, from.Y, move.To.ZMm),
        To = new(to.X, to.Y, move.To.ZMm),
        Kind = move.Kind == StretchKind.Rapid ? StretchKind.Rapid : StretchKind.Arc,
        Plane = ArcPlane.Xy,
        CentreA = corner.X,
        CentreB = corner.Y,
        TurnRad = turnRad,
    };

    /// <summary>The tool's move from its start to a point on its path.</summary>
    public Stretch Piece(Point2 end)
    {
        var piece = Straight(end);
        return IsArc ? piece with { TurnRad = TurnTo(end), Kind = StretchKind.Arc } : piece;
    }

    /// <summary>Straight from the start to a point.</summary>
    public Stretch Straight(Point2 end) => Move with
    {
        From = new(Start.X, Start.Y, Move.From.ZMm),
        To = new(end.X, end.Y, Move.To.ZMm),
    };

    /// <summary>Where the paths of two moves cross at an inner corner; null where they do not.</summary>
    public Point2? Crossing(Offset next)
    {
        Offset self = this;
        var corner = Corner;
        var found = Crossings(next)
            .Where(p => self.Reaches(p) && next.Reaches(p))
            .OrderBy(p => (p - corner).Length).ToList();
        return found.Count == 0 ? null : found[0];
    }

    private static Point2 LeftOf(Point2 direction) => new(-direction.Y, direction.X);

    private Point2 Tangent(Point2 at)
    {
        var radius = at - Centre;
        var left = LeftOf(radius) * (Math.Sign(Move.TurnRad) / radius.Length);
        return left;
    }

    // Whether a point of the path's line or circle lies between its start and its end.
    private bool Reaches(Point2 p)
    {
        if (!IsArc)
        {
            var along = (p - Start).Dot(Straightness);
            return along >= -Small && along <= (End - Start).Dot(Straightness) + Small;
        }

        var slack = Small / Math.Max(Small, RadiusMm!.Value);
        var turn = Math.Abs(TurnTo(p));
        return turn <= Math.Abs(TurnTo(End)) + slack || turn >= 2 * Math.PI - slack;
    }

    // The turn from the start to a point, in the move's own sense.
    private double TurnTo(Point2 p)
    {
        Point2 from = Start - Centre, to = p - Centre;
        if ((from - to).Length < Small)
        {
            return Math.Abs(Move.TurnRad) > Math.PI ? Math.CopySign(2 * Math.PI, Move.TurnRad) : 0;
        }

        var turn = Math.Atan2(from.Cross(to), from.Dot(to));
        return Move.TurnRad > 0
            ? turn >= 0 ? turn : turn + 2 * Math.PI
            : turn <= 0 ? turn : turn - 2 * Math.PI;
    }

    private IEnumerable<Point2> Crossings(Offset next)
    {
        if (!IsArc && !next.IsArc)
        {
            var cross = Straightness.Cross(next.Straightness);
            return Math.Abs(cross) < 1e-12 ? [] : [Start + Straightness * ((next.Start - Start).Cross(next.Straightness) / cross)];
        }

        return IsArc && next.IsArc
            ? OfCircles(Centre, RadiusMm!.Value, next.Centre, next.RadiusMm!.Value)
            : IsArc ? OfLine(next.Start, next.Straightness, Centre, RadiusMm!.Value) : OfLine(Start, Straightness, next.Centre, next.RadiusMm!.Value);
    }

    private static IEnumerable<Point2> OfLine(Point2 at, Point2 direction, Point2 centre, double radius)
    {
        var foot = at + direction * (centre - at).Dot(direction);
        var square = radius * radius - (foot - centre).Dot(foot - centre);
        if (square < -Small)
        {
            return [];
        }

        var half = Math.Sqrt(Math.Max(0, square));
        return [foot + direction * half, foot - direction * half];
    }

    private static IEnumerable<Point2> OfCircles(Point2 a, double ra, Point2 b, double rb)
    {
        var way = b - a;
        var distance = way.Length;
        if (distance < Small)
        {
            return [];
        }

        var along = (distance * distance + ra * ra - rb * rb) / (2 * distance);
        var square = ra * ra - along * along;
        if (square < -Small)
        {
            return [];
        }

        var unit = way * (1 / distance);
        var half = Math.Sqrt(Math.Max(0, square));
        return [a + unit * along + LeftOf(unit) * half, a + unit * along - LeftOf(unit) * half];
    }
}
