using System.Collections.Immutable;
using PodLayout.Findings;
using PodLayout.Geometry;
using PodLayout.Jobs;
using PodLayout.Layouts;
using PodLayout.Parts;
using PodLayout.Shops;

namespace PodLayout.Tests.Independent;

/// <summary>Boards, parts and layouts of our own invention, placed by hand.</summary>
public static class HandMade
{
    private static readonly Lazy<PlanResult> OvalOnce = new(() => MakeOval(130));
    private static readonly Lazy<PlanResult> EllOnce = new(MakeEll);
    private static readonly Lazy<PlanResult> DoorOnce = new(MakeDoor);

    public static PodType Square { get; } = new("120x120", new PodFootprint.Rectangle(120, 120), 6, 6, 100, true, 80, 1);

    public static PodType Narrow { get; } = new("120x60", new PodFootprint.Rectangle(120, 60), 6, 6, 100, true, 20, 1);

    public static PodType Small { get; } = new("60x60", new PodFootprint.Rectangle(60, 60), 6, 6, 100, false, 20, 1);

    public static PodType Round { get; } = new("round 120", new PodFootprint.Round(120), 6, 6, 100, false, 20, 1);

    /// <summary>Grooves every 30 mm from (15, 15), a port in the middle of a cell every 120 mm.</summary>
    public static GridBoard Board(double widthMm, double lengthMm, double firstPortMm = 60) => new(
        "shop board", widthMm, lengthMm, 30, 6.35, 7.5, new(15, 15), new(5, 5, widthMm - 5, lengthMm - 5),
        [
            .. from row in Enumerable.Range(0, (int)((lengthMm - firstPortMm - 10) / 120) + 1)
               from column in Enumerable.Range(0, (int)((widthMm - firstPortMm - 10) / 120) + 1)
               select new Port(Invariant($"{column + 1}-{row + 1}"), new(firstPortMm + 120 * column, firstPortMm + 120 * row), PortState.Working),
        ],
        12, 2, []);

    public static Shop Shop(GridBoard board) => new("bench shop", board, [Square, Narrow, Small, Round], 0);

    /// <summary>|x/a|^n + |y/b|^n = 1 in chords, about the drawing's zero.</summary>
    public static Ring SuperEllipse(double a, double b, double n, int points = 240) => new(
        [.. Enumerable.Range(0, points).Select(i =>
        {
            var (sin, cos) = Math.SinCos(2 * Math.PI * (i + 0.5) / points);
            return new Point2(
                a * Math.Sign(cos) * Math.Pow(Math.Abs(cos), 2 / n), b * Math.Sign(sin) * Math.Pow(Math.Abs(sin), 2 / n));
        })]);

    public static Ring Circle(double x, double y, double radius, int points = 72) =>
        new([.. SuperEllipse(radius, radius, 2, points).Points.Select(p => p + new Point2(x, y))]);

    public static Ring Rectangle(double minX, double minY, double maxX, double maxY) =>
        new([new(minX, minY), new(maxX, minY), new(maxX, maxY), new(minX, maxY)]);

    public static Job Job(Part part, GridBoard board, Point2 zero, double angleDeg, SupportRules? rules = null) => new(
        part.Name + ", first side", part, Shop(board), new(8, 3), rules ?? new(140, 100, null, 10, 50),
        new PlacementWish.Given(zero, angleDeg));

    /// <summary>An oval top with a cable hole and a knot, on seven pods.</summary>
    public static PlanResult Oval() => OvalOnce.Value;

    /// <summary>A small ell on a small board, on one round pod and one square one.</summary>
    public static PlanResult Ell() => EllOnce.Value;

    /// <summary>A door on the largest board, on sixty pods.</summary>
    public static PlanResult Door() => DoorOnce.Value;

    /// <summary>The oval with another limit inside.</summary>
    public static PlanResult MakeOval(double interiorSpanMm)
    {
        var board = Board(1200, 600);
        board = board with
        {
            Ports = [.. board.Ports.Select(p => p.Name switch
            {
                "3-4" => p with { State = PortState.Dead },
                "9-2" => p with { State = PortState.StuckOpen },
                _ => p,
            })],
            Obstacles =
            [
                new("left pin", ObstacleKind.Pin, new ObstacleShape.Disc(new(30, 300), 20), 5),
                new("rail", ObstacleKind.Stop, new ObstacleShape.Rectangle(new(300, 20, 500, 50)), 3),
                new("old cut", ObstacleKind.Damage, new ObstacleShape.Rectangle(new(1050, 420, 1110, 500)), 4),
            ],
        };
        var shape = new PartShape(
            SuperEllipse(300, 200, 2.6), [Circle(0, 60, 40)], [Circle(-85, -10, 14, 24)]);
        var part = new Part("Oval top", shape, 32, "hard maple", 20);
        var job = Job(part, board, new(600, 300), 0, new(140, 100, interiorSpanMm, 10, 50));
        return Plan(job,
        [
            (Square, false, 17, 4), (Square, false, 12, 5), (Square, false, 23, 5), (Narrow, true, 21, 6),
            (Square, false, 12, 10), (Square, false, 23, 10), (Small, false, 17, 13),
        ]);
    }

    private static PlanResult MakeEll()
    {
        var shape = new PartShape(new(
            [new(0, 0), new(240, 0), new(240, 140), new(140, 140), new(140, 240), new(0, 240)]), [], []);
        var part = new Part("Ell", shape, 25, "", 90);
        return Plan(
            Job(part, Board(300, 300, 90), new(30, 30), 0, new(130, 130, null, 10, 50)), [(Round, false, 1, 1), (Small, false, 1, 6)]);
    }

