using System.Collections.Immutable;
using PodLayout.Findings;

namespace PodLayout.Woods;

/// <summary>The woods that are known by name.</summary>
/// <remarks>
/// Wood Handbook, USDA Forest Products Laboratory, FPL-GTR-282 (2021; the same rows stand in FPL-GTR-190, 2010): specific gravity
/// and bending modulus from tables 5-3 and 5-5, elastic ratios from tables 5-1 and 5-2. Figures that were put down from memory
/// are marked so. Leaks through the face are from memory throughout. In brackets the modulus of rupture and the tension across the
/// grain at 12 %, MPa, from tables 5-3 and 5-5, the latter by way of a transcription; the tables have no tension of sugar maple (that of
/// black maple stands here, which is sold as hard maple too), of red maple (that of silver maple) and of imported woods.
/// </remarks>
public static class WoodTable
{
    private const double Tight = 20, Open = 60, Soft = 30, Panel = 800;

    /// <summary>All rows.</summary>
    public static ImmutableArray<WoodSpecies> All { get; } =
    [
        Solid("hard maple", ["sugar maple", "rock maple"], Read(.63), Read(12.6), (Read(109), Read(4.6)), new(Read(.065), Read(.132), Memory(.111), Memory(.063), Memory(.424), Memory(.476)), Tight),
        Solid("red maple", ["soft maple"], Read(.54), Memory(11.3), (Memory(92), Read(3.4)), new(Memory(.067), Memory(.140), Memory(.133), Memory(.074), Memory(.434), Memory(.509)), Tight),
        Solid("northern red oak", ["red oak"], Read(.63), Read(12.5), (Read(99), Read(5.5)), new(Read(.082), Read(.154), Memory(.089), Memory(.081), Memory(.350), Memory(.448)), Open),
        Solid("white oak", [], Read(.68), Read(12.3), (Read(105), Read(5.5)), new(Read(.072), Read(.163), Read(.086), null, Memory(.369), Memory(.428)), Tight),
        Solid("black walnut", ["walnut", "American walnut"], Read(.55), Read(11.6), (Read(101), Read(4.8)), new(Memory(.056), Memory(.106), Memory(.085), Memory(.062), Memory(.495), Memory(.632)), Tight),
        Solid("black cherry", ["cherry", "American cherry"], Read(.50), Read(10.3), (Read(85), Read(3.9)), new(Memory(.086), Memory(.197), Memory(.147), Memory(.097), Memory(.392), Memory(.428)), Tight),
        Solid("white ash", ["ash", "American ash"], Read(.60), Read(12.0), (Memory(103), Read(6.5)), new(Memory(.080), Memory(.125), Memory(.109), Memory(.077), Memory(.371), Memory(.440)), Open),
        Solid("yellow birch", [], Read(.62), Read(13.9), (Read(114), Read(6.3)), new(Memory(.050), Memory(.078), Read(.074), Memory(.068), Memory(.426), Memory(.451)), Tight),
        // Ratios of European beech: Journal of Wood Science (2019), doi 10.1186/s10086-019-1794-4, table 1.
        Solid("American beech", ["beech"], Memory(.64), Memory(11.9), (Read(103), Read(7.0)), new(Read(774 / 12205.0), Read(1858 / 12205.0), Read(899 / 12205.0), Read(595 / 12205.0), Read(.502), Read(.705)), Tight),
        Solid("American elm", ["elm", "white elm"], Memory(.50), Memory(9.2), (Memory(81), Read(4.6)), null, Open),
        Solid("yellow-poplar", ["poplar", "tulip poplar", "tulipwood"], Read(.42), Read(10.9), (Read(70), Read(3.7)), new(Memory(.043), Memory(.092), Memory(.075), Memory(.069), Memory(.318), Memory(.392)), Tight),
        Solid("true mahogany", ["Honduran mahogany", "Honduras mahogany", "genuine mahogany"], Read(.45), Read(10.3), (Memory(79), null), new(Memory(.064), Memory(.107), Memory(.066), Memory(.086), Memory(.314), Memory(.533)), Open) with { IsGreen = true },
        Solid("African mahogany", ["khaya"], Read(.42), Read(9.7), (Memory(74), null), new(Memory(.050), Memory(.111), Memory(.088), Memory(.059), Memory(.297), Memory(.641)), Open) with { IsGreen = true },
        Solid("teak", [], Read(.63), Read(11.0), (Read(101), null), null, Open),
        Solid("Douglas-fir", ["Oregon pine"], Read(.48), Read(13.4), (Memory(85), Read(2.3)), new(Read(.050), Read(.068), Read(.064), Read(.078), Memory(.292), Memory(.449)), Soft),
        // Ratios of western white pine: the eastern has no row.
        Solid("eastern white pine", ["white pine"], Read(.35), Read(8.55), (Memory(59), Read(2.1)), new(Memory(.038), Memory(.078), Memory(.052), Memory(.048), Memory(.329), Memory(.344)), Soft),
        new("birch plywood", ["Baltic birch", "Baltic birch plywood", "birch ply"], WoodKind.Plywood, Memory(.68), false, Memory(10.0 / 1.10), null, Tight) { RuptureMPa = Memory(40), TensionAcrossMPa = Memory(7) },
        // The middle of .7 to .9.
        new("MDF", ["medium density fibreboard", "medium density fiberboard", "fibreboard", "fiberboard"], WoodKind.Fibreboard, Read(.80), false, Read(3.59), null, Panel) { RuptureMPa = Memory(24) },
    ];

