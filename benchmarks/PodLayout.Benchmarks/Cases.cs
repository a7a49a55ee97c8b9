using System.Globalization;
using PodLayout.Geometry;
using PodLayout.Jobs;
using PodLayout.Jobs.Written;
using PodLayout.Parts;
using PodLayout.Reading;
using PodLayout.Shops;
using PodLayout.Shops.Written;

namespace PodLayout.Benchmarks;

/// <summary>The jobs that are measured.</summary>
internal static class Cases
{
    /// <summary>Seed of the random parts.</summary>
    public const int Seed = 20261125;

    /// <summary>Where the oval top lies when its place is given.</summary>
    public static readonly Point2 OvalAt = new(780, 400);

    private const double MarginMm = 8;

    /// <summary>An oval top: a super-ellipse of 1200 x 600 mm with a cable hole.</summary>
    public static Job Oval(double overhangMm) => JobOf(
        $"oval top, {overhangMm.ToString("0", CultureInfo.InvariantCulture)} mm",
        [SuperEllipse(600, 300, 2.6, 720), Circle(220, 40, 60, 172)], overhangMm);

    /// <summary>A U of 700 x 500 mm with legs of 140 mm.</summary>
    public static Job UPart() => JobOf(
        "U part, 60 mm",
        [new([new(0, 0), new(700, 0), new(700, 500), new(560, 500), new(560, 140), new(140, 140), new(140, 500), new(0, 500)])], 60);

    /// <summary>The sample jobs, as drawn at their first angle.</summary>
    public static IEnumerable<Job> Samples() =>
        new[] { "kidney-table", "u-yoke", "crest-rail", "chair-seat" }.Select(name =>
        {
            var folder = Repository.Path("samples", name);
            var request = Must(JobReading.Read("job.json", File.ReadAllBytes(Path.Combine(folder, "job.json")), []));
            var shop = Must(ShopReading.Read("shop.json", File.ReadAllBytes(Path.Combine(folder, request.ShopPath!))));
            var drawing = Must(DrawingReader.Read("part.dxf", File.ReadAllBytes(Path.Combine(folder, request.DrawingPath)), request.Reading));
            var job = Must(request.With(Must(PartShaping.From(drawing, request.Layers)), shop));
            return job with { Name = "sample " + name };
        });

    /// <summary>Random parts: round bodies whose radius swings a few times, some with a hole.</summary>
    public static IEnumerable<Job> Wavy(int count)
    {
        var random = new Random(Seed);
        for (var i = 0; i < count; i++)
        {
            double radius = 170 + 150 * random.NextDouble(), squash = 0.55 + 0.45 * random.NextDouble();
            (int Count, double Share, double Phase)[] waves =
            [
                (2, 0.2 * random.NextDouble(), 6 * random.NextDouble()), (3 + random.Next(3), 0.12 * random.NextDouble(), 6 * random.NextDouble()),
            ];
            List<Ring> rings =
            [
                new([.. Enumerable.Range(0, 160).Select(k =>
                {
                    var t = 2 * Math.PI * k / 160;
                    var r = radius * (1 + waves.Sum(w => w.Share * Math.Cos(w.Count * t + w.Phase)));
                    return new Point2(r * Math.Cos(t), squash * r * Math.Sin(t));
                })]),
            ];
            if (random.Next(2) == 0)
            {
                rings.Add(Circle(0.25 * radius, 10, 12 + 20 * random.NextDouble(), 48));
            }

            yield return JobOf(string.Create(CultureInfo.InvariantCulture, $"wavy part {i + 1}, 60 mm"), rings, 60);
        }
    }

    private static T Must<T>(Findings.Outcome<T> outcome)
        where T : class => outcome.Value ?? throw new InvalidOperationException(outcome.Refusal!.ToString());

    private static Job JobOf(string name, List<Ring> rings, double overhangMm)
    {
        var ports = from row in Enumerable.Range(0, 9)
                    from column in Enumerable.Range(0, 14)
                    select new Port(
            string.Create(CultureInfo.InvariantCulture, $"{column + 1}-{row + 1}"), new(15 + 120 * column, 15 + 120 * row), PortState.Working);
        // Ports beyond the board's edge are none.
        var board = new GridBoard(
            "board", 1600, 1000, 30, 6, 7, default, new(0, 0, 1600, 1000), [.. ports.Where(p => p.Centre.X < 1600 && p.Centre.Y < 1000)], 8, 1, []);
        PodType Pod(double width, double length, bool mayTurn) => new(
            string.Create(CultureInfo.InvariantCulture, $"{width:0}x{length:0}"), new PodFootprint.Rectangle(width, length), 0, 0, 50, mayTurn, 99, 1);
        var shop = new Shop("shop", board, [Pod(120, 120, false), Pod(120, 60, true), Pod(60, 60, false)], 0);
        return new(
            name, new("part", new(rings[0], [.. rings.Skip(1)], []), 30, "", 0), shop, new(MarginMm, MarginMm),
            new(overhangMm, overhangMm, null, 10, 30), new PlacementWish.Search([0]));
    }

    private static Ring Circle(double x, double y, double radius, int sides) => new([.. Enumerable.Range(0, sides).Select(i =>
        new Point2(x + radius * Math.Cos(2 * Math.PI * i / sides), y + radius * Math.Sin(2 * Math.PI * i / sides)))]);

    private static Ring SuperEllipse(double halfX, double halfY, double exponent, int sides) =>
        new([.. Enumerable.Range(0, sides).Select(i =>
        {
            var (s, c) = Math.SinCos(2 * Math.PI * i / sides);
            return new Point2(
                halfX * Math.Sign(c) * Math.Pow(Math.Abs(c), 2 / exponent), halfY * Math.Sign(s) * Math.Pow(Math.Abs(s), 2 / exponent));
        })]);
}
