using System.Text;
using PodLayout.Handover;
using PodLayout.Handover.Setup;
using PodLayout.Layouts;

namespace PodLayout.Cli;

/// <summary>What is handed over: the summary on the terminal and the files.</summary>
internal static class Results
{
    public static string Summary(PlanResult result) => Handover.Summary.Write(result);

    /// <param name="result">The plan.</param>
    /// <param name="card">What the setup card adds; null for no card. Without a layout there is none.</param>
    public static IReadOnlyList<(string Name, byte[] Content)> Files(PlanResult result, CardOptions? card)
    {
        result = result with { Mark = LayoutMark.Of(result) };
        var inInches = card?.InInches ?? result.Job.Shop.WorksInInches;
        IReadOnlyList<(string Name, byte[] Content)> files =
        [
            ("layout.json", Bytes(LayoutJson.Write(result))),
            ("pods.csv", Bytes(PodsCsv.Write(result, inInches))),
            ("ports.csv", Bytes(PortsCsv.Write(result, inInches))),
            ("layout.svg", Bytes(LayoutPicture.Svg(result))),
        ];
        return card is null || result.Layout is null
            ? files : [.. files, .. CardFiles.Of(result, card, LayoutDoubts.None).Where(f => !files.Any(known => known.Name == f.Name))];
    }

    private static byte[] Bytes(string text) => Encoding.UTF8.GetBytes(text);
}
