using System.Buffers.Binary;
using System.Globalization;
using System.Text;
using PodLayout.Handover.Lettering;

namespace PodLayout.Handover.Picture;

/// <summary>
/// A font of a PDF file, with the glyphs that are used built in. Characters are numbered in the order in which they come; each
/// number knows its glyph and the character that it stands for, so that text can be searched and copied even where it is drawn
/// in another form or as an empty box (ISO 32000-1, 9.7 and 9.10.3).
/// </summary>
internal sealed class PdfFont(string resource, TypeFace face)
{
    private readonly List<Letter> letters = [];
    private readonly Dictionary<Letter, int> numbers = [];

    /// <summary>Its name on pages.</summary>
    public string Resource { get; } = resource;

    public TypeFace Face { get; } = face;

    public bool IsUsed => letters.Count > 0;

    /// <summary>The numbers of a line's characters in hexadecimal digits, in the order in which they stand.</summary>
    public string Encode(IReadOnlyList<Letter> line)
    {
        StringBuilder text = new();
        foreach (var letter in line)
        {
            if (!numbers.TryGetValue(letter, out var number))
            {
                // Number 0 is left to the empty box.
                letters.Add(letter);
                number = Math.Min(letters.Count, 0xFFFF);
                numbers[letter] = number;
            }

            text.Append(number.ToString("X4", CultureInfo.InvariantCulture));
        }

        return text.ToString();
    }

    /// <summary>Puts the font into the file.</summary>
    public int Put(PdfObjects file)
    {
        var font = Face.Font;
        var used = letters.Select(l => font.GlyphOf(l.Shown)).ToList();
        var kept = used.Where(g => g != 0).Distinct().ToList();
        var places = kept.Select((g, i) => (g, i)).ToDictionary(p => p.g, p => p.i + 1);
        var map = new byte[2 * (letters.Count + 1)];
        for (var i = 0; i < used.Count; i++)
        {
            BinaryPrimitives.WriteUInt16BigEndian(map.AsSpan(2 * (i + 1)), (ushort)places.GetValueOrDefault(used[i]));
        }

        // The tag of a subset is any six letters.
        var name = "PODLAY+" + Face.Name;
        var program = file.PutStream(FontSubset.Of(font, kept));
        var descriptor = file.Put(PdfObjects.Text(
            $"<< /Type /FontDescriptor /FontName /{name} /Flags 4 /FontBBox [{string.Join(' ', font.Bounds)}] /ItalicAngle 0 /Ascent {font.Ascent} /Descent {font.Descent} /CapHeight 729 /StemV 80 /FontFile2 {program} 0 R >>"));
        var widths = string.Join(' ', used.Select(g => font.Thousandths(font.WidthOf(g)).ToString(CultureInfo.InvariantCulture)));
        var descendant = file.Put(PdfObjects.Text(
            $"<< /Type /Font /Subtype /CIDFontType2 /BaseFont /{name} /CIDSystemInfo << /Registry (Adobe) /Ordering (Identity) /Supplement 0 >> /FontDescriptor {descriptor} 0 R /DW {font.Thousandths(font.WidthOf(0))} /W [1 [{widths}]] /CIDToGIDMap {file.PutStream(map)} 0 R >>"));
        return file.Put(PdfObjects.Text(
            $"<< /Type /Font /Subtype /Type0 /BaseFont /{name} /Encoding /Identity-H /DescendantFonts [{descendant} 0 R] /ToUnicode {file.PutStream(Encoding.ASCII.GetBytes(ToUnicode()))} 0 R >>"));
    }

    private string ToUnicode()
    {
        StringBuilder map = new("/CIDInit /ProcSet findresource begin\n12 dict begin\nbegincmap\n/CIDSystemInfo << /Registry (Adobe) /Ordering (UCS) /Supplement 0 >> def\n/CMapName /Adobe-Identity-UCS def\n/CMapType 2 def\n1 begincodespacerange\n<0000> <FFFF>\nendcodespacerange\n");
        const int most = 100;
        for (var from = 0; from < letters.Count; from += most)
        {
            var count = Math.Min(most, letters.Count - from);
            map.Append(CultureInfo.InvariantCulture, $"{count} beginbfchar\n");
            for (var i = from; i < from + count; i++)
            {
                var text = Convert.ToHexString(Encoding.BigEndianUnicode.GetBytes(char.ConvertFromUtf32(letters[i].Meant)));
                map.Append(CultureInfo.InvariantCulture, $"<{i + 1:X4}> <{text}>\n");
            }

            map.Append("endbfchar\n");
        }

        return map.Append("endcmap\nCMapName currentdict /CMap defineresource pop\nend\nend\n").ToString();
    }
}
