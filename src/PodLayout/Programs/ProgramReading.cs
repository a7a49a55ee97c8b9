using PodLayout.Findings;
using PodLayout.Programs.Words;

namespace PodLayout.Programs;

/// <summary>
/// Reads a posted program (ISO 6983, RS-274) as NIST's RS274/NGC describes it (Kramer, Proctor, Messina: The NIST RS274/NGC
/// Interpreter, version 3, NISTIR 6556, 2000).
/// </summary>
public static class ProgramReading
{
    /// <summary>The path of the tool's tip, or a refusal with the line at which reading stopped.</summary>
    /// <param name="file">Name of the program, for messages.</param>
    /// <param name="content">Its bytes.</param>
    /// <param name="options">What must be known beside it.</param>
    public static Outcome<ToolPath> Read(string file, ReadOnlySpan<byte> content, ProgramOptions options)
    {
        var findings = new ProgramFindings(file);
        var run = new ProgramRun(options, findings);
        var lines = 0;
        if (IsText(content, findings))
        {
            ReadLines(content, options, run, findings, out lines);
        }

        if (findings.Refusal is null && run.Finish(lines) is { } path)
        {
            return Outcome<ToolPath>.Of(path, findings.All);
        }

        return Outcome<ToolPath>.Refuse(findings.All);
    }

    private static void ReadLines(ReadOnlySpan<byte> content, ProgramOptions options, ProgramRun run, ProgramFindings findings, out int lines)
    {
        var block = new Block();
        content = content.StartsWith("\uFEFF"u8) ? content[3..] : content;
        var hasPercent = false;
        var hasWords = false;
        lines = 0;
        while (!content.IsEmpty && !run.HasEnded)
        {
            var line = NextLine(ref content);
            lines++;
            if (line.TrimStart(" \t"u8) is [(byte)'%', ..])
            {
                // What follows the second is not part of the program (section 3.2).
                if (hasPercent || hasWords)
                {
                    run.EndAtPercent();
                    return;
                }

                hasPercent = true;
                continue;
            }

            if (!BlockReader.Into(block, line, lines, findings))
            {
                return;
            }

            if (block.HasProgramNumber)
            {
                if (hasWords)
                {
                    findings.Refuse(lines, "o-word", "found a second program number; subprograms are not read.", "Post the program in one piece, without subprograms.");
                    return;
                }

                continue;
            }

            hasWords |= !block.IsEmpty;
            if (block.HasSlash)
            {
                findings.Note(lines, "slash-lines", $"a line with / is {(options.LeavesOutSlashLines ? "left out" : "read as being run")}");
                if (options.LeavesOutSlashLines)
                {
                    continue;
                }
            }

            if (!block.IsEmpty && !run.Step(block))
            {
                return;
            }
        }
    }

    private static ReadOnlySpan<byte> NextLine(ref ReadOnlySpan<byte> content)
    {
        var end = content.IndexOfAny((byte)'\n', (byte)'\r');
        var line = end < 0 ? content : content[..end];
        var skip = end < 0 ? content.Length : end + (content[end] == '\r' && end + 1 < content.Length && content[end + 1] == '\n' ? 2 : 1);
        content = content[skip..];
        return line;
    }

    // True when this can be a program at all.
    private static bool IsText(ReadOnlySpan<byte> content, ProgramFindings findings)
    {
        if (content.StartsWith((ReadOnlySpan<byte>)[0xFF, 0xFE]) || content.StartsWith((ReadOnlySpan<byte>)[0xFE, 0xFF]))
        {
            return findings.Refuse(1, "program-encoding", "found text in UTF-16; expected plain ASCII.", "Save the program as plain text (ASCII).");
        }

        var zero = content.IndexOf((byte)0);
        if (zero >= 0)
        {
            return findings.Refuse(
                1 + content[..zero].Count((byte)'\n'), "program-binary", "found a zero byte; expected plain text.", "Name the posted program itself.");
        }

        return true;
    }
}
