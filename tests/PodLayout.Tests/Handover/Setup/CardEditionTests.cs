using System.Text.RegularExpressions;
using PodLayout.Handover.Picture;
using PodLayout.Handover.Setup;
using PodLayout.Tests.Independent;

namespace PodLayout.Tests.Handover.Setup;

/// <summary>What names a card on each of its pages: job, revision and date.</summary>
public class CardEditionTests
{
    [Fact]
    public void The_style_sheet_cannot_be_ended_by_a_name()
    {
        var page = Cards.Text(Cards.Renamed(HandMade.Ell(), "\"; } body { display: none } /* \\\n */"), "card.html");
        var style = Regex.Match(page, "<style>(.*?)</style>", RegexOptions.Singleline).Groups[1].Value;
        Assert.DoesNotContain("display: none }\\", style.Replace(".off { display: none; }", ""), StringComparison.Ordinal);

        // In the strings at head and foot of a page every character but plain letters and digits is a number of six digits.
        Assert.All(["top-left", "bottom-left"], place => Assert.Matches(@"^(?:[A-Za-z0-9]|\\[0-9a-f]{6} )+$", Running(page, place)[1..^1]));
    }

    [Fact]
    public void No_revision_or_date_ends_a_string_of_the_style_sheet()
    {
        var page = Cards.Text(HandMade.Ell(), "card.html", Cards.Options with { Revision = Cards.Hostile, Date = "\"; } @page { margin: 0 } \\" });
        Assert.All(["top-left", "bottom-left"], place => Assert.Matches(@"^(?:[A-Za-z0-9]|\\[0-9a-f]{6} )+$", Running(page, place)[1..^1]));
        Assert.DoesNotContain("margin: 0 }", Regex.Match(page, "<style>(.*?)</style>", RegexOptions.Singleline).Groups[1].Value, StringComparison.Ordinal);
    }

    // What follows on "content:" up to the next declaration; no string of ours has a semicolon in it.
    private static string Running(string page, string place) => Regex.Match(page, $"@{place} {{ content: (\"[^;]*);").Groups[1].Value;

    [Fact]
    public void Revision_and_date_have_a_line_each_and_stay_whole_at_the_head_of_a_page_whatever_the_jobs_name()
    {
        var options = Cards.Options with { Revision = "Rev. 12, after the trial", Date = "25 November 2026" };
        var plan = Cards.Renamed(HandMade.Ell(), string.Join(' ', Enumerable.Repeat("Console table with a very long name", 6)));
        var lines = PaperText.Lines(Cards.File(plan, "card.pdf", options)).Select(l => string.Concat(l).Replace(" ", "", StringComparison.Ordinal)).ToList();
        Assert.Contains("Revision:Rev.12,afterthetrial", lines);
        Assert.Contains("Date:25November2026", lines);
        Assert.True(lines.Count(l => Regex.IsMatch(l, "…\\|Revision:Rev\\.12,afterthetrial\\|Date:25November2026\\|Plan:[0-9a-f]{8}$")) >= 3, string.Join("\n", lines));

        // All three too long: each keeps a share.
        var head = CardPages.Running(SetupCard.Of(plan, options with { Revision = new('m', 300), Date = new('m', 300) }, LayoutDoubts.None), PaperSize.Letter);
        Assert.Equal(3, head.Split("   |   ").Count(p => p.EndsWith('…') && p.Length > 15));
        Assert.True(PodLayout.Handover.Lettering.TypeFace.Of(isBold: true).Width(head, PaperDraft.RunningMm) <= 215.9 - 2 * 14);
    }
}
