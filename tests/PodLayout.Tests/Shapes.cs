using PodLayout.Geometry;
using PodLayout.Jobs;
using PodLayout.Parts;
using PodLayout.Shops;

namespace PodLayout.Tests;

/// <summary>Parts, boards and jobs that tests start from.</summary>
internal static class Shapes
{
    public static Ring Rectangle(double x, double y, double width, double height) =>
        new([new(x, y), new(x + width, y), new(x + width, y + height), new(x, y + height)]);

    public static Ring Circle(double x, double y, double radius, int sides) => new([.. Enumerable.Range(0, sides).Select(i =>
        new Point2(x + radius * Math.Cos(2 * Math.PI * i / sides), y + radius * Math.Sin(2 * Math.PI * i / sides)))]);

    public static Ring SuperEllipse(double halfX, double halfY, double exponent, int sides) =>
        new([.. Enumerable.Range(0, sides).Select(i =>
        {
            double t = 2 * Math.PI * i / sides, c = Math.Cos(t), s = Math.Sin(t);
            return new Point2(
                halfX * Math.Sign(c) * Math.Pow(Math.Abs(c), 2 / exponent),
                halfY * Math.Sign(s) * Math.Pow(Math.Abs(s), 2 / exponent));
        })]);

    /// <summary>A round body whose radius swings a few times: never crosses itself.</summary>
    public static Ring Wavy(double radius, double squash, IReadOnlyList<(int Count, double Share, double Phase)> waves, int sides) =>
        new([.. Enumerable.Range(0, sides).Select(i =>
        {
            var t = 2 * Math.PI * i / sides;
            var r = radius * (1 + waves.Sum(w => w.Share * Math.Cos(w.Count * t + w.Phase)));
            return new Point2(r * Math.Cos(t), squash * r * Math.Sin(t));
        })]);

    public static PartShape OvalTop() => new(SuperEllipse(600, 300, 2.6, 720), [Circle(220, 40, 60, 172)], []);

    public static PartShape UPart() => new(
        new([new(0, 0), new(700, 0), new(700, 500), new(560, 500), new(560, 140), new(140, 140), new(140, 500), new(0, 500)]),
        [], []);

    public static PodType Pod(double width, double length, bool mayTurn = false, int stock = 99) => new(
        $"{width:0}x{length:0}", new PodFootprint.Rectangle(width, length), 0, 0, 50, mayTurn, stock, 1);

    /// <summary>A board of 30 mm pitch with a port in the first cell of each 120 mm square.</summary>
    public static GridBoard Board(double width, double length, double portSpacing = 120, double portOffset = 15)
    {
        var ports = from row in Enumerable.Range(0, (int)Math.Ceiling((length - portOffset) / portSpacing))
                    from column in Enumerable.Range(0, (int)Math.Ceiling((width - portOffset) / portSpacing))
                    select new Port(
                        $"{column + 1}-{row + 1}",
                        new(portOffset + column * portSpacing, portOffset + row * portSpacing),
                        PortState.Working);
        return new("test board", width, length, 30, 6, 7, default, new(0, 0, width, length), [.. ports], 8, 1, []);
    }

    public static Job JobFor(
        PartShape shape,
        GridBoard board,
        IEnumerable<PodType> pods,
        double overhangMm,
        double marginMm = 3,
        PlacementWish? placement = null,
        double? acrossMm = null,
        double grainDeg = 0,
        double? interiorSpanMm = null) => new(
            "test job",
            new Part("test part", shape, 30, "", grainDeg),
            new Shop("test shop", board, [.. pods], 0),
            new Margins(marginMm, marginMm),
            new SupportRules(overhangMm, acrossMm ?? overhangMm, interiorSpanMm, 10, 30),
            placement ?? new PlacementWish.Search([0]));
}
