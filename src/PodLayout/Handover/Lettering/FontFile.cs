using System.Buffers.Binary;
using System.Collections.Immutable;
using System.Text;

namespace PodLayout.Handover.Lettering;

/// <summary>
/// A TrueType font, as far as printing needs it: which glyph draws a character, how wide it is, and the tables themselves.
/// After the OpenType specification (ISO/IEC 14496-22), tables head, hhea, hmtx, maxp, cmap, loca and glyf.
/// </summary>
internal sealed class FontFile
{
    private readonly byte[] bytes;
    private readonly Dictionary<string, (int Offset, int Length)> tables = new(StringComparer.Ordinal);
    private readonly Dictionary<int, int> glyphs = [];
    private readonly int longMetrics;
    private readonly bool hasLongOffsets;

    public FontFile(byte[] bytes)
    {
        this.bytes = bytes;
        for (var i = 0; i < UInt16(4); i++)
        {
            var entry = 12 + 16 * i;
            tables[Encoding.ASCII.GetString(bytes, entry, 4)] = ((int)UInt32(entry + 8), (int)UInt32(entry + 12));
        }

        UnitsPerEm = UInt16(At("head") + 18);
        hasLongOffsets = UInt16(At("head") + 50) == 1;
        longMetrics = UInt16(At("hhea") + 34);
        Count = UInt16(At("maxp") + 4);
        ReadCharacters();
    }

    /// <summary>Units of a glyph's coordinates in one em.</summary>
    public int UnitsPerEm { get; }

    /// <summary>How many glyphs there are.</summary>
    public int Count { get; }

    /// <summary>Highest point of the letters over the line, in thousandths of an em.</summary>
    public int Ascent => Thousandths(Int16(At("hhea") + 4));

    /// <summary>Lowest point, negative.</summary>
    public int Descent => Thousandths(Int16(At("hhea") + 6));

    /// <summary>The box around all glyphs, in thousandths of an em.</summary>
    public ImmutableArray<int> Bounds => [.. Enumerable.Range(0, 4).Select(i => Thousandths(Int16(At("head") + 36 + 2 * i)))];

    /// <summary>The glyph of a character; 0, an empty box, when the font has none.</summary>
    public int GlyphOf(int codePoint) => glyphs.GetValueOrDefault(codePoint);

    /// <summary>Width of a glyph in font units.</summary>
    public int WidthOf(int glyph) => UInt16(At("hmtx") + 4 * Math.Min(glyph, longMetrics - 1));

    /// <summary>Left side bearing of a glyph in font units.</summary>
    public short BearingOf(int glyph) => Int16(glyph < longMetrics
        ? At("hmtx") + 4 * glyph + 2 : At("hmtx") + 4 * longMetrics + 2 * (glyph - longMetrics));

    /// <summary>The bytes that describe a glyph's outline; none for a blank.</summary>
    public ReadOnlySpan<byte> Outline(int glyph)
    {
        var (from, to) = (OffsetOf(glyph), OffsetOf(glyph + 1));
        return bytes.AsSpan(At("glyf") + from, to - from);
    }

    /// <summary>A whole table; empty when the font has none.</summary>
    public ReadOnlySpan<byte> Table(string name) => tables.TryGetValue(name, out var t) ? bytes.AsSpan(t.Offset, t.Length) : default;

    public int Thousandths(int units) => (int)Math.Round(units * 1000.0 / UnitsPerEm, MidpointRounding.AwayFromZero);

    private int OffsetOf(int glyph) => hasLongOffsets ? (int)UInt32(At("loca") + 4 * glyph) : 2 * UInt16(At("loca") + 2 * glyph);

    // The table of all of Unicode (format 12) where there is one, else that of the first plane (format 4).
    private void ReadCharacters()
    {
        var start = At("cmap");
        var subtables = Enumerable.Range(0, UInt16(start + 2)).Select(i => start + 4 + 8 * i)
            .Where(e => UInt16(e) is 0 or 3).Select(e => start + (int)UInt32(e + 4)).ToList();
        if (subtables.Find(t => UInt16(t) == 12) is > 0 and var wide)
        {
            for (var g = 0; g < UInt32(wide + 12); g++)
            {
                var group = wide + 16 + 12 * g;
                for (uint c = UInt32(group), glyph = UInt32(group + 8); c <= UInt32(group + 4); c++, glyph++)
                {
                    glyphs[(int)c] = (int)glyph;
                }
            }

            return;
        }

        ReadFirstPlane(subtables.First(t => UInt16(t) == 4));
    }

    private void ReadFirstPlane(int table)
    {
        var twice = UInt16(table + 6);
        for (var i = 0; i < twice; i += 2)
        {
            int end = UInt16(table + 14 + i), first = UInt16(table + 16 + twice + i);
            int delta = UInt16(table + 16 + 2 * twice + i), at = table + 16 + 3 * twice + i, range = UInt16(at);
            for (var c = first; c <= end && c < 0xFFFF; c++)
            {
                var glyph = range == 0 ? c : UInt16(at + range + 2 * (c - first));
                if (range == 0 || glyph != 0)
                {
                    glyphs[c] = (glyph + delta) & 0xFFFF;
                }
            }
        }
    }

    private int At(string table) => tables[table].Offset;

    private int UInt16(int at) => BinaryPrimitives.ReadUInt16BigEndian(bytes.AsSpan(at));

    private short Int16(int at) => BinaryPrimitives.ReadInt16BigEndian(bytes.AsSpan(at));

    private uint UInt32(int at) => BinaryPrimitives.ReadUInt32BigEndian(bytes.AsSpan(at));
}
