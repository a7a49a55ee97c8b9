using System.Text;
using System.Text.Json;
using PodLayout.Findings;

namespace PodLayout.JsonFiles;

/// <summary>From the bytes of a file to a JSON document: encoding and syntax.</summary>
internal static class JsonText
{
    private const string SyntaxCode = "json-syntax";

    /// <summary>Parses; comments and trailing commas are not JSON and are refused.</summary>
    public static Outcome<JsonDocument> Parse(string file, byte[] content)
    {
        var text = content.AsMemory();
        if (text.Span.StartsWith(Encoding.UTF8.Preamble))
        {
            text = text[Encoding.UTF8.Preamble.Length..];
        }

        if (text.Span.IndexOfAnyExcept(" \t\r\n"u8) < 0)
        {
            return Refuse(file, null, "the file is empty; expected a JSON object { ... }.", "Start from a file of the samples folder.");
        }

        if (FirstBadByte(text.Span) is { } at)
        {
            return Refuse(
                file,
                1 + text.Span[..at].Count((byte)'\n'),
                "this is not UTF-8 text (found a byte that UTF-8 does not have here); expected a JSON file.",
                "Save the file as UTF-8 text, or name the right file.");
        }

        try
        {
            return Outcome<JsonDocument>.Of(JsonDocument.Parse(text));
        }
        catch (JsonException e)
        {
            return Refuse(file, (int)(e.LineNumber ?? 0) + 1, $"this is not valid JSON: {Reason(e)}", Remedy(text.Span));
        }
    }

    private static int? FirstBadByte(ReadOnlySpan<byte> text)
    {
        var at = 0;
        while (at < text.Length)
        {
            if (Rune.DecodeFromUtf8(text[at..], out var rune, out var length) != System.Buffers.OperationStatus.Done || rune.Value == 0)
            {
                return at;
            }

            at += length;
        }

        return null;
    }

    private static string Reason(JsonException e)
    {
        // The parser's own words, without the position (said by the place) and its advice to its caller.
        var words = e.Message;
        foreach (var tail in (string[])[" Path:", " LineNumber:", " Change the reader options"])
        {
            var cut = words.IndexOf(tail, StringComparison.Ordinal);
            words = cut < 0 ? words : words[..cut];
        }

        return string.Concat(words.Select(c => char.IsControl(c) ? ' ' : c));
    }

    private static string Remedy(ReadOnlySpan<byte> text) =>
        text.IndexOf("//"u8) >= 0 || text.IndexOf("/*"u8) >= 0
            ? "Comments are not JSON: put the remark into a \"note\" member."
            : "Look at this line and the one before it: a comma, a quote or a bracket is missing or too many, or the file is cut off.";

    private static Outcome<JsonDocument> Refuse(string file, int? line, string message, string remedy) =>
        Outcome<JsonDocument>.Refuse(new Finding(
            SyntaxCode, Severity.Refused, FindingKind.Request, message, new Place.InFile(file, line), remedy));
}
