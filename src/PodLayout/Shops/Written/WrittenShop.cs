using System.Collections.Immutable;
using System.ComponentModel;
using PodLayout.JsonFiles;

namespace PodLayout.Shops.Written;

/// <summary>A shop as a person writes it in <c>shop.json</c>. The published schema is made from these types.</summary>
[Description("What a shop has to hold parts with: a grid board and vacuum pods. Board coordinates are millimetres from the board's lower left corner, X to the right, Y up. Every length xMm may be given in inches instead, as xIn.")]
[InchesToo]
internal sealed record WrittenShop
{
    [Description("Where the schema lies; for editors only.")]
    public string? Schema { get; init; }

    [Description("Version of this form: 1.")]
    public required int Version { get; init; }

    [Description("What the shop calls itself.")]
    public required string Name { get; init; }

    [Description("Free remark; not used.")]
    [LongestText(LongestTextAttribute.Remark)]
    public string? Note { get; init; }

    [Description("The grid board on the vacuum table.")]
    public required WrittenBoard Board { get; init; }

    [Description("Least distance between the bodies of two pods, mm; 0 lets them touch.")]
    [Bounds(From = 0, To = 1000)]
    public double PodGapMm { get; init; }

    [Description("How the board itself is made: table, stock, tools; only the command that draws the board reads it.")]
    public WrittenMaking? Making { get; init; }

    [Description("The vacuum: a gauge reading or a pump, the shop's altitude, leaks; 70 kPa at sea level are reckoned with when not given.")]
    public WrittenVacuum? Vacuum { get; init; }

    [Description("How firmly parts are to be held.")]
    public WrittenHolding? Holding { get; init; }

    [Description("The pod types in stock; at least one.")]
    [AtLeast(1)]
    [ListOf<WrittenPod>]
    public required ImmutableArray<WrittenPod> Pods { get; init; }
}
