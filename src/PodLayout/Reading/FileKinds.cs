using System.Text;
using PodLayout.Reading.Dxf;

namespace PodLayout.Reading;

/// <summary>Recognises a file by its content: names lie.</summary>
internal static class FileKinds
{
    public static FileKind Of(byte[] content)
    {
        var bytes = content.AsSpan();
        if (bytes.IndexOfAnyExcept(" \t\r\n\0"u8) < 0)
            return FileKind.Empty;
        if (bytes.StartsWith(BinaryTags.Sentinel))
            return FileKind.Dxf;
        if (bytes.StartsWith((ReadOnlySpan<byte>)[0x89, 0x50, 0x4E, 0x47]) || bytes.StartsWith((ReadOnlySpan<byte>)[0xFF, 0xD8, 0xFF])
            || bytes.StartsWith("GIF8"u8) || bytes.StartsWith("BM"u8) || bytes.StartsWith("II*\0"u8) || bytes.StartsWith("MM\0*"u8))
            return FileKind.Picture;
        if (bytes.StartsWith("%PDF"u8))
            return FileKind.Pdf;
        if (bytes.StartsWith("PK"u8) || bytes.StartsWith((ReadOnlySpan<byte>)[0x1F, 0x8B]))
            return FileKind.Archive;
        // A DWG begins with its version; a DXF never does.
        if (bytes.Length > 6 && bytes.StartsWith("AC"u8) && bytes[2..6].IndexOfAnyExceptInRange((byte)'0', (byte)'9') < 0)
            return FileKind.Dwg;
        return OfText(bytes[..Math.Min(bytes.Length, 4096)]);
    }

    private static FileKind OfText(ReadOnlySpan<byte> head)
    {
        if (head.StartsWith((ReadOnlySpan<byte>)[0xEF, 0xBB, 0xBF]))
            head = head[3..];
        if (head.StartsWith((ReadOnlySpan<byte>)[0xFF, 0xFE]) || head.StartsWith((ReadOnlySpan<byte>)[0xFE, 0xFF]))
            return Encoding.Unicode.GetString(head).Contains("<svg", StringComparison.Ordinal) ? FileKind.Svg : FileKind.Unknown;
        var text = Encoding.Latin1.GetString(head).TrimStart();
        if (text.StartsWith('<'))
            return FileKind.Svg;
        var line = text.Split('\r', '\n')[0].Split(',')[0].Trim();
        return line.Length is > 0 and < 6 && line.All(char.IsAsciiDigit) ? FileKind.Dxf : FileKind.Unknown;
    }

    /// <summary>Says what the file is instead of a drawing.</summary>
    public static DrawnPaths? Refuse(FileKind kind, byte[] content, DrawingFindings findings)
    {
        const string wanted = "Give a DXF (ASCII or binary) or SVG file.";
        var (code, message, remedy) = kind switch
        {
            FileKind.Empty => ("file-empty", content.Length == 0 ? "The file is empty." : "The file holds nothing but blanks.", "Export the drawing again."),
            FileKind.Dwg => ("file-dwg", "The file is a DWG drawing, which is not read.", "Export it as DXF (R12 to R2018)."),
            FileKind.Picture => ("file-picture", "The file is a picture of dots, not a drawing of lines.", wanted),
            FileKind.Pdf => ("file-pdf", "The file is a PDF, which is not read.", wanted),
            FileKind.Archive => ("file-archive", "The file is an archive (zip or gzip).", "Unpack it and give the DXF or SVG file inside."),
            _ => ("file-unknown", "The file is neither DXF nor SVG: it begins with neither a group code nor an XML tag.", wanted),
        };
        findings.Refuse(code, message, remedy);
        return null;
    }
}
