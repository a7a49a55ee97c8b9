using System.Globalization;
using System.Text;
using PodLayout.Programs;

namespace PodLayout.Cli;

/// <summary>What was read from a posted program, for a person.</summary>
internal static class ProgramSummary
{
    public static string Of(ToolPath path)
    {
        StringBuilder text = new();
        var uses = ToolUses.Of(path);
        Line($"{path.FileName}: {path.LineCount} lines, {path.Stretches.Length} moves, {(path.InInches ? "inches" : "millimetres")}; all figures here in mm, in the program's own coordinates");
        Line($"Tools: {uses.Length}, changed {path.ToolChanges} times");
        foreach (var use in uses)
        {
            var box = use.Extent;
            Line($"  tool {use.ToolNumber}, from line {use.FirstLine}");
            Line($"       lowest Z {use.LowestZMm:0.###} (line {use.LowestLine}), highest Z {use.HighestZMm:0.###}");
            Line($"       tip from ({box.MinX:0.###}, {box.MinY:0.###}) to ({box.MaxX:0.###}, {box.MaxY:0.###}): {box.Width:0.###} x {box.Height:0.###}");
            Line($"       fed {use.FedMm:0.#} mm in {Time(use.CuttingSeconds)}, rapid {use.RapidMm:0.#} mm{(use.UntimedMm > 0 ? string.Create(CultureInfo.InvariantCulture, $"; {use.UntimedMm:0.#} mm without a feed are not in the time") : "")}");
        }

        Line($"Cutting time: {Time(uses.Sum(u => u.CuttingSeconds) + path.DwellSeconds)} at the feeds of the program, dwells included, without rapids, tool changes and acceleration");
        return text.ToString();

        void Line(FormattableString line) => text.Append(line.ToString(CultureInfo.InvariantCulture)).Append('\n');
    }

    private static string Time(double seconds)
    {
        var whole = (long)Math.Round(seconds);
        return string.Create(CultureInfo.InvariantCulture, $"{whole / 60} min {whole % 60:00} s");
    }
}
