using PodLayout.Handover.Lettering;

namespace PodLayout.Handover.Picture;

/// <summary>
/// Sheets as the pages of a PDF file (ISO 32000-1): vector, in black, white and grey, with its type built in. It holds no date and
/// nothing of the machine that made it: the same sheets give the same bytes.
/// </summary>
public static class PdfWriter
{
    /// <summary>The file's bytes.</summary>
    /// <param name="title">The document's title.</param>
    /// <param name="pages">Its pages in order.</param>
    /// <param name="mark">What it bears where only programs look: letters, digits, blanks and signs of ASCII but brackets.</param>
    public static byte[] Write(string title, IEnumerable<Sheet> pages, string mark)
    {
        PdfObjects file = new();
        PdfFont regular = new("F1", TypeFace.Of(isBold: false)), bold = new("F2", TypeFace.Of(isBold: true));
        int catalogue = file.Reserve(), tree = file.Reserve(), resources = file.Reserve();
        List<int> numbers = [];
        foreach (var sheet in pages)
        {
            PdfPage page = new(sheet, regular, bold);
            var content = file.PutStream(page.Content());
            numbers.Add(file.Put(PdfObjects.Text(
                $"<< /Type /Page /Parent {tree} 0 R /MediaBox [0 0 {page.WidthPt:0.###} {page.HeightPt:0.###}] /Resources {resources} 0 R /Contents {content} 0 R >>")));
        }

        var fonts = new[] { regular, bold }.Where(f => f.IsUsed).Select(f => PdfObjects.Text($"/{f.Resource} {f.Put(file)} 0 R"));
        file.Put(resources, $"<< /Font << {string.Join(' ', fonts)} >> >>");
        file.Put(tree, PdfObjects.Text($"<< /Type /Pages /Count {numbers.Count} /Kids [{string.Join(' ', numbers.Select(n => PdfObjects.Text($"{n} 0 R")))}] >>"));
        file.Put(catalogue, PdfObjects.Text($"<< /Type /Catalog /Pages {tree} 0 R /Lang (en) /ViewerPreferences << /DisplayDocTitle true >> >>"));
        return file.File(catalogue, file.Put($"<< /Title {PdfObjects.TextString(title)} /Subject ({mark}) /Producer (PodLayout) >>"));
    }
}
