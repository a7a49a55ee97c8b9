using System.Collections.Immutable;
using PodLayout.Geometry;

namespace PodLayout.Holding;

/// <summary>A pod under the part, in the drawing's axes about the part's middle.</summary>
/// <param name="Grip">How it bears and holds.</param>
/// <param name="Centre">Its middle, mm.</param>
/// <param name="Turn">How its own axes are turned there.</param>
/// <param name="VacuumKPa">Gauge vacuum at it, kPa; 0 where there is none.</param>
public sealed record HeldPod(PodGrip Grip, Point2 Centre, Turn Turn, double VacuumKPa)
{
    /// <summary>Force with which the vacuum pulls the part down, N.</summary>
    public double PullN => VacuumKPa * 1e-3 * Grip.AreaMm2;

    /// <summary>The spots where it bears the part.</summary>
    public ImmutableArray<Contact> Contacts =>
    [
        .. Grip.Spots.Select(s =>
        {
            Point2 at = Centre + Turn.Apply(new(s.X, s.Y)), rubs = Centre + Turn.Apply(new(s.FrictionX, s.FrictionY));
            return Contact.Below(at.X, at.Y, rubs.X, rubs.Y, Grip.Friction);
        }),
    ];

    /// <summary>Where it bears the part, mm.</summary>
    public IEnumerable<Point2> Spots => Grip.Spots.Select(s => Centre + Turn.Apply(new(s.X, s.Y)));

    /// <summary>What the vacuum does to the part.</summary>
    public Wrench Pull => Wrench.Of(new(0, 0, -PullN), Centre.X, Centre.Y, 0);
}
