using System.Collections.Frozen;
using System.Collections.Immutable;
using System.CommandLine;
using System.Globalization;
using PodLayout.Cuts;
using PodLayout.Findings;
using PodLayout.Programs;
using PodLayout.Reading;

namespace PodLayout.Cli;

/// <summary><c>inspect</c>: what is read from a drawing or a program.</summary>
internal static class InspectCommand
{
    private static readonly FrozenSet<string> ProgramEndings =
        FrozenSet.ToFrozenSet([".nc", ".ngc", ".tap", ".cnc", ".iso", ".gcode"], StringComparer.OrdinalIgnoreCase);

    public static Command Make(Terminal terminal, Action<Func<CancellationToken, int>> run)
    {
        Argument<string> input = new("FILE") { Description = "A drawing (.dxf or .svg), or a posted program (.nc, .ngc, .tap, .cnc, .iso, .gcode)." };
        Option<string?> units = new("--units") { HelpName = "UNIT", Description = "Unit of the drawing (mm, cm, m, in, ft, um, mil), whatever it says itself." };
        Option<string?> joinGap = new("--join-gap") { HelpName = "MM", Description = "Ends of lines nearer than this are joined, mm." };
        Option<string[]> tools = new("--tool") { HelpName = "N=MM", Description = "Number and diameter of a tool of a program, for cutter radius compensation; may stand several times." };
        Command command = new("inspect", "Prints what is read from a drawing (rings, areas, layers, units, gaps) or from a program (tools, extents, depths, times), and the warnings.") { input, units, joinGap, tools };
        command.SetAction(parsed => run(_ =>
        {
            var path = parsed.GetRequiredValue(input);
            if (ProgramEndings.Contains(Path.GetExtension(path)))
            {
                return Program(path, tools, parsed.GetValue(tools) ?? [], terminal);
            }

            var outcome = Options(units, parsed.GetValue(units), joinGap, parsed.GetValue(joinGap))
                .Then(options => InputFile.Read(path).Then(content => DrawingReader.Read(path, content, options)));
            if (outcome.Succeeded)
            {
                terminal.Out.Write(DrawingSummary.Of(outcome.Value));
            }

            if (!outcome.Succeeded)
            {
                return terminal.Refuse(outcome.Findings);
            }

            terminal.Print(outcome.Findings);
            return ExitCodes.LayoutFound;
        }));
        return command;
    }

    private static int Program(string path, Option toolsOption, string[] tools, Terminal terminal)
    {
        var table = ImmutableSortedDictionary<int, Tool>.Empty;
        foreach (var given in tools)
        {
            if (given.Split('=') is not [var number, var size]
                || !int.TryParse(number, NumberStyles.None, CultureInfo.InvariantCulture, out var n)
                || PlanOptions.NumbersOf(size) is not [> 0 and <= 1000 and var diameterMm])
            {
                return terminal.Refuse([PlanOptions.Bad(toolsOption, given, "a tool's number and its diameter in mm, such as 3=12.7")]);
            }

            table = table.SetItem(n, new Tool(n, diameterMm, new CutterForm.Flat()));
        }

        var outcome = InputFile.Read(path).Then(content => ProgramReading.Read(path, content, new() { Tools = table }));
        if (!outcome.Succeeded)
        {
            return terminal.Refuse(outcome.Findings);
        }

        terminal.Out.Write(ProgramSummary.Of(outcome.Value));
        terminal.Print(UnitDoubts.Alone(outcome.Value) is { } doubt ? outcome.Findings.Add(doubt) : outcome.Findings);
        return ExitCodes.LayoutFound;
    }

    private static Outcome<ReadingOptions> Options(Option unitsOption, string? units, Option gapOption, string? gap)
    {
        var options = ReadingOptions.Default;
        if (units is not null)
        {
            if (LengthUnit.TryParse(units) is not { } unit)
            {
                return Outcome<ReadingOptions>.Refuse(PlanOptions.Bad(unitsOption, units, $"one of {LengthUnit.Abbreviations}"));
            }

            options = options with { UnitOverride = unit };
        }

        if (gap is not null)
        {
            if (PlanOptions.NumbersOf(gap) is not [>= 0 and <= 10 and var gapMm])
            {
                return Outcome<ReadingOptions>.Refuse(PlanOptions.Bad(gapOption, gap, "a distance from 0 to 10 mm"));
            }

            options = options with { JoinGapMm = gapMm };
        }

        return Outcome<ReadingOptions>.Of(options);
    }
}
