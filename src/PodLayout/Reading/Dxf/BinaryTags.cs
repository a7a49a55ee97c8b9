using System.Buffers.Binary;
using System.Globalization;
using System.Text;

namespace PodLayout.Reading.Dxf;

/// <summary>Reads the groups of a binary DXF file, with codes of one byte (to R12) or two (R13 on).</summary>
internal static class BinaryTags
{
    public static ReadOnlySpan<byte> Sentinel => "AutoCAD Binary DXF\r\n\u001a\0"u8;

    /// <summary>The groups up to the end of file; null with a refusal when the file breaks off inside a group.</summary>
    public static List<Tag>? Read(byte[] content, Encoding encoding, DrawingFindings findings)
    {
        var tags = new List<Tag>();
        var at = Sentinel.Length;
        // The first group is code 0 with a name: with two-byte codes its second byte is zero too.
        var wide = at + 1 < content.Length && content[at + 1] == 0;
        while (at < content.Length)
        {
            var begin = at;
            if (TryRead(content, ref at, wide, encoding) is not { } tag)
            {
                findings.Refuse(
                    "dxf-truncated", $"The binary file breaks off or is damaged in the group at byte {begin}.",
                    "Export or copy the file again.");
                return null;
            }

            tags.Add(tag);
            if (tag is { Code: 0, Value: "EOF" })
                break;
        }

        return tags;
    }

    private static Tag? TryRead(byte[] bytes, ref int at, bool wide, Encoding encoding)
    {
        int code;
        if (wide)
        {
            if (at + 2 > bytes.Length)
                return null;
            code = BinaryPrimitives.ReadInt16LittleEndian(bytes.AsSpan(at));
            at += 2;
        }
        else
        {
            code = bytes[at++];
            if (code == 255)
            {
                if (at + 2 > bytes.Length)
                    return null;
                code = BinaryPrimitives.ReadInt16LittleEndian(bytes.AsSpan(at));
                at += 2;
            }
        }

        return ReadValue(bytes, ref at, code, encoding) is { } value ? new(code, value, null) : null;
    }

    private static string? ReadValue(byte[] bytes, ref int at, int code, Encoding encoding)
    {
        var kind = KindOf(code);
        if (kind == ValueKind.Text)
        {
            var end = at <= bytes.Length ? Array.IndexOf(bytes, (byte)0, at) : -1;
            if (end < 0)
                return null;
            var text = encoding.GetString(bytes, at, end - at);
            at = end + 1;
            return text.Trim();
        }

        var size = kind switch
        {
            ValueKind.Double or ValueKind.Int64 => 8,
            ValueKind.Int32 => 4,
            ValueKind.Int16 => 2,
            ValueKind.Chunk => at < bytes.Length ? 1 + bytes[at] : 1,
            _ => 1,
        };
        if (at + size > bytes.Length)
            return null;
        var span = bytes.AsSpan(at, size);
        at += size;
        return kind switch
        {
            ValueKind.Double => BinaryPrimitives.ReadDoubleLittleEndian(span).ToString("R", CultureInfo.InvariantCulture),
            ValueKind.Int64 => BinaryPrimitives.ReadInt64LittleEndian(span).ToString(CultureInfo.InvariantCulture),
            ValueKind.Int32 => BinaryPrimitives.ReadInt32LittleEndian(span).ToString(CultureInfo.InvariantCulture),
            ValueKind.Int16 => BinaryPrimitives.ReadInt16LittleEndian(span).ToString(CultureInfo.InvariantCulture),
            ValueKind.Chunk => "",
            _ => span[0].ToString(CultureInfo.InvariantCulture),
        };
    }

    private enum ValueKind
    {
        Text, Double, Int16, Int32, Int64, Flag, Chunk,
    }

    /// <summary>The type of a group's value, by the table "Group code value types" of the DXF reference.</summary>
    private static ValueKind KindOf(int code) => code switch
    {
        1004 or (>= 310 and <= 319) => ValueKind.Chunk,
        (>= 10 and <= 59) or (>= 110 and <= 149) or (>= 210 and <= 239) or (>= 460 and <= 469)
            or (>= 1010 and <= 1059) => ValueKind.Double,
        (>= 60 and <= 79) or (>= 170 and <= 179) or (>= 270 and <= 289) or (>= 370 and <= 389)
            or (>= 400 and <= 409) or (>= 1060 and <= 1070) => ValueKind.Int16,
        (>= 90 and <= 99) or (>= 420 and <= 429) or (>= 440 and <= 459) or 1071 => ValueKind.Int32,
        >= 160 and <= 169 => ValueKind.Int64,
        >= 290 and <= 299 => ValueKind.Flag,
        _ => ValueKind.Text,
    };
}
