using System.Text;
using PodLayout.Findings;

namespace PodLayout.Cli;

/// <summary>
/// Writes to the terminal, or to whatever stands in its place. A full or closed one takes nothing away from the work: what cannot
/// be written is left out, and told at the end. Characters that would steer the terminal stand there by their number.
/// </summary>
internal sealed class TerminalWriter(TextWriter inner) : TextWriter
{
    /// <summary>Why something could not be written; null when all was.</summary>
    public string? Fault { get; private set; }

    public override Encoding Encoding => inner.Encoding;

    public override void Write(char value) => Write(value.ToString());

    public override void Write(char[] buffer, int index, int count) => Write(new string(buffer, index, count));

    public override void Write(string? value)
    {
        if (Fault is not null || string.IsNullOrEmpty(value))
        {
            return;
        }

        Guard(() => inner.Write(Plain.Text(value, keepsLines: true)));
    }

    public override void WriteLine(string? value) => Write(value + CoreNewLineText);

    public override void Flush() => Guard(inner.Flush);

    private string CoreNewLineText => inner.NewLine;

    private void Guard(Action write)
    {
        try
        {
            write();
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ObjectDisposedException)
        {
            Fault ??= e.Message.ReplaceLineEndings(" ");
        }
    }
}
