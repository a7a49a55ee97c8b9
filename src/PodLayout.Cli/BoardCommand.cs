using System.CommandLine;
using PodLayout.BoardMaking;
using PodLayout.Findings;
using PodLayout.Handover;
using PodLayout.Shops;
using PodLayout.Shops.Written;

namespace PodLayout.Cli;

/// <summary><c>board</c>: from a shop file that says how its board is made to the drawings of both sides.</summary>
internal static class BoardCommand
{
    public static Command Make(Terminal terminal, Action<Func<CancellationToken, int>> run)
    {
        Argument<string> input = new("FILE") { Description = "A shop file (.json); with the member \"making\" unless --svg is given." };
        Option<string?> outFolder = new("--out") { HelpName = "DIR", Description = "Folder for the drawings; without it the board is only checked." };
        Option<bool> svg = new("--svg") { Description = "Only the empty board with its column and row numbers, at full size, for engraving or printing along the edge: board.svg in the folder, or on the terminal. Any shop file will do." };
        Command command = new("board", "Draws both sides of the grid board for the machine, and checks it before it is cut.") { input, outFolder, svg };
        command.SetAction(parsed => run(cancellation =>
        {
            var path = parsed.GetRequiredValue(input);
            if (parsed.GetValue(svg))
            {
                var shop = Interruptible.Run(() => InputFile.Read(path).Then(content => ShopReading.Read(path, content)), cancellation);
                return shop.Succeeded ? WriteNumbers(shop.Value, shop.Findings, parsed.GetValue(outFolder), terminal) : terminal.Refuse(shop.Findings);
            }

            var plan = Interruptible.Run(() => InputFile.Read(path).Then(content => BoardRequestReading.Read(path, content)).Then(BoardDesign.Make), cancellation);
            return plan.Succeeded ? Write(plan.Value, plan.Findings, parsed.GetValue(outFolder), terminal, cancellation) : terminal.Refuse(plan.Findings);
        }));
        return command;
    }

    private static int WriteNumbers(Shop shop, IEnumerable<Finding> findings, string? outFolder, Terminal terminal)
    {
        const string name = "board.svg";
        terminal.Print(findings);
        var picture = NumberedBoard.Svg(shop.Board);
        if (outFolder is null)
        {
            terminal.Out.Write(picture);
            return ExitCodes.LayoutFound;
        }

        if (OutputFolder.Write(outFolder, [(name, picture)]) is { } refusal)
        {
            return terminal.Refuse([refusal]);
        }

        terminal.Out.WriteLine($"Written to {outFolder}: {name}");
        return ExitCodes.LayoutFound;
    }

    private static int Write(BoardPlan plan, IEnumerable<Finding> findings, string? outFolder, Terminal terminal, CancellationToken cancellation)
    {
        var files = outFolder is null ? [] : Interruptible.Run(() => BoardFiles.Of(plan), cancellation);
        if (outFolder is not null && OutputFolder.Write(outFolder, files) is { } refusal)
        {
            return terminal.Refuse([.. findings, refusal]);
        }

        terminal.Print(findings);
        foreach (var check in plan.Checks)
        {
            terminal.Out.WriteLine($"{check.What}: {check.Value}{(check.Limit.Length > 0 ? $" ({check.Limit})" : "")}");
        }

        if (outFolder is not null)
        {
            terminal.Out.WriteLine($"Written to {outFolder}: {string.Join(", ", files.Select(f => f.Name))}");
        }

        return ExitCodes.LayoutFound;
    }
}
