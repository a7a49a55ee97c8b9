using System.Collections.Immutable;

namespace PodLayout.BoardMaking;

/// <summary>What the figures do not say; it stands in every output that a person cuts from.</summary>
internal static class BoardCautions
{
    public const string Short =
        "Try the pin holes in scrap first. The machine's manual, local codes and the judgement of licensed practice come before this drawing.";

    public static ImmutableArray<string> All { get; } =
    [
        "The figures follow from the shop file; measure the stock, the table and the tools before cutting. A drawing is no proof that a cut is clear of clamps, screws and the table.",
        "The flow through an open port is an assumption, and the loss in the channels is that of slow flow in smooth channels, each fed at one place over the table's grooves: it says which channels are too narrow, not whether a part is held. A fuller model of the vacuum is not part of this sheet.",
        "A through-cut frees the piece: hold it down until the tool has stopped.",
        "The machine's manual, local codes and the judgement of licensed practice come before this sheet.",
    ];
}
