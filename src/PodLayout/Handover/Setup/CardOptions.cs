using PodLayout.Handover.Picture;

namespace PodLayout.Handover.Setup;

/// <summary>What the setup card says that no layout knows.</summary>
public sealed record CardOptions
{
    /// <summary>The card's date, in the caller's own words; empty for a line to write on.</summary>
    public string Date { get; init; } = "";

    /// <summary>Revision of the job; empty for a line to write on.</summary>
    public string Revision { get; init; } = "";

    /// <summary>Which face of the part is up.</summary>
    public PartFace Face { get; init; } = PartFace.NotSaid;

    /// <summary>The paper that is printed on.</summary>
    public PaperSize Paper { get; init; } = PaperSize.A4;

    /// <summary>Whether lengths are given in inches; null for what the shop works in.</summary>
    public bool? InInches { get; init; }
}
