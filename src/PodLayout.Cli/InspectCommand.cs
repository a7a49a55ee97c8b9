using System.CommandLine;
using PodLayout.Findings;
using PodLayout.Reading;

namespace PodLayout.Cli;

/// <summary><c>inspect</c>: what is read from a drawing.</summary>
internal static class InspectCommand
{
    public static Command Make(Terminal terminal, Action<Func<CancellationToken, int>> run)
    {
        Argument<string> input = new("FILE") { Description = "A drawing (.dxf or .svg)." };
        Option<string?> units = new("--units") { HelpName = "UNIT", Description = "Unit of the drawing (mm, cm, m, in, ft, um, mil), whatever it says itself." };
        Option<string?> joinGap = new("--join-gap") { HelpName = "MM", Description = "Ends of lines nearer than this are joined, mm." };
        Command command = new("inspect", "Prints what is read from a drawing: rings, areas, layers, units, gaps, warnings.") { input, units, joinGap };
        command.SetAction(parsed => run(_ =>
        {
            var path = parsed.GetRequiredValue(input);
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
