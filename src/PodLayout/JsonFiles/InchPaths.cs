using System.Collections.Immutable;
using System.Text.Json;

namespace PodLayout.JsonFiles;

/// <summary>Which members of a file are given in inches, so that a finding names the member that stands there.</summary>
internal static class InchPaths
{
    /// <summary>Paths of all members whose name ends in "In".</summary>
    public static ImmutableHashSet<string> Of(string file, byte[] content)
    {
        var parsed = JsonText.Parse(file, content);
        if (!parsed.Succeeded)
        {
            return [];
        }

        using var document = parsed.Value;
        var paths = ImmutableHashSet.CreateBuilder<string>(StringComparer.Ordinal);
        Collect(document.RootElement, "$", paths);
        return paths.ToImmutable();
    }

    /// <summary>The path as it stands in the file: the member in inches where that is the one given.</summary>
    public static string AsGiven(ImmutableHashSet<string> inchPaths, string path)
    {
        const string mm = "Mm";
        var given = path.EndsWith(mm, StringComparison.Ordinal) ? path[..^mm.Length] + "In" : path;
        return inchPaths.Contains(given) ? given : path;
    }

    private static void Collect(JsonElement element, string path, ImmutableHashSet<string>.Builder paths)
    {
        if (element.ValueKind == JsonValueKind.Object)
        {
            foreach (var property in element.EnumerateObject())
            {
                var child = JsonWords.Child(path, property.Name);
                if (property.Name.EndsWith("In", StringComparison.Ordinal))
                {
                    paths.Add(child);
                }

                Collect(property.Value, child, paths);
            }
        }
        else if (element.ValueKind == JsonValueKind.Array)
        {
            for (var i = 0; i < element.GetArrayLength(); i++)
            {
                Collect(element[i], JsonWords.Child(path, i), paths);
            }
        }
    }
}
