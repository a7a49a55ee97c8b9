using PodLayout.Geometry;

namespace PodLayout.BoardMaking;

/// <summary>A pin of the table that a piece of the board is located by.</summary>
/// <param name="Name">What the shop calls it.</param>
/// <param name="At">Its centre, board coordinates, mm.</param>
/// <param name="DiameterMm">Its diameter.</param>
/// <param name="FitMm">How much wider its hole is.</param>
public sealed record LocatorPin(string Name, Point2 At, double DiameterMm, double FitMm)
{
    /// <summary>Diameter of its hole, mm.</summary>
    public double HoleDiameterMm => DiameterMm + FitMm;
}
