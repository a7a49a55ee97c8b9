using System.Collections.Immutable;
using System.Text;
using PodLayout.Handover.Picture;
using PodLayout.Layouts;

namespace PodLayout.Handover.Setup;

/// <summary>The setup card in all its forms, by file name.</summary>
public static class CardFiles
{
    private static readonly UTF8Encoding Utf8 = new(encoderShouldEmitUTF8Identifier: false);

    /// <summary>The files' names and bytes. The same plan and options give the same bytes.</summary>
    /// <param name="planned">A plan with a layout.</param>
    /// <param name="options">What the caller adds.</param>
    /// <param name="doubts">What speaks against the layout; it stands at the head of the card.</param>
    public static ImmutableArray<(string Name, byte[] Content)> Of(PlanResult planned, CardOptions options, LayoutDoubts doubts)
    {
        // As it is filed: the card is the same whether it is made with the plan or from its file.
        var file = LayoutFiling.File(planned);
        var result = LayoutUnfiling.Plan(file) with { Mark = file.Mark };
        var card = SetupCard.Of(result, options, doubts);
        var inInches = CardUnit.Of(result, options).InInches;
        var pages = CardPages.Of(result, card, options);
        return
        [
            ("card.html", Utf8.GetBytes(CardHtml.Write(result, card, options, pages.ForBrowser(result, card, options)))),
            ("card.pdf", PdfWriter.Write("Setup card: " + card.Title, pages.InOrder, LayoutMark.Sentence(LayoutMark.Of(result)))),
            ("layout.dxf", Utf8.GetBytes(LayoutDxf.Write(result))),
            ("pods.csv", Utf8.GetBytes(PodsCsv.Write(result, inInches, doubts.Faults))),
            ("ports.csv", Utf8.GetBytes(PortsCsv.Write(result, inInches))),
        ];
    }
}
