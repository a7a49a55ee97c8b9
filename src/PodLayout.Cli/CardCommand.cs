using System.Collections.Immutable;
using System.CommandLine;
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
        Option<string?> outFolderOption = new("--out") { HelpName = "DIR", Description = "Folder for the card.", Required = true };
        CardOptionsGiven given = new();
        Command command = new("card", "Makes the setup card of a layout: for the screen, for paper, and as a drawing.") { input, outFolderOption };
        foreach (var option in given.All)
        {
            command.Add(option);
        }

        command.SetAction(parsed => run(cancellation =>
        {
            var path = parsed.GetRequiredValue(input);
            var options = given.Read(parsed);
            var outFolder = parsed.GetRequiredValue(outFolderOption)!;
            var made = Interruptible.Run(() => options.Then(_ => FiledLayout.Read(path)).Then(filed => Layout(path, filed.File)).Then(file => Made(path, file, options.Value!)), cancellation);
            return made.Succeeded ? Write(made.Value, made.Findings, outFolder, terminal) : terminal.Refuse(made.Findings);
        }));
        return command;
    }

    private static Outcome<LayoutFile> Layout(string path, LayoutFile file) =>
        !file.Pods.IsEmpty ? Outcome<LayoutFile>.Of(file) : Outcome<LayoutFile>.Refuse(new Finding(
            "card-without-pods", Severity.Refused, FindingKind.Request, "holds no pods; a card tells where pods stand.",
            new Place.InJson(path, "$.pods"), "Give a layout with pods."));

    private static int Write(MadeCard card, ImmutableArray<Finding> found, string outFolder, Terminal terminal)
    {
        if (PlanFiles.OtherLayout(outFolder, card.Mark) is { } other)
        {
            return terminal.Refuse([other]);
        }

        var gone = PlanFiles.OutOfDate(outFolder, card.Files.Select(f => f.Name).Append(PlanFiles.Layout), card.Mark);
        if (OutputFolder.Write(outFolder, card.Files, gone) is { } refusal)
        {
            return terminal.Refuse([refusal]);
        }

        // The card takes the place of what was made before; only what no card replaces is worth a word.
        terminal.Print(found.Where(f => f.Code != PlanFiles.OfBefore));
        terminal.Told(outFolder, card.Files, gone);
        return !card.BreaksNothing ? ExitCodes.RuleBroken : card.LeavesUnsupported ? ExitCodes.PartUnsupported : ExitCodes.LayoutFound;
    }

    private static Outcome<MadeCard> Made(string path, LayoutFile file, CardOptions options)
    {
        // Whoever changed the file by hand is told on the card what it breaks: the operator has nothing else to go by.
        var plan = LayoutJson.ToPlan(file);
        var renewed = HeldLayout.Renewed(plan.Job, plan.Layout!, Environment.ProcessorCount);
        var report = LayoutCheck.Of(plan.Job, plan.Layout!, file.OpenPorts, plan.Unsupported);
        // A layout that was planned and does not hold breaks a rule unchanged.
        var isChanged = report.Rules.Any(r => !r.Holds && r.Rule != CheckedRule.PartHeld) || !ReferenceEquals(renewed, plan.Layout) || renewed.SupportPoints.IsEmpty;
        if (isChanged)
        {
            // What was proven was proven of another layout.
            renewed = renewed with { Proof = renewed.Proof with { Words = "Nothing: the layout was changed after it was planned." } };
        }

        var doubts = CheckFindings.Doubts(plan.Job, renewed, report, isChanged);
        plan = plan with { Layout = renewed };
        // How far a stretch is from the nearest pod was said of the pods that were planned.
        plan = isChanged ? plan with
        {
            Findings = CheckFindings.Standing(plan),
            Unsupported = report.LeavesUnsupported ? [.. plan.Unsupported.Select(s => s with { OverhangNowMm = null })] : [],
        } : plan;
        return Outcome<MadeCard>.Of(
            new(CardFiles.Of(plan, options, doubts), LayoutMark.Of(plan), report.AllHold, report.LeavesUnsupported), CheckFindings.Of(path, report));
    }

    private sealed record MadeCard(ImmutableArray<(string Name, byte[] Content)> Files, string Mark, bool BreaksNothing, bool LeavesUnsupported);
}
