namespace PodLayout.Jobs;

/// <summary>An operation as the job states it.</summary>
/// <param name="Kind">What is done.</param>
/// <param name="Lines">Along which lines.</param>
/// <param name="Path">Its place in the job, for messages.</param>
public sealed record CutOperation(CutKind Kind, CutLines Lines, string Path)
{
    /// <summary>What the shop calls it; null for a name made of its kind.</summary>
    public string? Name { get; init; }

    /// <summary>On which side of the line the tool runs.</summary>
    public CutSide Side { get; init; } = CutSide.On;

    /// <summary>Diameter of the tool, mm; 0 when it does not matter.</summary>
    public double ToolDiameterMm { get; init; }

    /// <summary>Diameter of a drilled hole, mm; null for the ring as drawn.</summary>
    public double? DiameterMm { get; init; }

    /// <summary>Height of the lowest tip above the underside, mm: negative below it, positive where a skin or floor is left.</summary>
    public double LowestTipMm { get; init; }

    /// <summary>How far a tool reaches under the part from its edge, mm.</summary>
    public double ReachMm { get; init; }

    /// <summary>Depth of a groove or pocket in the underside, mm; null where it is not stated.</summary>
    public double? DepthMm { get; init; }

    /// <summary>What is said of its cutter; null for nothing.</summary>
    public CutterSetup? Cutter { get; init; }

    /// <summary>How many holding tabs are said to be left.</summary>
    public int Tabs { get; init; }
}
