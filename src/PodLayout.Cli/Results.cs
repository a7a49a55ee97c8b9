using PodLayout.Handover;
using PodLayout.Layouts;

namespace PodLayout.Cli;

/// <summary>What is handed over: the summary on the terminal and the files.</summary>
internal static class Results
{
    public static string Summary(PlanResult result) => Handover.Summary.Write(result);

    public static IReadOnlyList<(string Name, string Content)> Files(PlanResult result) =>
    [
        ("layout.json", LayoutJson.Write(result)),
        ("pods.csv", PodsCsv.Write(result)),
        ("ports.csv", PortsCsv.Write(result)),
        ("layout.svg", LayoutPicture.Svg(result)),
    ];
}