    private static PlanResult MakeDoor()
    {
        var shape = new PartShape(Rectangle(0, 0, 3400, 1300), [], [Circle(900, 300, 22, 24)]);
        var part = new Part("Door leaf", shape, 40, "white oak", 0);
        var seats = from row in Enumerable.Range(0, 5)
                    from column in Enumerable.Range(0, 12)
                    select (column % 4 == 3 ? Narrow : Square, column % 4 == 3, column == 7 ? 72 : 5 + (int)(9.5 * column), 6 + 8 * row);
        return Plan(Job(part, Board(3600, 1500), new(100, 100), 0, new(260, 200, null, 20, 50)), [.. seats]);
    }

    /// <summary>The oval without a layout: two stretches and a spot that no pod reaches.</summary>
    public static PlanResult NoLayout()
    {
        var oval = Oval();
        var outline = oval.Job.Part.Shape.Outline.Points;
        return oval with
        {
            Layout = null,
            Unsupported =
            [
                new(outline[5], outline[30], Along(outline, 5, 30), SupportLimit.Edge, "The wood is too narrow here for any pod.", 162.34),
                new(outline[140], outline[160], Along(outline, 140, 160), SupportLimit.Edge, "No working port lies under any seat that reaches it.", null),
                new(new(-85, 20), new(-85, 20), 0, SupportLimit.Interior, "Only seats over the knot would reach it.", 144),
            ],
            Findings =
            [
                new("no-layout", Severity.Refused, FindingKind.NoLayout, "Three places cannot be supported.", null,
                    "Allow more overhang, or move the part."),
            ],
        };
    }

    /// <summary>The layout with these pods: (type, turned, column, row), ports by position, support measured by the checker.</summary>
    public static PlanResult Plan(Job job, ImmutableArray<(PodType Type, bool Turned, int Column, int Row)> seats)
    {
        var placement = job.Placement is PlacementWish.Given g ? new Placement(g.ZeroOnBoard, g.AngleDeg) : throw new InvalidOperationException();
        ImmutableArray<PlacedPod> pods = [.. seats.Select(s => Pod(job.Shop.Board, s.Type, s.Turned, s.Column, s.Row))];
        var layout = new Layout(
            placement, pods, [],
            new(ProofScope.ThisPlacement, pods.Length, 0, $"Placed by hand: nothing is proven beyond these {pods.Length} pods."));
        return Measured(new(job, layout, [], [], false, new(100, 100, 1)));
    }

    public static PlacedPod Pod(GridBoard board, PodType type, bool turned, int column, int row)
    {
        double x = type.Footprint.ExtentXMm, y = type.Footprint.ExtentYMm;
        (x, y) = turned ? (y, x) : (x, y);
        var centre = new Point2(board.FirstGroove.X + column * board.PitchMm + x / 2, board.FirstGroove.Y + row * board.PitchMm + y / 2);
        var inset = type.SealInsetBelowMm + board.PortMarginMm + board.PortDiameterMm / 2;
        var ports = board.Ports.Where(p => p.State == PortState.Working
            && Math.Abs(p.Centre.X - centre.X) <= x / 2 - inset && Math.Abs(p.Centre.Y - centre.Y) <= y / 2 - inset);
        return new(type, turned, column, row, centre, [.. ports.OrderBy(p => Plane.Span(p.Centre, centre)).Take(type.PortsNeeded)]);
    }

    /// <summary>The same with the support points that belong to its pods.</summary>
    public static PlanResult Measured(PlanResult result)
    {
        var (job, layout) = (result.Job, result.Layout!);
        var (angle, zero, rules) = (layout.Placement.AngleDeg, layout.Placement.ZeroOnBoard, job.Support);
        ImmutableArray<ImmutableArray<Point2>> wood =
            [.. job.Part.Shape.Holes.Prepend(job.Part.Shape.Outline).Select(r => Plane.Lay(r.Points, angle, zero))];
        var edge = new WoodPaths(wood, rules.OverhangAlongGrainMm, rules.OverhangAcrossGrainMm, job.Part.GrainDeg + angle);
        var span = rules.InteriorSpanMm ?? 1;
        var inside = new WoodPaths(wood, span, span, 0);
        var bodies = layout.Pods.Select(p => Stand.BodyOf(p).Polygon()).ToList();
        SupportPoint Point(Point2 p, bool isEdge)
        {
            var at = Plane.Lay(p, angle, zero);
            var paths = isEdge ? edge : inside;
            var share = paths.ShareOfLimit(at, bodies);
            var nearest = Enumerable.Range(0, bodies.Count)
                .OrderBy(i => Plane.Span(at, layout.Pods[i].Centre))
                .First(i => paths.ShareOfLimit(at, [bodies[i]]) <= share + 1e-9);
            return new(p, isEdge ? SupportLimit.Edge : SupportLimit.Interior, share, nearest);
        }

        return result with
        {
            Layout = layout with
            {
                SupportPoints =
                [
                    .. PointsToSupport.OnEdges(job.Part.Shape, rules.EdgeStepMm).Select(p => Point(p, true)),
                    .. PointsToSupport.Inside(job.Part.Shape, rules).Select(p => Point(p, false)),
                ],
            },
        };
    }

    private static double Along(ImmutableArray<Point2> points, int from, int to) =>
        Enumerable.Range(from, to - from).Sum(i => Plane.Span(points[i], points[i + 1]));

    private static string Invariant(FormattableString text) => FormattableString.Invariant(text);
}
