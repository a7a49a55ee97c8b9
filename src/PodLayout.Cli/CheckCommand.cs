using System.CommandLine;
using PodLayout.Checking;
using PodLayout.Handover;

namespace PodLayout.Cli;

/// <summary><c>check</c>: a layout, perhaps changed by hand, held against every rule.</summary>
internal static class CheckCommand
{
    public static Command Make(Terminal terminal, Action<Func<CancellationToken, int>> run)
    {
        Argument<string> input = new("FILE") { Description = "A layout.json, as plan wrote it or changed by hand." };
        Command command = new("check", "Holds a layout against every rule, with the worst figure of each.") { input };
        command.SetAction(parsed => run(_ =>
        {
            var path = parsed.GetRequiredValue(input);
            var read = InputFile.Read(path).Then(content => EditedLayout.Read(path, content));
            if (!read.Succeeded)
            {
                return terminal.Refuse(read.Findings);
            }

            var plan = LayoutJson.ToPlan(read.Value);
            var report = LayoutCheck.Of(plan.Job, plan.Layout!, read.Value.OpenPorts);
            terminal.Print(read.Findings.Concat(report.Rules.SelectMany(r => r.Breaches.Concat(r.Warnings))));
            terminal.Out.Write(CheckText.Write(plan, report));
            return report.AllHold ? ExitCodes.LayoutFound : ExitCodes.RuleBroken;
        }));
        return command;
    }
}
