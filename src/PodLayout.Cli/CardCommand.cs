using System.Collections.Immutable;
using System.CommandLine;
using System.Text;
using PodLayout.Checking;
using PodLayout.Findings;
using PodLayout.Handover;
using PodLayout.Handover.Format;
using PodLayout.Handover.Setup;
using PodLayout.Layouts;

namespace PodLayout.Cli;

/// <summary><c>card</c>: from a layout to the card that the board is set up from.</summary>
internal static class CardCommand
{
    public static Command Make(Terminal terminal, Action<Func<CancellationToken, int>> run)
    {
        Argument<string> input = new("FILE") { Description = "A layout.json, as plan wrote it or changed by hand." };
        Option<string?> outFolder = new("--out") { HelpName = "DIR", Description = "Folder for the card.", Required = true };
        CardOptionsGiven given = new();
        Command command = new("card", "Makes the setup card of a layout: for the screen, for paper, and as a drawing.") { input, outFolder };
        foreach (var option in given.All)
        {
            command.Add(option);
        }

        command.SetAction(parsed => run(_ =>
        {
            var path = parsed.GetRequiredValue(input);
            var options = given.Read(parsed);
            var read = options.Then(_ => InputFile.Read(path)).Then(content => Layout(path, content));
            return read.Succeeded
                ? Write(path, read.Value, read.Findings, options.Value!, parsed.GetRequiredValue(outFolder)!, terminal)
                : terminal.Refuse(read.Findings);
        }));
        return command;
    }

    // As plan wrote it the file says how the part is supported; once it has been changed that no longer holds, and is left out.
    private static Outcome<LayoutFile> Layout(string path, byte[] content) => EditedLayout.Read(path, content).Then(edited =>
        LayoutJson.Read(path, Encoding.UTF8.GetString(content).TrimStart('\uFEFF')) is { Succeeded: true } asWritten
            ? Outcome<LayoutFile>.Of(asWritten.Value) : Outcome<LayoutFile>.Of(edited))
        .Then(file => !file.Pods.IsEmpty ? Outcome<LayoutFile>.Of(file) : Outcome<LayoutFile>.Refuse(new Finding(
            "card-without-pods", Severity.Refused, FindingKind.Request, "holds no pods; a card tells where pods stand.",
            new Place.InJson(path, "$.pods"), "Give a layout with pods.")));

    private static int Write(
        string path, LayoutFile file, ImmutableArray<Finding> found, CardOptions options, string outFolder, Terminal terminal)
    {
        // Whoever changed the file by hand is told on the card what it breaks: the operator has nothing else to go by.
        var plan = LayoutJson.ToPlan(file);
        var renewed = HeldLayout.Renewed(plan.Job, plan.Layout!, Environment.ProcessorCount);
        var report = LayoutCheck.Of(plan.Job, plan.Layout!, file.OpenPorts);
        terminal.Print(found.Concat(CheckFindings.Of(path, report)));
        // A layout that was planned and does not hold breaks a rule unchanged.
        var isChanged = report.Rules.Any(r => !r.Holds && r.Rule != CheckedRule.PartHeld) || !ReferenceEquals(renewed, plan.Layout) || renewed.SupportPoints.IsEmpty;
        if (isChanged)
        {
            // What was proven was proven of another layout.
            renewed = renewed with { Proof = renewed.Proof with { Words = "Nothing: the layout was changed after it was planned." } };
        }

        var doubts = CheckFindings.Doubts(plan.Job, renewed, report, isChanged);
        plan = plan with { Layout = renewed };
        plan = isChanged ? plan with { Findings = CheckFindings.Standing(plan) } : plan;
        var files = CardFiles.Of(plan, options, doubts);
        if (OutputFolder.Write(outFolder, files) is { } refusal)
        {
            return terminal.Refuse([refusal]);
        }

        terminal.Out.WriteLine($"Written to {outFolder}: {string.Join(", ", files.Select(f => f.Name))}");
        return report.AllHold ? ExitCodes.LayoutFound : ExitCodes.RuleBroken;
    }
}
