using System.Collections.Frozen;
using System.Collections.Immutable;
using System.CommandLine;
using System.Globalization;
using PodLayout.Cuts;
using PodLayout.Findings;
using PodLayout.Jobs.Written;
using PodLayout.JsonFiles;
using PodLayout.Parts;
using PodLayout.Programs;
using PodLayout.Reading;

namespace PodLayout.Cli;

/// <summary><c>inspect</c>: what is read from a drawing or a program.</summary>
internal static class InspectCommand
{
    private static readonly FrozenSet<string> ProgramEndings =
        FrozenSet.ToFrozenSet([".nc", ".ngc", ".tap", ".cnc", ".iso", ".gcode", ".gc", ".g", ".mpf", ".prg", ".txt"], StringComparer.OrdinalIgnoreCase);

    public static Command Make(Terminal terminal, Action<Func<CancellationToken, int>> run)
    {
        Argument<string> input = new("FILE") { Description = "A drawing (.dxf or .svg), or a posted program (.nc, .ngc, .tap, .cnc, .iso, .gcode, .gc, .g, .mpf, .prg, .txt)." };
        DrawingOptions drawing = new();
        Option<bool> json = new("--json") { Description = "Print what is read from a drawing as JSON, for scripts." };
        Option<string[]> tools = new("--tool") { HelpName = "N=MM", Description = "Number and diameter of a tool of a program, for cutter radius compensation; may stand several times." };
        Command command = new("inspect", "Prints what is read from a drawing (rings, areas, layers, units, gaps, the part that plan would take) or from a program (tools, extents, depths, times), and all that is found; ends as plan would.") { input };
        foreach (var option in (IEnumerable<Option>)[.. drawing.All, json, tools])
        {
            command.Add(option);
        }

        command.SetAction(parsed => run(cancellation => Interruptible.Run(() =>
        {
            var path = parsed.GetRequiredValue(input);
            if (ProgramEndings.Contains(Path.GetExtension(path)))
            {
                return Program(path, tools, parsed.GetValue(tools) ?? [], terminal);
            }

            List<MemberOverride> members = [];
            return drawing.Read(parsed, members) is { } wrong ? terminal.Refuse([wrong]) : Drawing(path, members, parsed.GetValue(json), terminal);
        }, cancellation)));
        return command;
    }

    private static int Drawing(string path, List<MemberOverride> members, bool asJson, Terminal terminal)
    {
        // The same reader as for a job, so that the same rules hold; a thickness changes nothing here.
        var asked = JobReading.FromOptions(
            [new("FILE", "drawing", null, PlanOptions.Element(path)), new("FILE", "thicknessMm", null, PlanOptions.Element(1)), .. members]);
        if (!asked.Succeeded)
        {
            return terminal.Refuse(asked.Findings);
        }

        // Called as it is in a job that lies beside it.
        var name = Path.GetFileName(path);
        var read = InputFile.Read(path).Then(content => DrawingReader.Read(name, content, asked.Value.Reading));
        if (!read.Succeeded)
        {
            if (asJson)
            {
                return Json(name, null, null, read.Findings, terminal);
            }

            terminal.Print(read.Findings.OrderBy(f => f.Severity == Severity.Refused));
            return ExitCodes.Of(read.Refusal!);
        }

        var part = PartShaping.Look(read.Value, asked.Value.Layers);
        var findings = read.Findings.AddRange(part.Shape.Findings);
        if (asJson)
        {
            return Json(name, read.Value, part, findings, terminal);
        }

        terminal.Out.Write(DrawingSummary.Of(read.Value, part));
        // Everything is listed here, refusals last: this is where plan sends those who want to know more.
        terminal.Print(findings.OrderBy(f => f.Severity == Severity.Refused));
        return part.Shape.Succeeded ? ExitCodes.LayoutFound : ExitCodes.Of(part.Shape.Refusal!);
    }

    private static int Json(string name, Drawing? drawing, DrawnPart? part, ImmutableArray<Finding> findings, Terminal terminal)
    {
        terminal.Out.Write(DrawingJson.Write(name, drawing, part, findings));
        var refusal = findings.FirstOrDefault(f => f.Severity == Severity.Refused);
        return refusal is null ? ExitCodes.LayoutFound : ExitCodes.Of(refusal);
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

        var outcome = InputFile.Read(path).Then(content => ProgramReading.Read(Path.GetFileName(path), content, new() { Tools = table }));
        if (!outcome.Succeeded)
        {
            return terminal.Refuse(outcome.Findings);
        }

        terminal.Out.Write(ProgramSummary.Of(outcome.Value));
        terminal.Print(UnitDoubts.Alone(outcome.Value) is { } doubt ? outcome.Findings.Add(doubt) : outcome.Findings);
        return ExitCodes.LayoutFound;
    }
}