    // Words that mean several woods, of which the table may not even have the one that is meant.
    private static readonly ImmutableDictionary<string, ImmutableArray<string>> Families = new Dictionary<string, ImmutableArray<string>>
    {
        ["maple"] = ["hard maple", "red maple"],
        ["oak"] = ["northern red oak", "white oak"],
        ["mahogany"] = ["true mahogany", "African mahogany"],
        ["birch"] = ["yellow birch", "birch plywood"],
        ["pine"] = ["eastern white pine"],
        ["fir"] = ["Douglas-fir"],
        ["plywood"] = ["birch plywood"],
        ["ply"] = ["birch plywood"],
    }.ToImmutableDictionary();

    /// <summary>The wood of a name; null when it is none of the table's, or could be several.</summary>
    public static WoodSpecies? Find(string name)
    {
        var plain = Plain(name);
        return All.FirstOrDefault(w => w.AlsoCalled.Prepend(w.Name).Any(n => Plain(n) == plain));
    }

    /// <summary>Names of the table that an unknown name may have meant; at least one.</summary>
    public static ImmutableArray<string> Near(string name)
    {
        var plain = Plain(name);
        if (Families.TryGetValue(plain, out var family))
        {
            return family;
        }

        var names = All.SelectMany(w => w.AlsoCalled.Prepend(w.Name)).ToList();
        // A word in common tells more than letters in common: "European beech" is no "black cherry".
        var words = plain.Split(' ');
        var alike = names.Where(n => Plain(n).Split(' ').Contains(words[^1])).ToList();
        return [.. (alike.Count > 0 ? alike : NearestName.InOrder(plain, names, 1)).Select(n => Find(n)!.Name).Distinct().Take(3)];
    }

    private static WoodSpecies Solid(
        string name, ImmutableArray<string> alsoCalled, Figure gravity, Figure bendingGPa, (Figure Rupture, Figure? Across) strengthMPa, ElasticRatios? ratios, double leak) =>
        new(name, alsoCalled, WoodKind.Solid, gravity, false, bendingGPa, ratios, leak)
        {
            RuptureMPa = strengthMPa.Rupture,
            TensionAcrossMPa = strengthMPa.Across,
        };

    private static Figure Read(double value) => new(value, false);

    private static Figure Memory(double value) => new(value, true);

    private static string Plain(string name) => string.Join(
        ' ', name.ToLowerInvariant().Replace('-', ' ').Split(' ', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries));
}
