using System.Text.Json;
using System.Text.RegularExpressions;
using PodLayout.Geometry;

namespace PodLayout.JsonFiles;

/// <content>Numbers, texts, words and points.</content>
internal sealed partial class StrictReader
{
    private object? BindNumber(Type type, JsonElement element, string path, FileMember member)
    {
        var expected = type == typeof(int) ? "a whole number" : "a number";
        if (element.ValueKind != JsonValueKind.Number)
        {
            return WrongType(element, path, expected, member);
        }

        var value = element.GetDouble();
        if (!member.Bounds.Allows(value))
        {
            return Refuse(
                "json-out-of-range",
                path,
                $"found {JsonWords.Found(element)}, expected {expected} {member.Bounds.InWords()}.",
                $"Here belongs: {member.Says}");
        }

        if (type == typeof(double))
        {
            return value * member.MmPerUnit;
        }

        return value == Math.Floor(value) ? (int)value : WrongType(element, path, expected, member);
    }

    private string? BindText(JsonElement element, string path, FileMember member)
    {
        if (element.ValueKind != JsonValueKind.String)
        {
            return WrongType(element, path, "text in quotes", member) as string;
        }

        var text = TextOf(element);
        if (text is null || !PlainText().IsMatch(text))
        {
            return Refuse(
                "json-bad-text", path, "this text holds a control character, a mark of direction or a broken escape; expected plain text.", "Type it again.") as string;
        }

        if (text.EnumerateRunes().Count() is var length && length > member.LongestText)
        {
            return Refuse(
                "json-bad-text", path, $"found text of {JsonWords.Number(length)} characters, expected at most {JsonWords.Number(member.LongestText)}.", $"Here belongs: {member.Says}") as string;
        }

        return member.Required && string.IsNullOrWhiteSpace(text)
            ? Refuse("json-bad-text", path, "found blank text.", $"Here belongs: {member.Says}") as string
            : text;
    }

    private object? BindPoint(JsonElement element, string path, FileMember member)
    {
        if (element.ValueKind != JsonValueKind.Array || element.GetArrayLength() != 2)
        {
            return WrongType(element, path, "two numbers [x, y]", member);
        }

        var x = BindNumber(typeof(double), element[0], JsonWords.Child(path, 0), member);
        var y = x is null ? null : BindNumber(typeof(double), element[1], JsonWords.Child(path, 1), member);
        return y is null ? null : new Point2((double)x!, (double)y);
    }

    private object? BindWord(Type type, JsonElement element, string path, FileMember member)
    {
        var words = Enum.GetNames(type).Select(JsonWords.MemberName).ToArray();
        var text = element.ValueKind == JsonValueKind.String ? TextOf(element) : null;
        var index = Array.IndexOf(words, text);
        return index >= 0
            ? Enum.Parse(type, Enum.GetNames(type)[index])
            : WrongType(element, path, words.Length == 1 ? $"the word \"{words[0]}\"" : $"one of \"{string.Join("\", \"", words)}\"", member);
    }

    private static string InWords(Type form) => form.IsDefined(typeof(BareAttribute), false)
        ? FileMember.Of(form).Single() switch
        {
            { Type.IsEnum: true } word => $"the word \"{JsonWords.MemberName(Enum.GetNames(word.Type)[0])}\"",
            { Type: var t } when t == typeof(string) => "text in quotes",
            { Type: var t } when t == typeof(Point2) => "two numbers [x, y]",
            _ => "a number",
        }
        : $"an object with {string.Join(", ", FileMember.Of(form).Select(m => m.Name))}";

    private static bool KindFits(Type type, JsonValueKind kind) => kind switch
    {
        JsonValueKind.Number => type == typeof(double) || type == typeof(int),
        JsonValueKind.String => type == typeof(string) || type.IsEnum,
        JsonValueKind.Array => type == typeof(Point2),
        _ => false,
    };

    private static string? NameOf(JsonProperty property)
    {
        try
        {
            return property.Name;
        }
        catch (InvalidOperationException)
        {
            // The parser reports half of a surrogate pair only when the text is asked for.
            return null;
        }
    }

    private static string? TextOf(JsonElement element)
    {
        try
        {
            return element.GetString();
        }
        catch (InvalidOperationException)
        {
            return null;
        }
    }

    [GeneratedRegex(TextPattern)]
    private static partial Regex PlainText();
}
