using System.Text;
using PodLayout.JsonFiles;

namespace PodLayout.Handover.Lettering;

/// <summary>
/// The type that is printed with: DejaVu Sans Condensed, which covers Latin, Greek, Cyrillic, Hebrew, Arabic and many signs. Its
/// licence lies beside it. A character that it lacks is printed as an empty box.
/// </summary>
internal sealed class TypeFace
{
    private static readonly Lazy<TypeFace> RegularOnce = new(() => new("DejaVuSansCondensed"));
    private static readonly Lazy<TypeFace> BoldOnce = new(() => new("DejaVuSansCondensed-Bold"));

    private TypeFace(string name)
    {
        Name = name;
        Font = new(Embedded.Bytes(name + ".ttf"));
    }

    /// <summary>Its name, as fonts are named in documents.</summary>
    public string Name { get; }

    public FontFile Font { get; }

    public static TypeFace Of(bool isBold) => (isBold ? BoldOnce : RegularOnce).Value;

    /// <summary>Width of a line of text in the unit of its size.</summary>
    public double Width(string text, double size) =>
        VisualOrder.Of(text).Sum(l => (double)Font.WidthOf(Font.GlyphOf(l.Shown))) / Font.UnitsPerEm * size;

    /// <summary>The text in lines of at most a width; a word that is longer is broken where it must be.</summary>
    public IReadOnlyList<string> Wrap(string text, double width, double size)
    {
        List<string> lines = [];
        var line = "";
        foreach (var word in text.Split([' ', '\n', '\r', '\t'], StringSplitOptions.RemoveEmptyEntries).SelectMany(w => Broken(w, width, size)))
        {
            var longer = line.Length == 0 ? word : line + " " + word;
            if (line.Length > 0 && Width(longer, size) > width)
            {
                lines.Add(line);
                longer = word;
            }

            line = longer;
        }

        return [.. lines, line];
    }

    private IEnumerable<string> Broken(string word, double width, double size)
    {
        if (Width(word, size) <= width)
        {
            return [word];
        }

        List<string> pieces = [];
        StringBuilder piece = new();
        double used = 0;
        foreach (var rune in word.EnumerateRunes())
        {
            var wide = (double)Font.WidthOf(Font.GlyphOf(rune.Value)) / Font.UnitsPerEm * size;
            if (piece.Length > 0 && used + wide > width)
            {
                pieces.Add(piece.ToString());
                piece.Clear();
                used = 0;
            }

            piece.Append(rune);
            used += wide;
        }

        return [.. pieces, piece.ToString()];
    }
}
