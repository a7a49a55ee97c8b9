using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using PodLayout.Cuts;
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

    private static readonly string[] Spans = ["200", "null", "250"];

    // Above this a part goes onto the long boards.
    private const double UsualSideMm = 1050;

    /// <summary>The instances.</summary>
    public static ImmutableArray<Instance> All { get; } = [.. FromFile("maps.json", "map", 3), .. FromFile("glyphs.json", "glyph", 2), .. Computed(), .. Held()];

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
        var text = $$"""{ "version": 1, "name": "{{name}}", "drawing": "part.dxf", "thicknessMm": 30, {{members}} }""";
        var request = CorpusShops.Must(JobReading.Read("job.json", Encoding.UTF8.GetBytes(text), []));
        var drawing = new Drawing("part.dxf", "none", "mm", 1, 0, [.. rings.Select(r => new DrawnRing("0", r))], [], [], [new("0", rings.Length, rings.Length, 0, false)]);
        return CorpusShops.Must(PartShaping.From(drawing, request.Layers)
            .Then(shape => request.With(shape, shop))
            .Then(job => Cutting.Apply(job, drawing, request.Cuts, null, "job.json"))
            .Then(job => Loading.Apply(job, drawing, request.Cuts, null, "job.json")));
    }

    // Every outline once, and every so many a second time, at another size on another board.
    private static IEnumerable<Instance> FromFile(string file, string family, int secondEvery)
    {
        var outlines = Outlines.Read(file);
        var again = outlines.Where((_, i) => i % secondEvery == 0).ToArray();
        return outlines.Concat(again).Select((outline, i) =>
        {
            var side = SidesMm[(i + (i < outlines.Length ? 0 : 5)) % SidesMm.Length];
            var shop = ShopFor(side, i + (i < outlines.Length ? 0 : 3));
            return Made(family, string.Create(CultureInfo.InvariantCulture, $"{outline.Name}-{side}"), shop, i, () => Families.Scaled(outline.Rings, side), "");
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
            "ours", string.Create(CultureInfo.InvariantCulture, $"{shape.Name}-{AreasM2[a]}m2"), ShopFor(side, f + a), 2 * f + a, () => rings, "");

    // With a cutter along the edges: the layout must hold the part too.
    private static IEnumerable<Instance> Held() =>
        from f in Enumerable.Range(0, Families.All.Length)
        from a in new[] { 0, 2, 3 }
        where (f + a) % 2 == 0
        let shape = Families.All[f]
        let rings = Families.OfArea(shape.Make(0.5), AreasM2[a])
        let side = Math.Max(rings[0].Bounds.Width, rings[0].Bounds.Height)
        select Made(
            "held", string.Create(CultureInfo.InvariantCulture, $"{shape.Name}-{AreasM2[a]}m2"), ShopFor(side, 2 * f + a), f + a, () => rings,
            """, "species": "beech", "cuts": [{ "operation": "throughProfile", "along": "outline", "side": "outside", "toolDiameterMm": 12, "depthBelowUndersideMm": 0.5 }]""");

    private static string ShopFor(double sideMm, int turn)
    {
        var shops = sideMm > UsualSideMm ? CorpusShops.Long : CorpusShops.Usual;
        return shops[turn % shops.Length];
    }

    private static Instance Made(string family, string shape, string shop, int turn, Func<ImmutableArray<Ring>> rings, string more)
    {
        var name = $"{family}-{shape}-{shop}";
        var members = string.Create(
            CultureInfo.InvariantCulture, $"\"overhangMm\": {Overhangs[turn % Overhangs.Length]}, \"interiorSpanMm\": {Spans[turn / 2 % Spans.Length]}{more}");
        return new(name, family, () => JobOf(name, rings(), CorpusShops.Of(shop), members));
    }
}
