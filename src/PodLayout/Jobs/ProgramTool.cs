using PodLayout.Programs;

namespace PodLayout.Jobs;

/// <summary>A tool that the job's program moves.</summary>
/// <param name="Number">Its number in the program.</param>
/// <param name="DiameterMm">Its diameter, mm.</param>
/// <param name="DeepestZMm">The lowest Z that it is driven to, as the program writes it, mm.</param>
public sealed record ProgramTool(int Number, double DiameterMm, double DeepestZMm)
{
    /// <summary>The tools of a program, in order of first use.</summary>
    /// <param name="path">The program, read.</param>
    /// <param name="setting">The tools by number.</param>
    public static IEnumerable<ProgramTool> Of(ToolPath path, ProgramSetting setting)
    {
        Dictionary<int, double> deepest = [];
        foreach (var stretch in path.Stretches)
        {
            deepest[stretch.ToolNumber] = Math.Min(deepest.GetValueOrDefault(stretch.ToolNumber, double.PositiveInfinity), stretch.LowestZMm);
        }

        return path.Tools.Where(n => setting.Tools.ContainsKey(n) && deepest.ContainsKey(n)).Select(n => new ProgramTool(n, setting.Tools[n].DiameterMm, deepest[n]));
    }
}
