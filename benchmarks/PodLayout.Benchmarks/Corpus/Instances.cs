using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using PodLayout.Forces;
using PodLayout.Geometry;
using PodLayout.Jobs;
using PodLayout.Jobs.Written;
using PodLayout.Parts;
using PodLayout.Reading;
using PodLayout.Shops;

namespace PodLayout.Benchmarks.Corpus;

/// <summary>All instances, in order. Sizes, shops and limits are dealt out in turn, whatever comes of them.</summary>
internal static class Instances
{
    private static readonly int[] SidesMm = [300, 750, 450, 1050, 600, 1350, 400, 900, 500, 1200, 1500];

    private static readonly double[] AreasM2 = [0.05, 0.1, 0.2, 0.4, 0.8, 1.6, 3];

    private static readonly string[] Overhangs = ["60", "75", "90", """{ "alongGrainMm": 90, "acrossGrainMm": 60 }"""];

    // Coasts and serifs reach out where no pod can follow.
    private static readonly string[] FarOverhangs = ["90", "120", "105", """{ "alongGrainMm": 120, "acrossGrainMm": 80 }"""];

    private static readonly string[] Spans = ["200", "null", "250"];

    // Above this a part goes onto the long boards.
    private const double UsualSideMm = 1050;

    // Below this it needs small pods, and ports that lie close.
    private const double SmallSideMm = 500;

    private const int HeldEvery = 4;

    /// <summary>The instances.</summary>
    public static ImmutableArray<Instance> All { get; } = Both([.. FromFile("maps.json", "map", 3), .. FromFile("glyphs.json", "glyph", 2), .. Computed()]);

    private static readonly Lazy<ImmutableHashSet<string>> FastNames = new(() =>
        [.. File.ReadAllLines(Repository.Path("benchmarks", "corpus", "fast.txt")).Where(l => l.Length > 0 && l[0] != '#')]);

    /// <summary>Those that CI runs.</summary>
    public static ImmutableArray<Instance> Fast => [.. All.Where(i => FastNames.Value.Contains(i.Name))];

    /// <summary>An instance by its name.</summary>
    public static Instance Named(string name) =>
        All.FirstOrDefault(i => i.Name == name) ?? throw new ArgumentException($"No instance is called {name}.", nameof(name));

    /// <summary>A job of some rings, read and checked as a drawing's are.</summary>
    public static Job JobOf(string name, ImmutableArray<Ring> rings, Shop shop, string members)
    {
        var request = CorpusShops.Must(JobReading.Read("job.json", Encoding.UTF8.GetBytes(JobJson(name, members)), []));
        var drawing = new Drawing("part.dxf", "none", "mm", 1, 0, [.. rings.Select(r => new DrawnRing("0", r))], [], [], [new("0", rings.Length, rings.Length, 0, false)]);
        return CorpusShops.Must(PartShaping.From(drawing, request.Layers)
            .Then(shape => request.With(shape, shop))
            .Then(job => Machining.Apply(job, drawing, request.Cuts, null, "job.json")));
    }

    private static string JobJson(string name, string members) =>
        $$"""{ "version": 1, "name": "{{name}}", "drawing": "part.dxf", "units": "mm", "shop": "shop.json", "thicknessMm": 30, {{members}} }""";

    // Every outline once, and every so many a second time, at another size on another board.
    private static IEnumerable<Instance> FromFile(string file, string family, int secondEvery)
    {
        var outlines = Outlines.Read(file);
        var again = outlines.Where((_, i) => i % secondEvery == 0).ToArray();
        return outlines.Concat(again).Select((outline, i) =>
        {
            var side = SidesMm[(i + (i < outlines.Length ? 0 : 5)) % SidesMm.Length];
            var shop = ShopFor(side, i + (i < outlines.Length ? 0 : 3));
            return Made(family, string.Create(CultureInfo.InvariantCulture, $"{outline.Name}-{side}"), shop, i, () => Families.Scaled(outline.Rings, side));
        });
    }

    private static IEnumerable<Instance> Computed() =>
        from f in Enumerable.Range(0, Families.All.Length)
        from a in Enumerable.Range(0, AreasM2.Length)
        let shape = Families.All[f]
        let vary = (f + 2 * a) % 5 / 4.0
        let rings = Families.OfArea(shape.Make(vary), AreasM2[a])
        let side = Math.Max(rings[0].Bounds.Width, rings[0].Bounds.Height)
        select Made(
            "ours", string.Create(CultureInfo.InvariantCulture, $"{shape.Name}-{AreasM2[a]}m2"), ShopFor(side, f + a), 2 * f + a, () => rings);

    // Support alone, and then every so many with the cutter that is assumed along the outline: the layout must hold the part too.
    private static ImmutableArray<Instance> Both(ImmutableArray<Instance> held) =>
    [
        .. held.Select(i => i with { Make = () => WithoutCutter(i.Make()) }),
        .. held.Where((_, n) => n % HeldEvery == HeldEvery / 2).Select(i => i with { Name = "held-" + i.Name, Family = "held" }),
    ];

    /// <summary>The job with nothing said or assumed of a cutter.</summary>
    public static Job WithoutCutter(Job job) => job with { Part = job.Part with { Loads = CutterLoads.None } };

    private static string ShopFor(double sideMm, int turn)
    {
        var shops = sideMm > UsualSideMm ? CorpusShops.Long : sideMm < SmallSideMm ? CorpusShops.Small : CorpusShops.Usual;
        return shops[turn % shops.Length];
    }

    private static Instance Made(string family, string shape, string shop, int turn, Func<ImmutableArray<Ring>> rings)
    {
        var name = $"{family}-{shape}-{shop}";
        var overhangs = family is "map" or "glyph" ? FarOverhangs : Overhangs;
        var members = string.Create(
            CultureInfo.InvariantCulture, $"\"overhangMm\": {overhangs[turn % overhangs.Length]}, \"interiorSpanMm\": {Spans[turn / 2 % Spans.Length]}");
        return new(name, family, () => JobOf(name, rings(), CorpusShops.Of(shop), members), () => new(CorpusShops.Json(shop), JobJson(name, members), rings()));
    }
}
