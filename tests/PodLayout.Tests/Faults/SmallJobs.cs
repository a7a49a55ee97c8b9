using System.Globalization;
using PodLayout.Tests.Cli;

namespace PodLayout.Tests.Faults;

/// <summary>Jobs that are planned in a moment.</summary>
internal static class SmallJobs
{
    /// <summary>A rectangle that a pod or two support, and one that lies on nothing.</summary>
    public static string Rectangle(double widthMm, double lengthMm) =>
        Reading.Drawings.Dxf(Reading.Drawings.Rectangle(0, 0, widthMm, lengthMm, "OUTLINE"));

    /// <summary>The job file of a drawing beside it; the part lies where it is told, so that nothing is searched.</summary>
    public static string Job(string more = "", double overhangMm = 90) => string.Create(
        CultureInfo.InvariantCulture, $$"""{ "version": 1, "drawing": "part.dxf", "thicknessMm": 30, "overhangMm": {{overhangMm}}, "cutter": { "tangentialN": 5, "normalN": 5, "axialN": 5 }, "placement": { "zeroOnBoardMm": [105, 105] }{{more}} }""");

    /// <summary>A folder with the job of a rectangle of 240 x 150 mm.</summary>
    public static string Put(Scratch scratch, string more = "", double widthMm = 240, double overhangMm = 90)
    {
        scratch.Put("part.dxf", Rectangle(widthMm, 150));
        return scratch.Put("job.json", Job(more, overhangMm));
    }

    /// <summary>Plans it into a folder of the scratch.</summary>
    public static Ran Plan(Scratch scratch, string folder, params string[] more) =>
        Ran.Of(["plan", scratch.Path("job.json"), "--out", scratch.Path(folder), "--threads", "1", .. more]);
}
