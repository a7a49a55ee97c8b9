using System.Globalization;
using PodLayout.Layouts;

namespace PodLayout.Cli;

/// <summary>What is handed over: the summary on the terminal and the files.</summary>
internal static class Results
{
    public static string Summary(PlanResult result) =>
        string.Create(CultureInfo.InvariantCulture, $"{result.Job.Name}: {result.Layout?.Pods.Length ?? 0} pods\n");

    public static IReadOnlyList<(string Name, string Content)> Files(PlanResult result) => [("summary.txt", Summary(result))];
}
