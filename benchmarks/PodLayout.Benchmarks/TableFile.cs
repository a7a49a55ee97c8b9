using System.Globalization;
using System.Reflection;
using System.Runtime.InteropServices;
using System.Text;

namespace PodLayout.Benchmarks;

/// <summary>A table of figures in Markdown, with what they were measured on.</summary>
internal sealed class TableFile(string title, string about)
{
    private readonly StringBuilder _text = new StringBuilder()
        .Append(CultureInfo.InvariantCulture, $"# {title}\n\n{about}\n\n")
        .Append(CultureInfo.InvariantCulture, $"OR-Tools {VersionOf(typeof(Google.OrTools.Sat.CpModel))}, .NET {Environment.Version}, {RuntimeInformation.OSArchitecture}, {Environment.ProcessorCount} processors, seed of the random parts {Cases.Seed}. Times are wall times of one run; compare those of one file only.\n");

    /// <summary>A heading.</summary>
    public void Heading(string words) => Add($"\n## {words}\n\n");

    /// <summary>A paragraph.</summary>
    public void Words(string words) => Add($"{words}\n");

    /// <summary>The head of a table, after an empty line.</summary>
    public void Head(params ReadOnlySpan<string> cells)
    {
        if (!_text.ToString().EndsWith("\n\n", StringComparison.Ordinal))
        {
            Add("\n");
        }

        Row(cells);
        Add("|" + string.Concat(Enumerable.Repeat("---|", cells.Length)) + "\n");
    }

    /// <summary>A row, which is shown at once: some take long.</summary>
    public void Row(params ReadOnlySpan<string> cells) => Add("| " + string.Join(" | ", cells) + " |\n");

    /// <summary>Writes the file.</summary>
    public void Save(string path)
    {
        File.WriteAllText(path, _text.ToString());
        Console.WriteLine($"\nWritten to {path}");
    }

    /// <summary>Milliseconds as they stand in a table.</summary>
    public static string Ms(double ms) => ms.ToString(ms < 10 ? "0.0" : "0", CultureInfo.InvariantCulture);

    /// <summary>A count, or a dash.</summary>
    public static string Count(int? count) => count?.ToString(CultureInfo.InvariantCulture) ?? "-";

    private static string VersionOf(Type type) =>
        type.Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()?.InformationalVersion.Split('+')[0]
        ?? type.Assembly.GetName().Version?.ToString() ?? "?";

    private void Add(string text)
    {
        _text.Append(text);
        Console.Write(text);
    }
}
