using System.Diagnostics;
using System.Globalization;
using System.Text.Json.Nodes;

namespace PodLayout.Tests;

/// <summary>
/// Drawings read back by ezdxf (python3-ezdxf as Debian packages it), a reader and auditor of DXF that shares nothing with this
/// program. A test that needs it is skipped, with the reason, where it is not installed; the checks of the repository install it.
/// </summary>
internal static class Ezdxf
{
    private const string Python = "/usr/bin/python3";

    private static readonly Lazy<string?> Missing = new(() => Ran(["-c", "import ezdxf"], out _, out var error) ? null : "python3-ezdxf is not installed: " + error);

    /// <summary>What a script of the tests prints of a drawing.</summary>
    public static JsonNode Read(string dxf, params string[] script)
    {
        Assert.SkipWhen(Missing.Value is not null, Missing.Value ?? "");
        var file = Path.GetTempFileName();
        try
        {
            File.WriteAllText(file, dxf);
            Assert.True(Ran([Repository.Path(["tests", "PodLayout.Tests", .. script]), file], out var output, out var error), error);
            return JsonNode.Parse(output)!;
        }
        finally
        {
            File.Delete(file);
        }
    }

    internal static bool Ran(string[] arguments, out string output, out string error)
    {
        (output, error) = ("", $"{Python} cannot be started");
        if (!File.Exists(Python))
        {
            return false;
        }

        using var process = Process.Start(new ProcessStartInfo(Python, arguments) { RedirectStandardOutput = true, RedirectStandardError = true })!;
        var errors = process.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken);
        output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        error = string.Create(CultureInfo.InvariantCulture, $"exit code {process.ExitCode}: {errors.Result.Trim().Split('\n')[^1]}");
        return process.ExitCode == 0;
    }
}
