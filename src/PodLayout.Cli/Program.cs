using System.Text;
using PodLayout.Cli;

Console.OutputEncoding = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false);
using CancellationTokenSource interrupted = new();
Console.CancelKeyPress += (_, e) =>
{
    // The first Ctrl-C asks for the best layout found so far; a second one ends the program at once.
    e.Cancel = !interrupted.IsCancellationRequested;
    interrupted.Cancel();
};
return CommandLine.Run(args, Console.Out, Console.Error, interrupted.Token, errorIsTerminal: !Console.IsErrorRedirected);
