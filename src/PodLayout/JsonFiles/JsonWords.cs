using System.Globalization;
using System.Text.Json;

namespace PodLayout.JsonFiles;

/// <summary>How JSON is spoken of in messages.</summary>
internal static class JsonWords
{
    public static string Number(double value) => value.ToString("0.######", CultureInfo.InvariantCulture);

    public static string MemberName(string propertyName) => propertyName == "Schema" ? "$schema" : char.ToLowerInvariant(propertyName[0]) + propertyName[1..];

    /// <summary>The JSON path of a member: dotted where the name is plain, in brackets and quotes where it is not.</summary>
    public static string Child(string path, string member) =>
        member.Length > 0 && !char.IsAsciiDigit(member[0]) && member.All(c => char.IsAsciiLetterOrDigit(c) || c is '_' or '$')
            ? $"{path}.{member}"
            : $"{path}['{Shown(member).Replace("\\", "\\\\", StringComparison.Ordinal).Replace("'", "\\'", StringComparison.Ordinal)}']";

    public static string Child(string path, int index) => string.Create(CultureInfo.InvariantCulture, $"{path}[{index}]");

    /// <summary>What was found, short enough for one line.</summary>
    public static string Found(JsonElement element) => element.ValueKind switch
    {
        JsonValueKind.Object => "an object {...}",
        JsonValueKind.Array => string.Create(CultureInfo.InvariantCulture, $"a list of {element.GetArrayLength()}"),
        JsonValueKind.String => $"the text {Shown(element.GetRawText())}",
        JsonValueKind.Null => "null",
        _ => Shown(element.GetRawText()),
    };

    private static string Shown(string text)
    {
        var plain = string.Concat(text.Select(c => char.IsControl(c) ? ' ' : c));
        return plain.Length <= 60 ? plain : plain[..57] + "...";
    }
}
