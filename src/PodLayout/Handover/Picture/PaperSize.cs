namespace PodLayout.Handover.Picture;

/// <summary>A size of paper, upright.</summary>
/// <param name="Name">What it is called.</param>
/// <param name="WidthMm">The short side.</param>
/// <param name="HeightMm">The long side.</param>
public sealed record PaperSize(string Name, double WidthMm, double HeightMm)
{
    /// <summary>ISO 216.</summary>
    public static PaperSize A4 { get; } = new("A4", 210, 297);

    /// <summary>ANSI/ASME Y14.1 size A: 8.5 x 11 in.</summary>
    public static PaperSize Letter { get; } = new("Letter", 215.9, 279.4);
}
