using System.Collections.Immutable;

namespace PodLayout.Handover.Format;

/// <summary>The grid board. Its datum is the lower left corner, X to the right, Y up.</summary>
/// <param name="Name">What the shop calls it.</param>
/// <param name="WidthMm">Along X.</param>
/// <param name="LengthMm">Along Y.</param>
/// <param name="PitchMm">From groove to groove.</param>
/// <param name="GrooveWidthMm">Width of a groove.</param>
/// <param name="GrooveDepthMm">Depth of a groove.</param>
/// <param name="FirstGrooveMm">Where column 1 and row 1 cross.</param>
/// <param name="UsableArea">Pods' bodies stay inside it.</param>
/// <param name="PortDiameterMm">Diameter of a port's hole.</param>
/// <param name="PortMarginMm">A port's hole lies at least this far inside the lower seal.</param>
/// <param name="Ports">All ports.</param>
/// <param name="Obstacles">Pins, stops, damaged spots.</param>
public sealed record BoardEntry(
    string Name,
    double WidthMm,
    double LengthMm,
    double PitchMm,
    double GrooveWidthMm,
    double GrooveDepthMm,
    XyMm FirstGrooveMm,
    BoxEntry UsableArea,
    double PortDiameterMm,
    double PortMarginMm,
    ImmutableArray<PortEntry> Ports,
    ImmutableArray<ObstacleEntry> Obstacles);
