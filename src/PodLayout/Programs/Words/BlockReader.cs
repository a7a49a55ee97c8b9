using System.Buffers.Text;
using System.Globalization;
using System.Text;

namespace PodLayout.Programs.Words;

/// <summary>From the bytes of one line to its words (NISTIR 6556, section 3.3: case and spaces do not matter).</summary>
internal static class BlockReader
{
    /// <summary>The longest line that RS274/NGC allows, characters (section 3.3); comments, which posts make longer, do not count here.</summary>
    private const int LongestLine = 256;

    /// <summary>Larger numbers are damage, whatever the letter.</summary>
    private const double LargestNumber = 1e10;

    private const string Read = "DFGHIJKLMNPQRSTXYZ";

    /// <summary>Reads a line; false after a refusal.</summary>
    public static bool Into(Block block, ReadOnlySpan<byte> line, int number, ProgramFindings findings)
    {
        block.Clear(number);
        var (at, comments) = (0, 0);
        while (at < line.Length && at - comments <= LongestLine)
        {
            var c = line[at];
            if (c is (byte)' ' or (byte)'\t' or (byte)'\r')
            {
                at++;
            }
            else if (c == (byte)';')
            {
                return true;
            }
            else if (c == (byte)'(')
            {
                var from = at;
                if (!SkipComment(line, ref at, number, findings))
                {
                    return false;
                }

                comments += at - from;
            }
            else if (!ReadWord(block, line, ref at, findings))
            {
                return false;
            }
        }

        return at - comments <= LongestLine || findings.Refuse(
            number, "line-too-long", Text($"found a line of more than {LongestLine} characters beside its comments."), "Break it into shorter lines, or check that this is a program.");
    }

    private static bool SkipComment(ReadOnlySpan<byte> line, ref int at, int number, ProgramFindings findings)
    {
        var inside = line[(at + 1)..];
        var end = inside.IndexOf((byte)')');
        var nested = inside.IndexOf((byte)'(');
        if (end < 0)
        {
            return findings.Refuse(number, "comment-open", "found a comment ( that does not end; expected ) on the same line.", "Close the comment.");
        }

        if (nested >= 0 && nested < end)
        {
            return findings.Refuse(number, "comment-nested", "found a comment ( within a comment; how much of the line is meant is unclear.", "Take the inner ( out.");
        }

        at += end + 2;
        return true;
    }

    private static bool ReadWord(Block block, ReadOnlySpan<byte> line, ref int at, ProgramFindings findings)
    {
        var c = (char)line[at];
        var letter = char.ToUpperInvariant(c);
        if (c == '/')
        {
            return ReadSlash(block, line, ref at, findings);
        }

        if (c is '#' or '[' or '=' or ']' || letter is 'O' or ':')
        {
            return ReadOther(block, line, ref at, findings);
        }

        if (!char.IsAsciiLetter(letter))
        {
            var shown = c is > ' ' and < (char)127 ? $"\"{c}\"" : Text($"byte {(int)c}");
            return findings.Refuse(block.Line, "character-unexpected", $"found {shown} where a word such as X10.5 was expected.", "Mend the line, or check that this is a program.");
        }

        at++;
        var from = at;
        if (!ReadNumber(line, ref at, out var value))
        {
            if (at < line.Length && (line[at] == (byte)'#' || line[at] == (byte)'['))
            {
                return ReadOther(block, line, ref at, findings);
            }

            var found = Shown(line[from..at]);
            return findings.Refuse(
                block.Line, "number-missing", $"found {letter} {(found.Length == 0 ? "without a number" : $"with \"{found}\"")}; expected a number after it.", "Mend the word.");
        }

        var text = line[from..at];

        if (!Read.Contains(letter, StringComparison.Ordinal))
        {
            return findings.Refuse(
                block.Line, "word-not-read", $"found the word {letter}{Shown(text)}, which may move the tool and is not read.", "Post the program for a machine with the axes X, Y and Z only.");
        }

