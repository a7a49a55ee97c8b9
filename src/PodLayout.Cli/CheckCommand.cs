using System.CommandLine;
using PodLayout.Checking;
using PodLayout.Findings;
using PodLayout.Handover;
using PodLayout.Layouts;

namespace PodLayout.Cli;

/// <summary><c>check</c>: a layout, perhaps changed by hand, held against every rule.</summary>
internal static class CheckCommand
{
    public static Command Make(Terminal terminal, Action<Func<CancellationToken, int>> run)
    {
        Argument<string> input = new("FILE") { Description = "A layout.json, as plan wrote it or changed by hand." };
        Command command = new("check", "Holds a layout against every rule, with the worst figure of each.") { input };
        command.SetAction(parsed => run(cancellation => Interruptible.Run(() =>
        {
            var path = parsed.GetRequiredValue(input);
            var read = FiledLayout.Read(path).Then(filed => EditedLayout.Read(path, filed.Content));
            if (!read.Succeeded)
            {
                return terminal.Refuse(read.Findings);
            }

            var plan = LayoutJson.ToPlan(read.Value);
            var report = LayoutCheck.Of(plan.Job, plan.Layout!, read.Value.OpenPorts, plan.Unsupported);
            var renewed = plan with { Layout = HeldLayout.Renewed(plan.Job, plan.Layout!, Environment.ProcessorCount) };
            terminal.Print([
                .. read.Findings, .. CheckFindings.Of(path, report), .. CheckFindings.Standing(renewed).Where(f => f.Severity == Severity.Warning)
                    .Select(f => f with { Place = f.Place ?? new Place.InFile(path) }),
            ]);
            terminal.Out.Write(CheckText.Write(plan, report));
            return !report.AllHold ? ExitCodes.RuleBroken : report.LeavesUnsupported ? ExitCodes.PartUnsupported : ExitCodes.LayoutFound;
        }, cancellation)));
        return command;
    }
}
