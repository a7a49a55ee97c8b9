using System.Collections.Immutable;

namespace PodLayout.Handover.Lettering;

/// <summary>
/// Arabic letters in the forms that join them to their neighbours, from Unicode's block Arabic Presentation Forms-B, in which a
/// letter's forms follow each other: alone, at the end, at the beginning, in the middle.
/// </summary>
internal static class ArabicForms
{
    // Letter, first of its forms, whether it joins the letter after it too (four forms) or only the one before (two).
    private static readonly ImmutableDictionary<int, (int First, bool JoinsAfter)> Forms = Table();

    public static List<Letter> Joined(IReadOnlyList<int> text)
    {
        List<Letter> letters = new(text.Count);
        for (var i = 0; i < text.Count; i++)
        {
            if (!Forms.TryGetValue(text[i], out var form))
            {
                letters.Add(new(text[i], text[i]));
                continue;
            }

            var before = i > 0 && Forms.TryGetValue(text[i - 1], out var left) && left.JoinsAfter;
            var after = form.JoinsAfter && i + 1 < text.Count && Forms.ContainsKey(text[i + 1]) && text[i + 1] != 0x0621;
            letters.Add(new(text[i], form.First + (before && text[i] != 0x0621 ? after ? 3 : 1 : after ? 2 : 0)));
        }

        return letters;
    }

    private static ImmutableDictionary<int, (int First, bool JoinsAfter)> Table()
    {
        var table = ImmutableDictionary.CreateBuilder<int, (int First, bool JoinsAfter)>();
        var next = 0xFE80;
        for (var letter = 0x0621; letter <= 0x064A; letter++)
        {
            // Between ghain and feh lies the lengthening stroke, which has no other forms.
            if (letter is > 0x063A and < 0x0641)
            {
                continue;
            }

            var joinsAfter = letter is not (0x0621 or 0x0622 or 0x0623 or 0x0624 or 0x0625 or 0x0627 or 0x0629
                or 0x062F or 0x0630 or 0x0631 or 0x0632 or 0x0648 or 0x0649);
            table[letter] = (next, joinsAfter);
            next += letter == 0x0621 ? 1 : joinsAfter ? 4 : 2;
        }

        return table.ToImmutable();
    }
}