        return Take(block, letter, value, text, findings);
    }

    private static bool Take(Block block, char letter, double value, ReadOnlySpan<byte> text, ProgramFindings findings)
    {
        if (letter == 'G')
        {
            var tenths = value * 10;
            var whole = Math.Round(tenths);
            return Math.Abs(tenths - whole) <= 1e-6 && whole is >= 0 and < 10000
                ? TakeG(block, (int)whole, findings)
                : findings.Refuse(block.Line, "word-not-read", $"found G{Shown(text)}, which is not read.", "Post the program without it.");
        }

        if (letter == 'M')
        {
            return value == Math.Floor(value) && value is >= 0 and < 1e6
                ? TakeM(block, (int)value, findings)
                : findings.Refuse(block.Line, "word-not-read", $"found M{Shown(text)}; expected a whole number.", "Mend the word.");
        }

        if (letter is 'N' or 'T' or 'L' or 'D' or 'H' && !(value >= 0 && value == Math.Floor(value) && value <= int.MaxValue))
        {
            return findings.Refuse(block.Line, "number-not-whole", $"found {letter}{Shown(text)}; expected a whole number from 0.", "Mend the word.");
        }

        return block.Put(letter, value)
            || findings.Refuse(block.Line, "word-twice", $"found the word {letter} twice on this line.", "Keep one of them.");
    }

    private static bool TakeG(Block block, int tenths, ProgramFindings findings)
    {
        var name = CodeGroups.NameOfG(tenths);
        if (CodeGroups.OfG(tenths) is not { } group)
        {
            return findings.Refuse(
                block.Line, "word-not-read", $"found {name}, which may change where the tool goes and is not read.", "Post the program with G0 to G3 and drilling cycles only.");
        }

        foreach (var other in block.G)
        {
            if (CodeGroups.OfG(other) == group)
            {
                if (group == CodeGroups.Motion && CodeGroups.EndsCycle(other, tenths) is { } stays)
                {
                    findings.Note(block.Line, "cycle-ended-twice", $"{CodeGroups.NameOfG(other)} and {name} on one line: the cycle ends and {CodeGroups.NameOfG(stays)} is in force");
                    block.G[block.G.IndexOf(other)] = stays;
                    return true;
                }

                if (other == tenths)
                {
                    return true;
                }

                return findings.Refuse(
                    block.Line, "modal-group-twice", $"found {CodeGroups.NameOfG(other)} and {name} on one line; they belong to one modal group.", "Keep one of them.");
            }
        }

        block.G.Add(tenths);
        return true;
    }

    private static bool TakeM(Block block, int number, ProgramFindings findings)
    {
        var name = Text($"M{number}");
        if (CodeGroups.CallsOtherLines(number))
        {
            return findings.Refuse(
                block.Line, "word-not-read", $"found {name}, which calls or repeats other lines and is not read.", "Post the program in one piece, without subprograms.");
        }

        var group = CodeGroups.OfM(number);
        if (group is null)
        {
            findings.Warn(block.Line, "word-left-out", $"{name} is not read; it is taken as moving nothing.", "Check in the machine's manual that it does not.");
            return true;
        }

        if (block.M.Exists(m => CodeGroups.OfM(m) == group))
        {
            // Two coolant words do not matter to the path, whatever they come to.
            return group == 8 || findings.Refuse(
                block.Line, "modal-group-twice", $"found two M words of one modal group on one line, {name} the second.", "Keep one of them.");
        }

        block.M.Add(number);
        return true;
    }

    private static bool ReadSlash(Block block, ReadOnlySpan<byte> line, ref int at, ProgramFindings findings)
    {
        if (block.HasSlash || !block.IsEmpty)
        {
            return findings.Refuse(block.Line, "slash-misplaced", "found / within the line; expected it only at its beginning.", "Mend the line.");
        }

        block.HasSlash = true;
        at++;
        // Some controls number their switches: /2.
        while (at < line.Length && char.IsAsciiDigit((char)line[at]))
        {
            at++;
        }

        return true;
    }

    private static bool ReadOther(Block block, ReadOnlySpan<byte> line, ref int at, ProgramFindings findings)
    {
        var c = char.ToUpperInvariant((char)line[at]);
        if (c is not ('O' or ':'))
        {
            return findings.Refuse(
                block.Line, "macro", $"found \"{c}\": variables and expressions are not read, and they decide where the tool goes.", "Post the program with plain numbers.");
        }

        at++;
        var from = at;
        if (!ReadNumber(line, ref at, out _) || !block.IsEmpty || HasMore(line[at..]))
        {
            return findings.Refuse(
                block.Line, "o-word", $"found the word {c}{Shown(line[from..at])} with more on its line; calls and branches are not read.", "Post the program in one piece, without subprograms.");
        }

        block.HasProgramNumber = true;
        return true;
    }

    private static bool HasMore(ReadOnlySpan<byte> rest)
    {
        var plain = rest.TrimStart(" \t\r"u8);
        return plain.Length > 0 && plain[0] is not ((byte)'(' or (byte)';');
    }

    // Digits with at most one point; spaces may stand anywhere.
    private static bool ReadNumber(ReadOnlySpan<byte> line, ref int at, out double value)
    {
        Span<byte> digits = stackalloc byte[64];
        var length = 0;
        for (; at < line.Length && length < digits.Length; at++)
        {
            var c = line[at];
            if (c is (byte)' ' or (byte)'\t')
            {
                continue;
            }

            if (!char.IsAsciiDigit((char)c) && c != (byte)'.' && !(length == 0 && c is (byte)'+' or (byte)'-'))
            {
                break;
            }

            digits[length++] = c;
        }

        ReadOnlySpan<byte> number = digits[..length];
        number = number.TrimStart((byte)'+');
        return Utf8Parser.TryParse(number, out value, out var used) && used == number.Length
            && number.IndexOfAnyInRange((byte)'0', (byte)'9') >= 0 && Math.Abs(value) <= LargestNumber;
    }

    private static string Shown(ReadOnlySpan<byte> text) =>
        string.Concat(Encoding.ASCII.GetString(text).Where(c => c is > ' ' and < (char)127).Take(20));

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
