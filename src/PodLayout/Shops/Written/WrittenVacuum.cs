using System.Collections.Immutable;
using System.ComponentModel;
using PodLayout.JsonFiles;

namespace PodLayout.Shops.Written;

/// <summary>The shop's vacuum as written.</summary>
[InchesToo]
internal sealed record WrittenVacuum
{
    [Description("What the gauge at the board reads while a part is held, kPa below the air's pressure; instead of gaugeInHg or pump.")]
    [Bounds(From = 0.001, To = 110)]
    public double? GaugeKPa { get; init; }

    [Description("The same in inches of mercury.")]
    [Bounds(From = 0.001, To = 33)]
    public double? GaugeInHg { get; init; }

    [Description("With a gauge reading: flow of the pump at its inlet, m3/h, for what is left once a seal is lost; 100 when not given.")]
    [Bounds(From = 0.001, To = 100_000)]
    public double? BehindGaugeM3PerHour { get; init; }

    [Description("The pump, instead of a gauge reading.")]
    public WrittenPump? Pump { get; init; }

    [Description("Height of the shop above sea level, m; 0 when neither this nor barometerKPa is given.")]
    [Bounds(From = -430, To = 5500)]
    public double? AltitudeM { get; init; }

    [Description("Air pressure in the shop as an instrument reads it there, not reduced to sea level, kPa; instead of altitudeM.")]
    [Bounds(From = 50, To = 110)]
    public double? BarometerKPa { get; init; }

    [Description("Diameter of a port's hole where it is narrowest, mm; the drill of making.portBore, or else the port's own diameter, when not given.")]
    [Bounds(From = 0.01, To = 1000)]
    public double? PortBoreMm { get; init; }

    [Description("Share of the frictionless flow that a port lets through; 0.8 when not given.")]
    [Bounds(From = 0.1, To = 1)]
    public double HoleCoefficient { get; init; } = VacuumSupply.AssumedHoleCoefficient;

    [Description("The back channels, where making does not describe them or they differ from it.")]
    public WrittenAirChannels? Channels { get; init; }

    [Description("Air that leaks past a metre of upper seal on a planed underside at 80 kPa, litres of free air a minute; 1 when not given.")]
    [Bounds(From = 0, To = 10_000)]
    public double SealLeakLPerMinPerM { get; init; } = PodLeak.PlanedLPerMinPerM;

    [Description("The same on a rough underside; 8 when not given.")]
    [Bounds(From = 0, To = 10_000)]
    public double RoughSealLeakLPerMinPerM { get; init; } = PodLeak.RoughLPerMinPerM;
}

/// <summary>A pump as written.</summary>
internal sealed record WrittenPump
{
    [Description("The most vacuum it reaches at sea level, with nothing flowing, kPa; or ultimateInHg, or the last point of flow.")]
    [Bounds(From = 0.001, To = 110)]
    public double? UltimateKPa { get; init; }

    [Description("The same in inches of mercury.")]
    [Bounds(From = 0.001, To = 33)]
    public double? UltimateInHg { get; init; }

    [Description("What it moves at its inlet, m3/h; or nominalCfm, or flow.")]
    [Bounds(From = 0.001, To = 100_000)]
    public double? NominalM3PerHour { get; init; }

    [Description("The same in cubic feet a minute.")]
    [Bounds(From = 0.001, To = 100_000)]
    public double? NominalCfm { get; init; }

    [Description("Its curve at sea level as the maker gives it, the vacuum rising and the flow falling from point to point; instead of a nominal flow.")]
    [ListOf<WrittenFlowPoint>]
    public ImmutableArray<WrittenFlowPoint> Flow { get; init; } = [];

    [Description("How the flows of the curve are meant: freeAir (as it leaves the pump) or atInlet (thinned); freeAir when not given.")]
    public WrittenFlowKind FlowIs { get; init; }
}

/// <summary>A point of a pump's curve as written.</summary>
internal sealed record WrittenFlowPoint
{
    [Description("Vacuum, kPa; or vacuumInHg.")]
    [Bounds(From = 0, To = 110)]
    public double? VacuumKPa { get; init; }

    [Description("Vacuum, inches of mercury.")]
    [Bounds(From = 0, To = 33)]
    public double? VacuumInHg { get; init; }

    [Description("Flow there, m3/h; or flowCfm.")]
    [Bounds(From = 0, To = 100_000)]
    public double? FlowM3PerHour { get; init; }

    [Description("Flow there, cubic feet a minute.")]
    [Bounds(From = 0, To = 100_000)]
    public double? FlowCfm { get; init; }
}

/// <summary>How a flow is meant, as written.</summary>
internal enum WrittenFlowKind
{
    FreeAir,
    AtInlet,
}

/// <summary>The back channels as ways for air, as written.</summary>
[InchesToo]
internal sealed record WrittenAirChannels
{
    [Description("Width of a channel, mm.")]
    [Bounds(From = 0.01, To = 1000)]
    public required double WidthMm { get; init; }

    [Description("Depth of a channel, mm.")]
    [Bounds(From = 0.01, To = 1000)]
    public required double DepthMm { get; init; }

    [Description("Length of the way from any port to the table's vacuum, mm; from the port to the middle of the zone (or of the board) when not given.")]
    [Bounds(From = 0.01, To = 100_000)]
    public double? LengthMm { get; init; }

    [Description("Which ports share a channel: rows, columns, combOfRows or combOfColumns (all of a zone); rows when not given.")]
    public ChannelWish Layout { get; init; }
}
