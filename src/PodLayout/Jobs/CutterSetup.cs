namespace PodLayout.Jobs;

/// <summary>What is said of a cutter and its cut; null where nothing is said.</summary>
/// <param name="Path">Its place in the job, for messages.</param>
public sealed record CutterSetup(string Path)
{
    /// <summary>Diameter, mm.</summary>
    public double? DiameterMm { get; init; }

    /// <summary>Number of cutting edges around it.</summary>
    public int? Flutes { get; init; }

    /// <summary>Which way its flutes push.</summary>
    public CutterHelix? Helix { get; init; }

    /// <summary>Angle of its flutes to its axis, degrees.</summary>
    public double? HelixDeg { get; init; }

    /// <summary>Spindle speed, revolutions a minute.</summary>
    public double? SpindleRpm { get; init; }

    /// <summary>Feed, mm a minute.</summary>
    public double? FeedMmPerMin { get; init; }

    /// <summary>Depth that one pass takes, mm.</summary>
    public double? PassDepthMm { get; init; }

    /// <summary>Width of wood that it takes beside the line, mm.</summary>
    public double? WidthMm { get; init; }

    /// <summary>Climb or conventional.</summary>
    public MillingDirection? Milling { get; init; }

    /// <summary>Specific cutting force, N for each mm² of chip, at the chip that is cut.</summary>
    public double? CuttingForceNPerMm2 { get; init; }

    /// <summary>Peak force along the cut, N, where it is known.</summary>
    public double? TangentialN { get; init; }

    /// <summary>Peak force across the cut, N.</summary>
    public double? NormalN { get; init; }

    /// <summary>Peak force along the tool's axis, N.</summary>
    public double? AxialN { get; init; }

    /// <summary>What this one says, and what another says where this one says nothing.</summary>
    public CutterSetup Over(CutterSetup? other) => other is null ? this : this with
    {
        DiameterMm = DiameterMm ?? other.DiameterMm,
        Flutes = Flutes ?? other.Flutes,
        Helix = Helix ?? other.Helix,
        HelixDeg = HelixDeg ?? (Helix is null || Helix == other.Helix ? other.HelixDeg : null),
        SpindleRpm = SpindleRpm ?? other.SpindleRpm,
        FeedMmPerMin = FeedMmPerMin ?? other.FeedMmPerMin,
        PassDepthMm = PassDepthMm ?? other.PassDepthMm,
        WidthMm = WidthMm ?? other.WidthMm,
        Milling = Milling ?? other.Milling,
        CuttingForceNPerMm2 = CuttingForceNPerMm2 ?? other.CuttingForceNPerMm2,
        TangentialN = TangentialN ?? other.TangentialN,
        NormalN = NormalN ?? (TangentialN is null ? other.NormalN : null),
        AxialN = AxialN ?? (TangentialN is null ? other.AxialN : null),
    };
}
