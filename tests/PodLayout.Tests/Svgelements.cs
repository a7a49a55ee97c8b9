using System.Text.Json.Nodes;

namespace PodLayout.Tests;

/// <summary>
/// Drawings read back by svgelements (python3-svgelements as Debian packages it), a reader of SVG that shares nothing with this
/// program. A test that needs it is skipped, with the reason, where it is not installed; the checks of the repository install it.
/// </summary>
internal static class Svgelements
{
    private static readonly Lazy<string?> Missing = new(() => Ezdxf.Ran(["-c", "import svgelements"], out _, out var error) ? null : "python3-svgelements is not installed: " + error);

    /// <summary>What a script of the tests prints of a file.</summary>
    public static JsonNode Read(string text, params string[] script)
    {
        Assert.SkipWhen(Missing.Value is not null, Missing.Value ?? "");
        var file = Path.GetTempFileName();
        try
        {
            File.WriteAllText(file, text);
            Assert.True(Ezdxf.Ran([Repository.Path(["tests", "PodLayout.Tests", .. script]), file], out var output, out var error), error);
            return JsonNode.Parse(output)!;
        }
        finally
        {
            File.Delete(file);
        }
    }
}
