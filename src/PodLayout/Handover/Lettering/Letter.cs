namespace PodLayout.Handover.Lettering;

/// <summary>A character as it is set.</summary>
/// <param name="Meant">The character of the text.</param>
/// <param name="Shown">The character whose glyph is drawn: a joined form, or the other one of a pair of brackets.</param>
internal readonly record struct Letter(int Meant, int Shown);
