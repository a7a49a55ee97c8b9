using PodLayout.Handover;
using PodLayout.Layouts;

namespace PodLayout.Cli;

/// <summary>What is handed over: the summary on the terminal and the files.</summary>
internal static class Results
{
    public static string Summary(PlanResult result) => $"{result.Job.Name}: {result.Layout?.Pods.Length ?? 0} pods\n";

    public static IReadOnlyList<(string Name, string Content)> Files(PlanResult result) =>
    [
        ("layout.json", LayoutJson.Write(result)),
        ("pods.csv", PodsCsv.Write(result)),
        ("ports.csv", PortsCsv.Write(result)),
    ];
}
