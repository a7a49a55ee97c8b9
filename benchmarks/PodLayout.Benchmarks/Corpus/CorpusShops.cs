using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using PodLayout.Shops;
using PodLayout.Shops.Written;

namespace PodLayout.Benchmarks.Corpus;

/// <summary>Boards and pod sets of the corpus, by short names; read as any shop file is.</summary>
internal static class CorpusShops
{
    private static readonly ImmutableArray<(string Name, double PitchMm, double PortsMm, double WidthMm, double LengthMm, (double, double, int)[] Pods)> Known =
    [
        ("p30", 30, 120, 1500, 1050, [(120, 120, 40), (120, 60, 40), (60, 60, 40), (60, 30, 20)]),
        ("p25", 25, 100, 1500, 1000, [(100, 100, 60), (100, 50, 60), (50, 50, 60)]),
        ("p50", 50, 150, 1500, 1200, [(150, 150, 30), (150, 100, 30), (150, 50, 40), (50, 50, 40)]),
        ("p30-dense", 30, 60, 1800, 1200, [(120, 120, 60), (120, 60, 60), (60, 60, 60), (60, 30, 40)]),
        ("p25-dense", 25, 50, 1800, 1200, [(100, 100, 60), (75, 50, 60), (50, 50, 60), (50, 25, 40)]),
        ("p50-dense", 50, 50, 1800, 1200, [(150, 100, 40), (100, 100, 40), (100, 50, 40), (50, 50, 60)]),
        ("p30-scarce", 30, 60, 1500, 1050, [(120, 120, 6), (120, 60, 8), (60, 60, 10), (90, 30, 6)]),
        ("p30-long", 30, 120, 3600, 2400, [(150, 150, 80), (120, 120, 80), (120, 60, 80), (60, 60, 80)]),
        ("p25-long", 25, 100, 3600, 2400, [(150, 150, 80), (100, 100, 80), (100, 50, 80), (50, 50, 80)]),
        ("p50-long", 50, 150, 3600, 2400, [(200, 150, 80), (150, 150, 80), (150, 100, 80), (150, 50, 80)]),
    ];

    private static readonly Dictionary<string, Shop> Made = [];

    /// <summary>The shops that lay out parts of up to 1500 mm.</summary>
    public static ImmutableArray<string> Usual { get; } = [.. Known.Select(k => k.Name).Where(n => !n.EndsWith("-long", StringComparison.Ordinal))];

    /// <summary>The shops with small pods and a port for every few grooves.</summary>
    public static ImmutableArray<string> Small { get; } = ["p25-dense", "p30-dense", "p30-scarce"];

    /// <summary>The shops for parts of up to 3 m².</summary>
    public static ImmutableArray<string> Long { get; } = [.. Known.Select(k => k.Name).Where(n => n.EndsWith("-long", StringComparison.Ordinal))];

    /// <summary>A shop by its name.</summary>
    public static Shop Of(string name)
    {
        if (!Made.TryGetValue(name, out var shop))
        {
            shop = Read(name, Json(name));
            Made.Add(name, shop);
        }

        return shop;
    }

    /// <summary>The file of a shop.</summary>
    public static string Json(string name)
    {
        var (_, pitch, ports, width, length, pods) = Known.Single(k => k.Name == name);
        return Json(name, pitch, ports, width, length, pods);
    }

    /// <summary>A shop with its first groove and port half a pitch and two pitches from the board's zero.</summary>
    public static Shop Make(string name, double pitchMm, double portsMm, double widthMm, double lengthMm, (double Width, double Length, int Stock)[] pods) =>
        Read(name, Json(name, pitchMm, portsMm, widthMm, lengthMm, pods));

    private static Shop Read(string name, string json) => Must(ShopReading.Read(name, Encoding.UTF8.GetBytes(json)));

    private static string Json(string name, double pitchMm, double portsMm, double widthMm, double lengthMm, (double Width, double Length, int Stock)[] pods)
    {
        var written = pods.Select(p => string.Create(CultureInfo.InvariantCulture, $$"""
            { "name": "{{p.Width}} x {{p.Length}}", "widthMm": {{p.Width}}, "lengthMm": {{p.Length}}, "sealInsetAboveMm": 5, "sealInsetBelowMm": 5,
              "heightMm": 60, "mayTurn": {{(p.Width == p.Length ? "false" : "true")}}, "stock": {{p.Stock}} }
            """));
        return string.Create(CultureInfo.InvariantCulture, $$"""
            { "version": 1, "name": "{{name}}", "board": { "name": "board", "widthMm": {{widthMm}}, "lengthMm": {{lengthMm}}, "pitchMm": {{pitchMm}},
              "grooveWidthMm": {{Math.Min(6, pitchMm / 3)}}, "grooveDepthMm": 7, "latticeOriginMm": [{{pitchMm / 2}}, {{pitchMm / 2}}],
              "ports": { "diameterMm": {{Math.Min(8, pitchMm / 3)}}, "marginMm": 1, "lattice": { "spacingMm": {{portsMm}}, "firstMm": [{{2 * pitchMm}}, {{2 * pitchMm}}] } } },
              "pods": [{{string.Join(',', written)}}] }
            """);
    }

    /// <summary>The value, or a stop with the first refusal.</summary>
    public static T Must<T>(Findings.Outcome<T> outcome)
        where T : class => outcome.Value ?? throw new InvalidOperationException(outcome.Refusal!.ToString());
}
