using System.Collections.Immutable;
using PodLayout.Geometry;
using PodLayout.Layouts;
using PodLayout.Shops;
using PodLayout.Tests.Independent;

namespace PodLayout.Tests.Handover.Setup;

/// <summary>Large boards on which many pods stand: in rows, round the edges of a part, in blocks.</summary>
internal static class CrowdedCards
{
    private static readonly Dictionary<string, Func<PlanResult>> ByName = new(StringComparer.Ordinal)
    {
        ["rows of small pods"] = () => Cards.Grid(3600, 1500, 60, HandMade.Small),
        ["rows of square pods"] = () => Cards.Grid(3600, 1500, 60, HandMade.Square),
        ["rows on an upright board"] = () => Cards.Grid(1500, 3600, 60, HandMade.Small),
        ["rows on a long board"] = () => Cards.Grid(3600, 600, 60, HandMade.Small),
        ["door"] = HandMade.Door,
        ["round the edges"] = () => Scattered(48, p => p),
        ["round the edges, upright"] = () => Scattered(48, p => new(p.Y, p.X)),
        ["round the edges, 60"] = () => Scattered(60, p => p),
        ["anywhere"] = () => Anywhere(1, 60, 3500, 1400),
        ["anywhere, near to each other"] = () => Anywhere(2, 60, 3000, 1200),
        ["anywhere, nearer to each other"] = () => Anywhere(2, 60, 2400, 900),
        ["anywhere, round, square, small and narrow"] = () => Anywhere(3, 48, 3500, 1400),
        ["block of square pods"] = () => Block(120, HandMade.Square, 10, 6, 4, 4),
        ["block of round pods"] = () => Block(120, HandMade.Round, 12, 5, 4, 4),
        ["block of narrow pods"] = () => Block(60, HandMade.Narrow, 10, 6, 4, 4),
        ["pairs of small pods"] = () => Block(60, HandMade.Small, 12, 5, 4, 4),
        ["rows of small pods, one against the other"] = () => Block(60, HandMade.Small, 30, 2, 2, 6),
        ["block of small pods with no gap"] = () => Block(60, HandMade.Small, 20, 3, 2, 2),
        ["square block of small pods with no gap"] = () => Block(60, HandMade.Small, 10, 6, 2, 2),
        ["block of small pods with no gap, at the datum"] = () => Block(60, HandMade.Small, 10, 6, 2, 2, (1, 1)),
        ["two blocks of small pods with no gap"] = () => Two(Block(60, HandMade.Small, 5, 6, 2, 2, (1, 1)), Block(60, HandMade.Small, 5, 6, 2, 2, (101, 29))),
    };

    public static IEnumerable<string> Names => ByName.Keys;

    public static PlanResult Plan(string name) => ByName[name]();

    private static PlanResult Two(PlanResult one, PlanResult other) =>
        one with { Layout = one.Layout! with { Pods = [.. one.Layout.Pods, .. other.Layout!.Pods] } };

    // In the middle of the board, so many grooves from one to the next.
    private static PlanResult Block(double portsMm, PodType type, int columns, int rows, int across, int along, (int Column, int Row)? first = null)
    {
        var (column0, row0) = first ?? (17, 9);
        var board = HandMade.Board(3600, 1500);
        if (portsMm != 120)
        {
            board = board with
            {
                Ports =
                [
                    .. from row in Enumerable.Range(0, 24) from column in Enumerable.Range(0, 59)
                       select new Port($"{column + 1}-{row + 1}", new(30 + 60 * column, 30 + 60 * row), PortState.Working),
                ],
            };
        }

        var pods = (from row in Enumerable.Range(0, rows)
                    from column in Enumerable.Range(0, columns)
                    select HandMade.Pod(board, type, false, column0 + column * across, row0 + row * along)).ToImmutableArray();
        return Laid(board, HandMade.Rectangle(0, 0, 3300, 1200), first is null ? new(150, 150) : new(20, 20), pods);
    }

