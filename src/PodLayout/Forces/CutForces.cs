using System.Collections.Immutable;
using PodLayout.Geometry;

namespace PodLayout.Forces;

/// <summary>The forces that a cut may put on the wood at one place.</summary>
/// <param name="InPlane">Corners of their hull in the drawing's plane, N.</param>
/// <param name="DownN">Least force along Z, N: negative presses down.</param>
/// <param name="UpN">Greatest force along Z, N.</param>
/// <param name="PeakN">The greatest force there, N.</param>
/// <param name="LeastPeakN">The same at the lower end of the band, N.</param>
internal readonly record struct CutForces(ImmutableArray<Point2> InPlane, double DownN, double UpN, double PeakN, double LeastPeakN)
{
    public static CutForces Of(ImmutableArray<Point2> inPlane, double downN, double upN, double leastPeakN)
    {
        var along = inPlane.IsEmpty ? 0 : inPlane.Max(p => p.Length);
        var axial = Math.Max(-downN, upN);
        return new(inPlane, downN, upN, Math.Sqrt(along * along + axial * axial), leastPeakN);
    }

    /// <summary>What holds against both.</summary>
    public CutForces And(CutForces other)
    {
        if (InPlane.IsDefault)
        {
            return other;
        }

        return new(
            ForceHull.Around([default, .. InPlane, .. other.InPlane]), Math.Min(DownN, other.DownN), Math.Max(UpN, other.UpN),
            Math.Max(PeakN, other.PeakN), Math.Max(LeastPeakN, other.LeastPeakN));
    }
}
