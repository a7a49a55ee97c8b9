using System.Collections.Immutable;
using System.Text.Json.Nodes;
using PodLayout.Geometry;
using PodLayout.Shops;

namespace PodLayout.BoardMaking;

/// <summary>The board that is to be made: the shop that will use it, and what it is made from and with.</summary>
/// <param name="File">Name of the shop file, for messages.</param>
/// <param name="Document">The shop file itself, from which the finished board's file is made.</param>
/// <param name="Shop">The shop: the board as planned with, and its pods.</param>
/// <param name="PortSpacing">Distances of the port lattice; null where ports are listed one by one only.</param>
/// <param name="PortFirst">The port that the lattice is counted from.</param>
/// <param name="Travel">Where the middle of the tool can go.</param>
/// <param name="Zones">The table's zones.</param>
/// <param name="Pins">The table's locator pins.</param>
/// <param name="Stock">What the board is cut from.</param>
/// <param name="Bore">How ports are bored.</param>
/// <param name="Offset">Where the port lattice lies.</param>
/// <param name="ChannelWidthMm">Width of a back channel.</param>
/// <param name="ChannelDepthMm">Its depth.</param>
/// <param name="ChannelWish">How channels are laid.</param>
/// <param name="Gasket">Gasket groove; null for none.</param>
/// <param name="SeamsXMm">Seams across X.</param>
/// <param name="SeamsYMm">Seams across Y.</param>
/// <param name="Flip">The axis a piece is turned over about.</param>
/// <param name="ChamferMm">Chamfer on the grooves, mm across; 0 for none.</param>
/// <param name="RunOutMm">How far a groove's pass runs past the edge.</param>
/// <param name="Limits">What must be left.</param>
/// <param name="FlowPerPortLPerMin">Air through one open port, litres a minute at the channel's pressure.</param>
/// <param name="OpenAtOnce">How many ports can be open at once.</param>
/// <param name="Cutting">Tools and feeds.</param>
/// <param name="Inches">Members that the file gives in inches.</param>
public sealed record BoardRequest(
    string File,
    JsonObject Document,
    Shop Shop,
    Point2? PortSpacing,
    Point2 PortFirst,
    Box2 Travel,
    ImmutableArray<Zone> Zones,
    ImmutableArray<LocatorPin> Pins,
    Stock Stock,
    PortBore Bore,
    PortOffset Offset,
    double ChannelWidthMm,
    double ChannelDepthMm,
    ChannelWish ChannelWish,
    GasketGroove? Gasket,
    ImmutableArray<double> SeamsXMm,
    ImmutableArray<double> SeamsYMm,
    FlipAxis Flip,
    double ChamferMm,
    double RunOutMm,
    MakingLimits Limits,
    double FlowPerPortLPerMin,
    int OpenAtOnce,
    Cutting Cutting,
    ImmutableHashSet<string> Inches);
