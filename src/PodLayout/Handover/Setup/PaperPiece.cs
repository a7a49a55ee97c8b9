namespace PodLayout.Handover.Setup;

/// <summary>What no page parts: a line of a paragraph, a row of a table, a heading.</summary>
/// <param name="HeightMm">Its height.</param>
/// <param name="Draw">Draws it, its upper edge where the draft stands. The draft is moved on by whoever fills the pages.</param>
internal sealed record PaperPiece(double HeightMm, Action<PaperDraft> Draw);
