using System.Collections.Immutable;
using System.Text;
using PodLayout.Findings;
using PodLayout.Programs;

namespace PodLayout.Tests.Programs;

/// <summary>Programs and tools that tests start from.</summary>
internal static class Posted
{
    public const string Name = "part.nc";

    public static ImmutableSortedDictionary<int, Tool> Tools(params IEnumerable<Tool> tools) =>
        tools.ToImmutableSortedDictionary(t => t.Number, t => t);

    public static Outcome<ToolPath> Read(string text, ProgramOptions? options = null) =>
        ProgramReading.Read(Name, Encoding.UTF8.GetBytes(text), options ?? new());

    /// <summary>The path of a program that starts at a known place and is closed by M2.</summary>
    public static ToolPath From(double x, double y, double z, string text, params Tool[] tools)
    {
        var outcome = Read(text + "\nM2\n", new() { Start = new(x, y, z), Tools = Tools(tools) });
        Assert.True(outcome.Succeeded, outcome.Refusal?.ToString());
        return outcome.Value;
    }

    /// <summary>The ends of the moves, rounded to a millionth.</summary>
    public static (double X, double Y, double Z)[] Ends(this ToolPath path) =>
        [.. path.Stretches.Select(s => (Math.Round(s.To.XMm, 6) + 0, Math.Round(s.To.YMm, 6) + 0, Math.Round(s.To.ZMm, 6) + 0))];
}
