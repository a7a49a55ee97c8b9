using System.CommandLine;
using System.CommandLine.Help;
using PodLayout.Findings;

namespace PodLayout.Cli;

/// <summary>The command line: which commands there are, and how whatever happens becomes lines and an exit code.</summary>
public static class CommandLine
{
    private const string TraceVariable = "PODLAYOUT_TRACE";

    /// <summary>Runs one command and gives its exit code. Writes only to the given writers and to the folder named by --out.</summary>
    /// <param name="args">The command line.</param>
    /// <param name="output">Where results go.</param>
    /// <param name="error">Where findings and progress go.</param>
    /// <param name="cancellation">Cuts the work short.</param>
    /// <param name="errorIsTerminal">Whether a person sees what is told on the way.</param>
    /// <param name="clock">What a time limit is kept by; null for the machine's own.</param>
    public static int Run(
        string[] args, TextWriter output, TextWriter error, CancellationToken cancellation, bool errorIsTerminal = false, TimeProvider? clock = null)
    {
        using TerminalWriter shown = new(output), told = new(error);
        var code = Run(args, new(shown, told, errorIsTerminal) { Clock = clock ?? TimeProvider.System }, cancellation);
        shown.Flush();
        if (shown.Fault is { } fault)
        {
            // Files are written by now; what was to be read here is lost all the same.
            told.WriteLine($"podlayout: error: the output cannot be written: {fault} [output-unwritable]");
            code = code == ExitCodes.LayoutFound ? ExitCodes.BadFile : code;
        }

        told.Flush();
        return code;
    }

    private static int Run(string[] args, Terminal terminal, CancellationToken cancellation)
    {
        var (output, error) = (terminal.Out, terminal.Error);
        try
        {
            Func<CancellationToken, int>? chosen = null;
            var root = Root(terminal, work => chosen = work);
            var parsed = root.Parse(args, new ParserConfiguration { ResponseFileTokenReplacer = null });
            if (parsed.Errors.Count > 0 && parsed.Action is not HelpAction)
            {
                return terminal.Refuse([Wrong(parsed)]);
            }

            // Invoking only notes what is to be done, or writes the help; the work itself runs outside the parser's care.
            using StringWriter help = new();
            var code = parsed.Invoke(new() { Output = help, Error = error, EnableDefaultExceptionHandler = false });
            output.Write(help.ToString().Replace($"  {RootCommand.ExecutableName} ", "  podlayout ", StringComparison.Ordinal));
            return chosen is null ? code : chosen(cancellation);
        }
        catch (OperationCanceledException) when (cancellation.IsCancellationRequested)
        {
            error.WriteLine("podlayout: interrupted before there was a result; nothing is written.");
            return ExitCodes.Interrupted;
        }
#pragma warning disable CA1031 // The last line of defence: whatever comes here is a fault of the program and is said in one line.
        catch (Exception e)
#pragma warning restore CA1031
        {
            error.WriteLine(Environment.GetEnvironmentVariable(TraceVariable) == "1"
                ? e.ToString()
                : $"podlayout: internal error: {e.GetType().Name}: {e.Message.ReplaceLineEndings(" ")} This is a fault of the program; {TraceVariable}=1 shows where.");
            return ExitCodes.InternalError;
        }
    }

    private static RootCommand Root(Terminal terminal, Action<Func<CancellationToken, int>> run)
    {
        // Environment.NewLine would make the help differ from system to system; the codes are part of it.
        var codes = string.Join("\n", ExitCodes.All.Select(c => $"  {c.Code,3}  {c.Meaning}"));
        RootCommand root = new(
            $"Where vacuum pods go on a grid board under an odd-shaped solid-wood part: the fewest of them, and the proof.\n\nExit codes:\n{codes}")
        {
            PlanCommand.Make(terminal, run),
            CheckCommand.Make(terminal, run),
            CardCommand.Make(terminal, run),
            InspectCommand.Make(terminal, run),
            BoardCommand.Make(terminal, run),
            ShopCommand.Make(terminal, run),
            ShopCommand.MakeSchema(terminal, run),
        };
        root.Directives.Clear();
        return root;
    }

    private static Finding Wrong(ParseResult parsed)
    {
        var command = parsed.CommandResult.Command;
        var help = command is RootCommand ? "podlayout --help lists the commands." : $"podlayout {command.Name} --help lists its options.";
        if (parsed.UnmatchedTokens is [var unknown, ..])
        {
            var known = unknown.StartsWith('-')
                ? command.Options.Select(o => o.Name)
                : command.Subcommands.Select(c => c.Name);
            var near = NearestName.To(unknown, known);
            return Of(
                $"\"{unknown}\" is not known here.",
                near is null ? help : $"Did you mean {near}? {help}");
        }

        return Of(parsed.Errors[0].Message.ReplaceLineEndings(" "), help);

        static Finding Of(string message, string remedy) => new(
            "command-line", Severity.Refused, FindingKind.Request, message, new Place.InOption("command line"), remedy);
    }
}
