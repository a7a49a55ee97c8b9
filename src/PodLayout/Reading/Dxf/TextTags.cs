using System.Globalization;

namespace PodLayout.Reading.Dxf;

/// <summary>Reads the groups of an ASCII DXF file.</summary>
internal static class TextTags
{
    /// <summary>The groups up to the end of file; null when the text cannot be a DXF file, with a refusal.</summary>
    public static List<Tag>? Read(string text, DrawingFindings findings)
    {
        var lines = SplitLines(text);
        var first = 0;
        while (first < lines.Count && string.IsNullOrWhiteSpace(lines[first]))
            first++;
        return first < lines.Count && FromOneLine(lines[first]) is not null && !IsCode(lines[first], out _)
            ? ReadCommaSeparated(lines, first, findings)
            : ReadPairs(lines, first, findings);
    }

    /// <summary>Lines end with LF, with any number of CR before it, or with CR alone where the file holds no LF at all.</summary>
    private static List<string> SplitLines(string text)
    {
        var lines = new List<string>(text.Length / 8);
        var newline = text.Contains('\n', StringComparison.Ordinal) ? '\n' : '\r';
        var start = 0;
        while (start < text.Length)
        {
            var end = text.IndexOf(newline, start);
            end = end < 0 ? text.Length : end;
            lines.Add(text[start..end].TrimEnd('\r'));
            start = end + 1;
        }

        return lines;
    }

    private static bool IsCode(string line, out int code) => int.TryParse(
        line.AsSpan().Trim(), NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out code);

    private static List<Tag>? ReadPairs(List<string> lines, int first, DrawingFindings findings)
    {
        var tags = new List<Tag>(lines.Count / 2);
        for (var i = first; i < lines.Count; i += 2)
        {
            if (!IsCode(lines[i], out var code))
            {
                if (IsBlankFrom(lines, i))
                    break;
                findings.Refuse(
                    "dxf-group-code", $"Found \"{Shorten(lines[i])}\" where a group code (a whole number) was expected.",
                    "The file is damaged or no DXF file: export it again.", i + 1);
                return null;
            }

            if (i + 1 >= lines.Count)
            {
                findings.Refuse(
                    "dxf-truncated", $"The file breaks off after group code {code}, before its value.",
                    "Export or copy the file again.", i + 1);
                return null;
            }

            // Layer and block names keep inner spaces; nothing in a drawing is told apart by spaces at an end.
            tags.Add(new(code, lines[i + 1].Trim(), i + 1));
            if (IsEnd(tags[^1]))
            {
                NoteRubbish(lines, i + 2, findings);
                break;
            }
        }

        return tags;
    }

    private static List<Tag>? ReadCommaSeparated(List<string> lines, int first, DrawingFindings findings)
    {
        findings.Mended("dxf-comma-tags", "Group codes and values stand on one line, separated by commas; they were read so.", first + 1);
        var tags = new List<Tag>(lines.Count);
        for (var i = first; i < lines.Count; i++)
        {
            if (FromOneLine(lines[i]) is { } tag)
            {
                tags.Add(new(tag.Code, tag.Value, i + 1));
            }
            else if (!string.IsNullOrWhiteSpace(lines[i].Trim('\u001a')))
            {
                findings.Refuse(
                    "dxf-group-code", $"Found \"{Shorten(lines[i])}\" where a group code, a comma and a value were expected.",
                    "The file is damaged or no DXF file: export it again.", i + 1);
                return null;
            }

            if (tags.Count > 0 && IsEnd(tags[^1]))
            {
                NoteRubbish(lines, i + 1, findings);
                break;
            }
        }

        return tags;
    }

    private static (int Code, string Value)? FromOneLine(string line)
    {
        var comma = line.IndexOf(',', StringComparison.Ordinal);
        return comma > 0 && IsCode(line[..comma], out var code)
            ? (code, line[(comma + 1)..].Trim().Trim('"')) : null;
    }

    private static bool IsEnd(Tag tag) => tag.Code == 0 && tag.Value.Equals("EOF", StringComparison.OrdinalIgnoreCase);

    private static bool IsBlankFrom(List<string> lines, int from) =>
        lines.Skip(from).All(l => string.IsNullOrWhiteSpace(l.Trim('\u001a', '\0')));

    private static void NoteRubbish(List<string> lines, int from, DrawingFindings findings)
    {
        if (!IsBlankFrom(lines, from))
            findings.Note("dxf-after-end", "Text after the end-of-file mark was not read.", from + 1);
    }

    private static string Shorten(string line) => new([.. line.Trim().Take(40).Select(c => char.IsControl(c) ? '?' : c)]);
}
