using System.Collections.Immutable;
using System.ComponentModel;
using PodLayout.Geometry;
using PodLayout.JsonFiles;

namespace PodLayout.Shops.Written;

/// <summary>The vacuum table as written.</summary>
[InchesToo]
internal sealed record WrittenTable
{
    [Description("Where the middle of the tool can go, in board coordinates.")]
    public required WrittenArea Travel { get; init; }

    [Description("The table's zones under the board, each with its own valve; at least one.")]
    [AtLeast(1)]
    [ListOf<WrittenZone>]
    public required ImmutableArray<WrittenZone> Zones { get; init; }

    [Description("The locator pins; each piece of the board needs two or more.")]
    [AtLeast(2)]
    [ListOf<WrittenLocatorPin>]
    public required ImmutableArray<WrittenLocatorPin> Pins { get; init; }
}

/// <summary>A part of the table with its own valve, as written.</summary>
[InchesToo]
internal sealed record WrittenZone
{
    [Description("What the shop calls the zone.")]
    public required string Name { get; init; }

    [Description("The zone's extent.")]
    public required WrittenArea Area { get; init; }

    [Description("The extent of the table's own vacuum grooves in this zone.")]
    public required WrittenArea VacuumExtent { get; init; }
}

/// <summary>A locator pin of the table, as written.</summary>
[InchesToo]
internal sealed record WrittenLocatorPin
{
    [Description("What the shop calls the pin.")]
    public required string Name { get; init; }

    [Description("Its centre, [x, y] in mm.")]
    public required Point2 AtMm { get; init; }

    [Description("Its diameter, mm.")]
    [Bounds(From = 0.01, To = 1000)]
    public required double DiameterMm { get; init; }

    [Description("How much wider its hole is, mm; 0.1 when not given. Negative for a press fit.")]
    [Bounds(From = -1, To = 10)]
    public double FitMm { get; init; } = 0.1;
}
