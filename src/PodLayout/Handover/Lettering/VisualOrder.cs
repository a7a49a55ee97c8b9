using System.Globalization;
using System.Text;

namespace PodLayout.Handover.Lettering;

/// <summary>
/// A line of text in the order in which its characters stand from left to right. For text without right-to-left letters that
/// is the text itself; for others the main rules of the Unicode Bidirectional Algorithm (Unicode Standard Annex 9) are followed:
/// direction of the line by its first letter, neutrals between letters of one direction, numbers within. Explicit embeddings are
/// dropped, so that no text can turn what stands after it.
/// </summary>
internal static class VisualOrder
{
    private enum Direction
    {
        Left,
        Right,
        Number,
        Neutral,
    }

    public static IReadOnlyList<Letter> Of(string text)
    {
        List<int> plain = [.. text.EnumerateRunes().Where(IsShown).Select(r => Rune.IsControl(r) || Rune.IsWhiteSpace(r) ? ' ' : r.Value)];
        if (!plain.Exists(IsRightToLeft))
        {
            return [.. plain.Select(c => new Letter(c, c))];
        }

        var letters = ArabicForms.Joined(plain);
        var levels = Levels([.. letters.Select(l => DirectionOf(l.Meant))]);
        for (var i = 0; i < letters.Count; i++)
        {
            if (levels[i] % 2 == 1 && Mirrored(letters[i].Meant) is { } other)
            {
                letters[i] = letters[i] with { Shown = other };
            }
        }

        var order = Enumerable.Range(0, letters.Count).ToArray();
        for (var level = levels.Max(); level > 0; level--)
        {
            for (var from = 0; from < order.Length; from++)
            {
                var to = from;
                while (to < order.Length && levels[order[to]] >= level)
                {
                    to++;
                }

                Array.Reverse(order, from, to - from);
                from = Math.Max(from, to);
            }
        }

        return [.. order.Select(i => letters[i])];
    }

    /// <summary>Whether a line holds letters that run from right to left.</summary>
    public static bool IsTurned(string text) => text.EnumerateRunes().Any(r => IsRightToLeft(r.Value));

    private static int[] Levels(Direction[] directions)
    {
        var isRight = directions.FirstOrDefault(d => d is Direction.Left or Direction.Right) == Direction.Right;
        var levels = new int[directions.Length];
        var last = isRight ? Direction.Right : Direction.Left;

        // Numbers run from left to right, but stand as a whole in the direction of the letters before them.
        var sides = new Direction[directions.Length];
        for (var i = 0; i < directions.Length; i++)
        {
            last = directions[i] is Direction.Left or Direction.Right ? directions[i] : last;
            sides[i] = directions[i] == Direction.Number ? last : directions[i];
            levels[i] = directions[i] switch
            {
                Direction.Right => 1,
                Direction.Number when last == Direction.Right => 2,
                _ => isRight ? 2 : 0,
            };
        }

        var own = isRight ? Direction.Right : Direction.Left;
        for (var i = 0; i < sides.Length; i++)
        {
            if (directions[i] == Direction.Neutral)
            {
                var before = Array.FindLast(sides[..i], s => s != Direction.Neutral);
                var after = Array.Find(sides[i..], s => s != Direction.Neutral);
                var hasBoth = sides[..i].Any(s => s != Direction.Neutral) && sides[i..].Any(s => s != Direction.Neutral);
                var side = hasBoth && before == after ? before : own;
                levels[i] = side == Direction.Right ? 1 : isRight ? 2 : 0;
            }
        }

        return levels;
    }

    private static Direction DirectionOf(int c) =>
        IsRightToLeft(c) ? Direction.Right
        : CharUnicodeInfo.GetUnicodeCategory(c) switch
        {
            UnicodeCategory.DecimalDigitNumber => Direction.Number,
            UnicodeCategory.UppercaseLetter or UnicodeCategory.LowercaseLetter or UnicodeCategory.TitlecaseLetter
                or UnicodeCategory.ModifierLetter or UnicodeCategory.OtherLetter or UnicodeCategory.LetterNumber => Direction.Left,
            _ => Direction.Neutral,
        };

    private static bool IsRightToLeft(int c) => c is >= 0x0590 and <= 0x08FF or >= 0xFB1D and <= 0xFDFF or >= 0xFE70 and <= 0xFEFC
        or >= 0x10800 and <= 0x10FFF or >= 0x1E800 and <= 0x1EFFF
        && CharUnicodeInfo.GetUnicodeCategory(c) != UnicodeCategory.DecimalDigitNumber;

    // Joiners, marks of direction and selectors of variants have no glyph of their own.
    private static bool IsShown(Rune rune) => Rune.GetUnicodeCategory(rune) != UnicodeCategory.Format
        && rune.Value is not (>= 0xFE00 and <= 0xFE0F) and not (>= 0xE0100 and <= 0xE01EF);

    private static int? Mirrored(int c) => c switch
    {
        '(' => ')',
        ')' => '(',
        '[' => ']',
        ']' => '[',
        '{' => '}',
        '}' => '{',
        '<' => '>',
        '>' => '<',
        '«' => '»',
        '»' => '«',
        _ => null,
    };
}
