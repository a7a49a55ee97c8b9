using System.Globalization;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Content;

namespace PodLayout.Tests.Handover.Setup;

/// <summary>
/// A reader of card.pdf that knows nothing of the program: letters as PdfPig finds them, put into lines by their height on the page
/// and into cells by the gaps between them.
/// </summary>
internal static class PaperText
{
    /// <summary>The lines of all pages from the top down, each as its cells.</summary>
    public static List<List<string>> Lines(byte[] file)
    {
        using var document = PdfDocument.Open(file);
        return [.. document.GetPages().SelectMany(Lines)];
    }

    public static string All(byte[] file)
    {
        using var document = PdfDocument.Open(file);
        return string.Concat(document.GetPages().SelectMany(p => p.Letters).Select(l => l.Value));
    }

    public static int Pages(byte[] file)
    {
        using var document = PdfDocument.Open(file);
        return document.NumberOfPages;
    }

    private static IEnumerable<List<string>> Lines(Page page) => page.Letters
        .GroupBy(l => Math.Round(l.StartBaseLine.Y, 1)).OrderByDescending(g => g.Key)
        .Select(line => Cells([.. line.OrderBy(l => l.StartBaseLine.X)]));

    private static List<string> Cells(List<Letter> letters)
    {
        List<string> cells = [];
        for (var i = 0; i < letters.Count; i++)
        {
            var isNew = i == 0 || letters[i].StartBaseLine.X - letters[i - 1].EndBaseLine.X > 4;
            if (isNew)
            {
                cells.Add("");
            }

            cells[^1] += letters[i].Value;
        }

        return [.. cells.Select(c => c.Trim()).Where(c => c.Length > 0)];
    }

    public static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
