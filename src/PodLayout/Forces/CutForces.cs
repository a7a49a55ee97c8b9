using System.Collections.Immutable;
using PodLayout.Geometry;

namespace PodLayout.Forces;

/// <summary>The forces that a cut may put on the wood at one place.</summary>
/// <param name="InPlane">Corners of their hull in the drawing's plane, N.</param>
/// <param name="DownN">Least force along Z, N: negative presses down.</param>
/// <param name="UpN">Greatest force along Z, N.</param>
/// <param name="PeakN">The greatest force there, at the upper end of the band, N.</param>
/// <param name="LeastPeakN">The same at the lower end of the band, N.</param>
internal readonly record struct CutForces(ImmutableArray<Point2> InPlane, double DownN, double UpN, double PeakN, double LeastPeakN)
{
    // Forces nearer than this are the same, N.
    private const double Hair = 1e-6;

    /// <param name="inPlane">Corners in the drawing's plane.</param>
    /// <param name="peakInPlaneN">The greatest force in it; the corners around it lie a little farther out.</param>
    /// <param name="downN">Least force along Z.</param>
    /// <param name="upN">Greatest force along Z.</param>
    /// <param name="leastPeakN">The greatest force in the plane at the lower end of the band.</param>
    public static CutForces Of(ImmutableArray<Point2> inPlane, double peakInPlaneN, double downN, double upN, double leastPeakN)
    {
        var axial = Math.Max(-downN, upN);
        return new(inPlane, downN, upN, Math.Sqrt(peakInPlaneN * peakInPlaneN + axial * axial), leastPeakN);
    }

    /// <summary>Whether the other forces all lie within these, or between these and no force.</summary>
    public bool Covers(CutForces other)
    {
        if (other.DownN < DownN - Hair || other.UpN > UpN + Hair)
        {
            return false;
        }

        var hull = ForceHull.Hull([default, .. InPlane]);
        for (var i = 0; i < hull.Count; i++)
        {
            var (from, along) = (hull[i], hull[(i + 1) % hull.Count] - hull[i]);
            if (other.InPlane.Any(p => along.Cross(p - from) < -Hair * along.Length))
            {
                return false;
            }
        }

        return hull.Count > 2 || other.InPlane.IsEmpty;
    }

    /// <summary>What holds against both.</summary>
    public CutForces And(CutForces other)
    {
        if (InPlane.IsDefault)
        {
            return other;
        }

        return new(
            InPlane.Equals(other.InPlane) ? InPlane : ForceHull.Around([default, .. InPlane, .. other.InPlane]), Math.Min(DownN, other.DownN), Math.Max(UpN, other.UpN),
            Math.Max(PeakN, other.PeakN), Math.Max(LeastPeakN, other.LeastPeakN));
    }
}
