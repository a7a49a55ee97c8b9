using System.Collections.Immutable;
using PodLayout.Geometry;

namespace PodLayout.Shops;

/// <summary>
/// The grid board: a flat fixture board with crossed grooves and vacuum ports. The datum is its lower left corner, X to the
/// right, Y up (away from the operator), millimetres.
/// </summary>
/// <param name="Name">What the shop calls it.</param>
/// <param name="WidthMm">Along X.</param>
/// <param name="LengthMm">Along Y.</param>
/// <param name="PitchMm">From groove to groove, both ways.</param>
/// <param name="GrooveWidthMm">Width of a groove.</param>
/// <param name="GrooveDepthMm">Depth of a groove.</param>
/// <param name="FirstGroove">Where the first grooves cross: 0 &lt;= X, Y &lt; pitch.</param>
/// <param name="UsableArea">Pods' bodies stay inside it.</param>
/// <param name="Ports">All ports, in order of row, then column.</param>
/// <param name="PortDiameterMm">Diameter of a port's hole.</param>
/// <param name="PortMarginMm">A port's hole must lie at least this far inside the lower seal.</param>
/// <param name="Obstacles">Pins, stops, damaged spots.</param>
public sealed record GridBoard(
    string Name,
    double WidthMm,
    double LengthMm,
    double PitchMm,
    double GrooveWidthMm,
    double GrooveDepthMm,
    Point2 FirstGroove,
    Box2 UsableArea,
    ImmutableArray<Port> Ports,
    double PortDiameterMm,
    double PortMarginMm,
    ImmutableArray<Obstacle> Obstacles)
{
    /// <summary>X of the groove with this index (0 is the first), mm.</summary>
    public double ColumnXMm(int column) => FirstGroove.X + column * PitchMm;

    /// <summary>Y of the groove with this index (0 is the first), mm.</summary>
    public double RowYMm(int row) => FirstGroove.Y + row * PitchMm;
}
