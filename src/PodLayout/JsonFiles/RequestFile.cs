using System.Collections.Immutable;
using System.Text.Json;
using PodLayout.Findings;

namespace PodLayout.JsonFiles;

/// <summary>From the bytes of a job or shop file to the bound form, with the version looked at before anything else.</summary>
internal static class RequestFile
{
    /// <summary>The version of both forms that this program reads.</summary>
    public const int Version = 1;

    /// <summary>Reads one file.</summary>
    public static Outcome<T> Read<T>(string file, byte[] content, ImmutableArray<MemberOverride> overrides)
        where T : class
    {
        var parsed = JsonText.Parse(file, content);
        if (!parsed.Succeeded)
        {
            return Outcome<T>.Refuse(parsed.Findings);
        }

        using var document = parsed.Value;
        return WrongVersion(file, document.RootElement) is { } refusal
            ? Outcome<T>.Refuse(refusal)
            : StrictReader.Read<T>(file, document.RootElement, overrides);
    }

    private static Finding? WrongVersion(string file, JsonElement root)
    {
        // A file of another version has members this one does not know; complaining of those would mislead.
        if (root.ValueKind != JsonValueKind.Object
            || !root.TryGetProperty("version"u8, out var version)
            || (version.ValueKind == JsonValueKind.Number && version.GetDouble() == Version))
        {
            return null;
        }

        return new(
            "json-version",
            Severity.Refused,
            FindingKind.Request,
            $"found version {JsonWords.Found(version)}; this program reads version {JsonWords.Number(Version)}.",
            new Place.InJson(file, "$.version"),
            $"Write \"version\": {JsonWords.Number(Version)} if the file is of that form, or use the program that goes with it.");
    }
}
