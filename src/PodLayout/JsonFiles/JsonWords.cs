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

    /// <summary>The known name nearest to a mistyped one; null when none is near.</summary>
    public static string? Nearest(string typed, IEnumerable<string> known)
    {
        var best = known
            .Select(name => (Name: name, Distance: Distance(typed.ToLowerInvariant(), name.ToLowerInvariant())))
            .OrderBy(c => c.Distance).ThenBy(c => c.Name, StringComparer.Ordinal)
            .FirstOrDefault();
        if (best.Name is null)
        {
            return null;
        }

        // A forgotten unit ("width" for "widthMm") is the commonest slip, and costs two letters in a short word.
        var near = best.Distance <= Math.Max(2, best.Name.Length / 3);
        return near ? best.Name : null;
    }

    private static string Shown(string text)
    {
        var plain = string.Concat(text.Select(c => char.IsControl(c) ? ' ' : c));
        return plain.Length <= 60 ? plain : plain[..57] + "...";
    }

    /// <summary>Least number of single-letter changes from one word to the other (Levenshtein 1966).</summary>
    private static int Distance(string a, string b)
    {
        var row = Enumerable.Range(0, b.Length + 1).ToArray();
        for (var i = 1; i <= a.Length; i++)
        {
            var diagonal = row[0];
            row[0] = i;
            for (var j = 1; j <= b.Length; j++)
            {
                var change = diagonal + (a[i - 1] == b[j - 1] ? 0 : 1);
                diagonal = row[j];
                row[j] = Math.Min(change, Math.Min(row[j], row[j - 1]) + 1);
            }
        }

        return row[b.Length];
    }
}
