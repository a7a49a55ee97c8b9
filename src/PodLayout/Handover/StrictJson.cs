using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using PodLayout.Findings;
using PodLayout.Handover.Format;

namespace PodLayout.Handover;

/// <summary>
/// Compares a JSON text with the types that it will be read into, so that the message about the first difference is in the
/// user's words: the serializer's own messages name .NET types.
/// </summary>
internal static class StrictJson
{
    // The plan command writes none longer: findings are cut to less, and names in drawings, jobs and shops are held to less.
    private const int LongestText = 5000;

    private const string WriteAgain = "Write the file again with the plan command.";

    /// <summary>The first thing that is wrong; null when the text can be deserialized.</summary>
    public static Finding? Check<T>(string fileName, string json, JsonSerializerOptions options, string word, int version)
    {
        try
        {
            using var document = JsonDocument.Parse(json);
            return OtherFormat(fileName, document.RootElement, word, version)
                ?? Differs(fileName, "$", document.RootElement, typeof(T), options);
        }
        catch (JsonException e)
        {
            var line = (int)Math.Min(e.LineNumber ?? 0, int.MaxValue - 1) + 1;
            return new(
                "layout-not-json", Severity.Refused, FindingKind.Request, "This is not valid JSON: the text breaks off or has a stray character here.",
                new Place.InFile(fileName, line), WriteAgain);
        }
    }

    private static Finding? OtherFormat(string fileName, JsonElement root, string word, int version)
    {
        if (root.ValueKind != JsonValueKind.Object
            || !root.TryGetProperty("schema", out var schema)
            || schema.ValueKind != JsonValueKind.String
            || schema.GetString() != word)
        {
            return Refuse(
                "layout-other-format", fileName, "$.schema", $"This is not a layout file: \"schema\": \"{word}\" was expected.",
                "Give the layout.json that the plan command wrote.");
        }

        return root.TryGetProperty("version", out var number) && number.ValueKind == JsonValueKind.Number
            && number.TryGetInt32(out var found) && found == version
                ? null
                : Refuse(
                    "layout-other-version", fileName, "$.version",
                    $"Version {version} was expected, {Shown(root.TryGetProperty("version", out var v) ? v : default)} was found.",
                    WriteAgain);
    }

    private static Finding? Differs(string fileName, string path, JsonElement value, Type type, JsonSerializerOptions options)
    {
        var inner = Nullable.GetUnderlyingType(type) ?? type;
        var expected = Expected(inner, options);
        if (!Fits(value, inner, options))
        {
            return Refuse("layout-wrong-type", fileName, path, $"{expected} was expected, {Shown(value)} was found.", WriteAgain);
        }

        if (inner == typeof(string) && value.GetString()!.Length is var length && length > LongestText)
        {
            return Refuse("layout-wrong-type", fileName, path, $"A text of at most {LongestText} characters was expected, {length} were found.", WriteAgain);
        }

        var info = options.GetTypeInfo(inner);
        return info.Kind switch
        {
            JsonTypeInfoKind.Object => ObjectDiffers(fileName, path, value, info, options),
            JsonTypeInfoKind.Enumerable => value.EnumerateArray()
                .Select((element, i) => Differs(fileName, $"{path}[{i}]", element, info.ElementType!, options))
                .FirstOrDefault(f => f is not null),
            _ => null,
        };
    }

    private static Finding? ObjectDiffers(
        string fileName, string path, JsonElement value, JsonTypeInfo info, JsonSerializerOptions options)
    {
        var seen = new HashSet<string>(StringComparer.Ordinal);
        foreach (var member in value.EnumerateObject())
        {
            var at = $"{path}.{member.Name}";
            var property = info.Properties.FirstOrDefault(p => p.Name == member.Name);
            if (property is null)
            {
                var known = string.Join(", ", info.Properties.Select(p => p.Name));
                return Refuse("layout-unknown-member", fileName, at, $"No such member is known here; known are {known}.", WriteAgain);
            }

            if (!seen.Add(member.Name))
            {
                return Refuse("layout-member-twice", fileName, at, "The member stands here twice.", WriteAgain);
            }

            var isNull = member.Value.ValueKind == JsonValueKind.Null;
            if (isNull && property.IsSetNullable)
            {
                continue;
            }

            if (Differs(fileName, at, member.Value, property.PropertyType, options) is { } difference)
            {
                return difference;
            }
        }

        // What was added to the format later has a default: files of before are read as they are.
        var missing = info.Properties.FirstOrDefault(p => !seen.Contains(p.Name) && p.AssociatedParameter is not { HasDefaultValue: true });
        return missing is null
            ? null
            : Refuse("layout-member-missing", fileName, $"{path}.{missing.Name}", "The member is missing.", WriteAgain);
    }

    private static bool Fits(JsonElement value, Type type, JsonSerializerOptions options)
    {
        if (type == typeof(XyMm))
        {
            return value.ValueKind == JsonValueKind.Array && value.GetArrayLength() == 2
                && value.EnumerateArray().All(c => Fits(c, typeof(double), options));
        }

        if (type == typeof(double))
        {
            return value.ValueKind == JsonValueKind.Number && value.TryGetDouble(out var d)
                && Math.Abs(d) <= 1e12;
        }

        if (type == typeof(int))
        {
            return value.ValueKind == JsonValueKind.Number && value.TryGetInt32(out _);
        }

        if (type == typeof(bool))
        {
            return value.ValueKind is JsonValueKind.True or JsonValueKind.False;
        }

        return type.IsEnum ? value.ValueKind == JsonValueKind.String && WordsOf(type).Contains(value.GetString())
            : type == typeof(string) ? value.ValueKind == JsonValueKind.String
            : options.GetTypeInfo(type).Kind == JsonTypeInfoKind.Enumerable ? value.ValueKind == JsonValueKind.Array
            : value.ValueKind == JsonValueKind.Object;
    }

    private static string Expected(Type type, JsonSerializerOptions options) =>
        type == typeof(XyMm) ? "A point [x, y] in mm"
        : type == typeof(double) ? "A number"
        : type == typeof(int) ? "A whole number"
        : type == typeof(bool) ? "true or false"
        : type == typeof(string) ? "A text"
        : type.IsEnum ? "One of " + string.Join(", ", WordsOf(type).Select(w => $"\"{w}\""))
        : options.GetTypeInfo(type).Kind == JsonTypeInfoKind.Enumerable ? "A list"
        : "An object";

    private static IEnumerable<string> WordsOf(Type enumType) =>
        Enum.GetNames(enumType).Select(JsonNamingPolicy.KebabCaseLower.ConvertName);

    private static string Shown(JsonElement value)
    {
        if (value.ValueKind == JsonValueKind.Undefined)
        {
            return "nothing";
        }

        const int longest = 40;
        var text = value.GetRawText().ReplaceLineEndings(" ");
        return text.Length <= longest ? text : text[..longest] + "...";
    }

    private static Finding Refuse(string code, string fileName, string path, string message, string remedy) =>
        new(code, Severity.Refused, FindingKind.Request, message, new Place.InJson(fileName, path), remedy);
}
