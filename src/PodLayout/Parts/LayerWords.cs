using System.Globalization;
using System.Text;

namespace PodLayout.Parts;

/// <summary>
/// What the name of a layer says by itself, in the languages that drawings come in. A name alone decides nothing that could plan the
/// wrong part; it tells whether there is a doubt. Common practice of drawing offices, no source.
/// </summary>
internal static class LayerWords
{
    private static readonly string[] Frames =
    [
        "frame", "border", "sheet", "title", "page", "paper", "rahmen", "blatt", "schriftfeld", "schriftkopf", "cadre", "cartouche",
        "marco", "cuadro", "squadratura", "cornice", "kader", "ram", "stock", "blank", "rohteil", "rohling", "material", "workpiece", "background", "hintergrund", "defpoints", "viewport", "vport",
    ];

    private static readonly string[] Holes =
    [
        "hole", "bore", "drill", "bohr", "loch", "locher", "ausschnitt", "aussparung", "durchbruch", "cutout", "cut-out", "cut_out", "opening", "inner", "inside",
        "innen", "interior", "pocket", "tasche", "slot", "nut", "trou", "percage", "decoupe", "interieur", "foro", "fori", "agujero", "taladro", "window",
        "screw", "schraub", "dowel", "dubel", "groove", "recess", "void", "sink", "handle", "grip", "hinge",
    ];

    private static readonly string[] Outlines =
    [
        "outline", "outer", "outside", "contour", "kontur", "aussen", "umriss", "umfang", "profile", "profil", "perimeter", "edge", "exterior", "exterieur", "contorno", "part", "teil", "piece", "pieza", "pezzo", "body", "shape", "omtrek",
    ];

    private static readonly string[] Remarks =
    [
        "dim", "bemass", "mass", "text", "note", "anno", "center", "centre", "mittel", "axis", "achse", "axe", "hidden", "construct", "hilf", "guide", "help", "leader", "hatch", "schraff", "label", "symbol", "title", "border", "schrift", "cote", "quote",
    ];

    /// <summary>A sheet, a border, a blank: what lies around a part.</summary>
    public static bool SaysFrame(string layer) => Says(layer, Frames);

    /// <summary>Holes, slots, cut-outs.</summary>
    public static bool SaysHole(string layer) => Says(layer, Holes);

    /// <summary>The outer edge of the part.</summary>
    public static bool SaysOutline(string layer) => Says(layer, Outlines) && !Says(layer, Holes);

    /// <summary>Dimensions, centre lines, remarks: lines that are no edge.</summary>
    public static bool SaysRemark(string layer) => Says(layer, Remarks) && !Says(layer, Outlines);

    private static bool Says(string layer, string[] words)
    {
        var name = Plain(layer);
        return Array.Exists(words, w => w.Length > 3 ? name.Contains(w, StringComparison.Ordinal) : Begins(name, w));
    }

    /// <summary>Short words count only where a word begins.</summary>
    private static bool Begins(string name, string word)
    {
        for (var at = name.IndexOf(word, StringComparison.Ordinal); at >= 0; at = name.IndexOf(word, at + 1, StringComparison.Ordinal))
        {
            if ((at == 0 || !char.IsLetter(name[at - 1])) && (word.Length == 3 || at + word.Length == name.Length || !char.IsLetter(name[at + word.Length])))
                return true;
        }

        return false;
    }

    /// <summary>Small letters without accents.</summary>
    private static string Plain(string text)
    {
        var plain = new StringBuilder(text.Length);
        foreach (var c in text.Normalize(NormalizationForm.FormD))
        {
            if (CharUnicodeInfo.GetUnicodeCategory(c) != UnicodeCategory.NonSpacingMark)
                plain.Append(char.ToLowerInvariant(c));
        }

        return plain.ToString().Replace("ß", "ss", StringComparison.Ordinal);
    }
}
