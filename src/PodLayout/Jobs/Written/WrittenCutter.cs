using System.ComponentModel;
using PodLayout.JsonFiles;

namespace PodLayout.Jobs.Written;

/// <summary>A cutter and its cut as written, for the forces on the part.</summary>
internal sealed record WrittenCutter
{
    [Description("Diameter of the cutter, mm; 12 when not given. Operations and program tools have a member of their own for it.")]
    [Bounds(From = 0.01, To = 1000)]
    public double? DiameterMm { get; init; }

    [Description("Cutting edges around it; 2 when not given.")]
    [Bounds(From = 1, To = 24)]
    public int? Flutes { get; init; }

    [Description("Which way its flutes push: straight, upCut (lifts the part), downCut (presses it down) or compression; both ways are reckoned with when not given.")]
    public CutterHelix? Helix { get; init; }

    [Description("Angle of the flutes to the cutter's axis, degrees; 30 when not given, unless straight.")]
    [Bounds(From = 0, To = 60)]
    public double? HelixDeg { get; init; }

    [Description("Spindle speed, revolutions a minute; 18000 when neither this nor a program says.")]
    [Bounds(From = 0.001, To = 200_000)]
    public double? SpindleRpm { get; init; }

    [Description("Feed, mm a minute; 6000 when neither this nor a program says.")]
    [Bounds(From = 0.001, To = 200_000)]
    public double? FeedMmPerMin { get; init; }

    [Description("Depth that one pass takes, mm; the cutter's diameter when not given. With a program, the most that a pass takes.")]
    [Bounds(From = 0.01, To = 1000)]
    public double? PassDepthMm { get; init; }

    [Description("Width of wood that the cutter takes, mm; its whole diameter when not given.")]
    [Bounds(From = 0.01, To = 1000)]
    public double? WidthMm { get; init; }

    [Description("climb or conventional; both are reckoned with when not given.")]
    public MillingDirection? Milling { get; init; }

    [Description("Specific cutting force, N for each mm2 of chip, as measured; from the wood's density and the grain when not given.")]
    [Bounds(From = 0.001, To = 1000)]
    public double? CuttingForceNPerMm2 { get; init; }

    [Description("Peak force along the cut, N, where it is known: instead of working it out.")]
    [Bounds(From = 0, To = 100_000)]
    public double? TangentialN { get; init; }

    [Description("With tangentialN: peak force across the cut, pushing or pulling, N; 0.6 of tangentialN when not given.")]
    [Bounds(From = 0, To = 100_000)]
    public double? NormalN { get; init; }

    [Description("With tangentialN: peak force along the cutter's axis, N; from tangentialN and the helix when not given.")]
    [Bounds(From = 0, To = 100_000)]
    public double? AxialN { get; init; }
}