    // At random, as long as a port lies under each.
    public static PlanResult Anywhere(int seed, int count, double width, double length)
    {
        Random random = new(seed);
        var board = HandMade.Board(3600, 1500);
        PodType[] types = [HandMade.Square, HandMade.Small, HandMade.Narrow, HandMade.Round];
        List<PlacedPod> pods = [];
        while (pods.Count < count)
        {
            var pod = HandMade.Pod(board, types[random.Next(4)], random.Next(3) == 0, 2 + random.Next((int)(width / 30) - 6), 2 + random.Next((int)(length / 30) - 6));
            if (pod.OpenPorts.Length > 0 && !pods.Exists(p => p.BodyBox.Grow(-0.1).Touches(pod.BodyBox)))
            {
                pods.Add(pod);
            }
        }

        return Laid(board, HandMade.Rectangle(0, 0, 3500, 1400), new(50, 50), [.. pods]);
    }

    // Along the edge of a part with bays and points, the types by turns, each at the seat nearest to its place.
    private static PlanResult Scattered(int count, Func<Point2, Point2> laid)
    {
        var size = laid(new(3600, 1500));
        var board = HandMade.Board(size.X, size.Y);
        Ring outline = new([.. new Point2[]
        {
            new(120, 240), new(700, 90), new(1500, 330), new(2300, 80), new(3300, 60), new(3510, 500), new(3200, 820), new(3480, 1330),
            new(2700, 1440), new(2050, 1120), new(1400, 1420), new(500, 1400), new(330, 900), new(90, 700),
        }.Select(laid)]);
        var points = outline.Points;
        var sides = points.Select((a, i) => (A: a, B: points[(i + 1) % points.Length])).ToList();
        var length = sides.Sum(s => Plane.Span(s.A, s.B));
        PodType[] types = [HandMade.Square, HandMade.Small, HandMade.Narrow, HandMade.Round];
        List<PlacedPod> pods = [];
        for (var i = 0; i < count; i++)
        {
            var (type, turned) = (types[i % 4], i % 8 == 2);
            var at = length * (i + 0.5) / count;
            var (a, b) = sides.First(s => (at -= Plane.Span(s.A, s.B)) <= 0);
            var place = b + (b - a) * (at / Plane.Span(a, b));
            pods.Add((from column in Enumerable.Range(0, (int)(size.X / 30) - 5)
                      from row in Enumerable.Range(0, (int)(size.Y / 30) - 5)
                      let pod = HandMade.Pod(board, type, turned, column, row)
                      where pod.OpenPorts.Length > 0 && Plane.Span(pod.Centre, place) < 400
                          && !pods.Exists(p => p.BodyBox.Grow(-0.1).Touches(pod.BodyBox)) && IsIn(points, pod.BodyBox)
                      orderby Math.Round(Plane.Span(pod.Centre, place), 6)
                      select pod).First());
        }

        return Laid(board, outline, default, [.. pods]);
    }

    private static bool IsIn(ImmutableArray<Point2> outline, Box2 box) =>
        Enumerable.Range(0, 9).All(i => new[] { box.MinX + box.Width * i / 8, box.MaxX }.All(x => new[] { box.MinY, box.MinY + box.Height * i / 8, box.MaxY }.All(y =>
        {
            var isIn = false;
            for (var k = 0; k < outline.Length; k++)
            {
                Point2 a = outline[k], b = outline[(k + 1) % outline.Length];
                isIn ^= a.Y <= y != b.Y <= y && x < a.X + (y - a.Y) / (b.Y - a.Y) * (b.X - a.X);
            }

            return isIn;
        })));

    private static PlanResult Laid(GridBoard board, Ring outline, Point2 zero, ImmutableArray<PlacedPod> pods) => new(
        HandMade.Job(new("Panel", new(outline, [], []), 20, "ash", 0), board, zero, 0, new(400, 400, null, 50, 100)),
        new(new(zero, 0), pods, [], new(ProofScope.ThisPlacement, 1, 0, "Placed by hand: nothing is proven.")), [], [], false, new(1, 0, 1));
}
