using System.Buffers.Binary;
using System.Text;

namespace PodLayout.Handover.Lettering;

/// <summary>A font with only those glyphs that a document uses: a few kilobytes instead of some hundred.</summary>
internal static class FontSubset
{
    // Flags of a composite glyph (OpenType, table glyf).
    private const int WordArguments = 0x1, HasScale = 0x8, MoreComponents = 0x20, HasTwoScales = 0x40, HasMatrix = 0x80;

    /// <summary>The font's bytes. Glyphs are numbered anew in the order given, the empty box first.</summary>
    /// <param name="font">The whole font.</param>
    /// <param name="glyphs">The glyphs that are used, without the box.</param>
    public static byte[] Of(FontFile font, IReadOnlyList<int> glyphs)
    {
        List<int> kept = [0, .. glyphs];
        var places = kept.Select((g, i) => (g, i)).ToDictionary(p => p.g, p => p.i);
        using MemoryStream outlines = new();
        List<uint> offsets = [];
        for (var i = 0; i < kept.Count; i++)
        {
            offsets.Add((uint)outlines.Length);
            var outline = font.Outline(kept[i]).ToArray();
            foreach (var at in Components(outline))
            {
                // Parts of composite glyphs come along, and are named by their new numbers.
                int part = BinaryPrimitives.ReadUInt16BigEndian(outline.AsSpan(at));
                if (places.TryAdd(part, kept.Count))
                {
                    kept.Add(part);
                }

                BinaryPrimitives.WriteUInt16BigEndian(outline.AsSpan(at), (ushort)places[part]);
            }

            outlines.Write(outline);
            outlines.Write(new byte[(4 - outline.Length % 4) % 4]);
        }

        offsets.Add((uint)outlines.Length);
        return Assemble(font, kept, outlines.ToArray(), offsets);
    }

    // Where the numbers of a composite glyph's parts stand.
    private static IEnumerable<int> Components(byte[] outline)
    {
        if (outline.Length < 10 || BinaryPrimitives.ReadInt16BigEndian(outline) >= 0)
        {
            yield break;
        }

        for (var at = 10; ;)
        {
            int flags = BinaryPrimitives.ReadUInt16BigEndian(outline.AsSpan(at));
            yield return at + 2;
            at += 4 + ((flags & WordArguments) != 0 ? 4 : 2)
                + ((flags & HasScale) != 0 ? 2 : (flags & HasTwoScales) != 0 ? 4 : (flags & HasMatrix) != 0 ? 8 : 0);
            if ((flags & MoreComponents) == 0)
            {
                yield break;
            }
        }
    }

    private static byte[] Assemble(FontFile font, List<int> kept, byte[] outlines, List<uint> offsets)
    {
        var head = font.Table("head").ToArray();
        BinaryPrimitives.WriteUInt32BigEndian(head.AsSpan(8), 0);
        BinaryPrimitives.WriteInt16BigEndian(head.AsSpan(50), 1);
        var hhea = font.Table("hhea").ToArray();
        BinaryPrimitives.WriteUInt16BigEndian(hhea.AsSpan(34), (ushort)kept.Count);
        var maxp = font.Table("maxp").ToArray();
        BinaryPrimitives.WriteUInt16BigEndian(maxp.AsSpan(4), (ushort)kept.Count);
        var hmtx = new byte[4 * kept.Count];
        var loca = new byte[4 * offsets.Count];
        for (var i = 0; i < kept.Count; i++)
        {
            BinaryPrimitives.WriteUInt16BigEndian(hmtx.AsSpan(4 * i), (ushort)font.WidthOf(kept[i]));
            BinaryPrimitives.WriteInt16BigEndian(hmtx.AsSpan(4 * i + 2), font.BearingOf(kept[i]));
        }

        for (var i = 0; i < offsets.Count; i++)
        {
            BinaryPrimitives.WriteUInt32BigEndian(loca.AsSpan(4 * i), offsets[i]);
        }

        List<(string Name, byte[] Content)> tables =
        [
            ("cvt ", font.Table("cvt ").ToArray()), ("fpgm", font.Table("fpgm").ToArray()), ("glyf", outlines), ("head", head),
            ("hhea", hhea), ("hmtx", hmtx), ("loca", loca), ("maxp", maxp), ("prep", font.Table("prep").ToArray()),
        ];
        tables.RemoveAll(t => t.Content.Length == 0);
        var file = File(tables);
        var headAt = 12 + 16 * tables.Count + tables.TakeWhile(t => t.Name != "head").Sum(t => Padded(t.Content.Length));
        BinaryPrimitives.WriteUInt32BigEndian(file.AsSpan(headAt + 8), 0xB1B0AFBA - Sum(file));
        return file;
    }

    private static byte[] File(List<(string Name, byte[] Content)> tables)
    {
        var file = new byte[12 + 16 * tables.Count + tables.Sum(t => Padded(t.Content.Length))];
        BinaryPrimitives.WriteUInt32BigEndian(file, 0x00010000);
        BinaryPrimitives.WriteUInt16BigEndian(file.AsSpan(4), (ushort)tables.Count);
        var power = (int)Math.Log2(tables.Count);
        BinaryPrimitives.WriteUInt16BigEndian(file.AsSpan(6), (ushort)(16 << power));
        BinaryPrimitives.WriteUInt16BigEndian(file.AsSpan(8), (ushort)power);
        BinaryPrimitives.WriteUInt16BigEndian(file.AsSpan(10), (ushort)(16 * tables.Count - (16 << power)));
        var at = 12 + 16 * tables.Count;
        for (var i = 0; i < tables.Count; i++)
        {
            var (name, content) = tables[i];
            var entry = file.AsSpan(12 + 16 * i);
            Encoding.ASCII.GetBytes(name).CopyTo(entry);
            content.CopyTo(file, at);
            BinaryPrimitives.WriteUInt32BigEndian(entry[4..], Sum(file.AsSpan(at, Padded(content.Length))));
            BinaryPrimitives.WriteUInt32BigEndian(entry[8..], (uint)at);
            BinaryPrimitives.WriteUInt32BigEndian(entry[12..], (uint)content.Length);
            at += Padded(content.Length);
        }

        return file;
    }

    private static int Padded(int length) => (length + 3) / 4 * 4;

    private static uint Sum(ReadOnlySpan<byte> bytes)
    {
        uint sum = 0;
        for (var i = 0; i < bytes.Length; i += 4)
        {
            sum += BinaryPrimitives.ReadUInt32BigEndian(bytes[i..]);
        }

        return sum;
    }
}
