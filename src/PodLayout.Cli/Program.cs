using System.Runtime.InteropServices;
using System.Text;
using PodLayout.Cli;

using CancellationTokenSource interrupted = new();

// The signal itself: the console's own event asks the terminal, and there may be none.
using var ctrlC = PosixSignalRegistration.Create(PosixSignal.SIGINT, signal =>
{
    // The first Ctrl-C asks for the best layout found so far; a second one ends the program at once.
    signal.Cancel = !interrupted.IsCancellationRequested;
    interrupted.Cancel();
});

// In UTF-8 whatever the system is set to, and without asking anything of a stream that may be closed.
UTF8Encoding utf8 = new(encoderShouldEmitUTF8Identifier: false);
if (OperatingSystem.IsWindows() && !Console.IsOutputRedirected)
{
    // There the window has an encoding of its own.
    Console.OutputEncoding = utf8;
}

using StreamWriter output = new(Console.OpenStandardOutput(), utf8) { AutoFlush = true }, error = new(Console.OpenStandardError(), utf8) { AutoFlush = true };
return CommandLine.Run(args, output, error, interrupted.Token, errorIsTerminal: !Console.IsErrorRedirected);
