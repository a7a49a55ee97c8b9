using System.CommandLine;
using PodLayout.Findings;
using PodLayout.Handover.Picture;
using PodLayout.Handover.Setup;

namespace PodLayout.Cli;

/// <summary>The options of the setup card, the same for <c>card</c> and for <c>plan --card</c>.</summary>
internal sealed class CardOptionsGiven
{
    private readonly Option<string?> date = new("--date") { HelpName = "TEXT", Description = "Date on the card, as you write dates; a line to write on when not given." };
    private readonly Option<string?> revision = new("--revision") { HelpName = "TEXT", Description = "Revision on the card; a line to write on when not given." };
    private readonly Option<string?> face = new("--face") { HelpName = "up|down", Description = "Whether the part lies face side up or down." };
    private readonly Option<string?> paper = new("--paper") { HelpName = "a4|letter", Description = "Paper of card.pdf and of the page's print; A4 when not given." };
    private readonly Option<string?> lengths = new("--lengths") { HelpName = "mm|in", Description = "Unit of the card; when not given, inches for a shop whose file gives the board's width in inches, else mm." };

    // It stands at the head of every page.
    private const int LongestText = 400;

    public IEnumerable<Option> All => [date, revision, face, paper, lengths];

    /// <summary>What was given; a refusal when a word is not known.</summary>
    public Outcome<CardOptions> Read(ParseResult parsed)
    {
        var refusal = new[] { date, revision }.Where(o => parsed.GetValue(o)?.Length > LongestText)
            .Select(o => PlanOptions.Bad(o, parsed.GetValue(o)![..20] + "...", FormattableString.Invariant($"at most {LongestText} characters"))).FirstOrDefault();
        CardOptions options = new()
        {
            Date = parsed.GetValue(date) ?? "",
            Revision = parsed.GetValue(revision) ?? "",
            Face = Word(face, PartFace.NotSaid, ("up", PartFace.Up), ("down", PartFace.Down)),
            Paper = Word(paper, PaperSize.A4, ("a4", PaperSize.A4), ("letter", PaperSize.Letter)),
            InInches = Word<bool?>(lengths, null, ("mm", false), ("in", true)),
        };
        return refusal is null ? Outcome<CardOptions>.Of(options) : Outcome<CardOptions>.Refuse(refusal);

        T Word<T>(Option<string?> option, T otherwise, params ReadOnlySpan<(string Word, T Value)> words)
        {
            if (parsed.GetValue(option) is not { } given)
            {
                return otherwise;
            }

            List<string> known = [];
            foreach (var (word, value) in words)
            {
                if (string.Equals(word, given, StringComparison.OrdinalIgnoreCase))
                {
                    return value;
                }

                known.Add(word);
            }

            refusal ??= PlanOptions.Bad(option, given, string.Join(" or ", known));
            return otherwise;
        }
    }
}
