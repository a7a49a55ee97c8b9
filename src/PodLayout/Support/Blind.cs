using System.Runtime.CompilerServices;
using PodLayout.Geometry;

namespace PodLayout.Support;

/// <summary>
/// An edge of the part that faces away from a lookout: a straight line from there that crosses it has left the wood and comes
/// back into it.
/// </summary>
/// <param name="A">Start; the wood is to the left of A to B.</param>
/// <param name="B">End.</param>
public readonly record struct Blind(Point2 A, Point2 B)
{
    // Well below the rounding of coordinates of a metre, in mm.
    private const double NoDistanceMm = 1e-7;

    /// <summary>Whether the edge faces away from a point: the point lies strictly on the side without wood.</summary>
    public bool FacesAwayFrom(Point2 p) => (B - A).Cross(p - A) < -NoDistanceMm * (B - A).Length;

    /// <summary>Whether the straight line between a lookout that the edge faces away from and a target crosses it.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public bool Cuts(Point2 lookout, Point2 target)
    {
        // Most edges lie wholly to one side of the line's box: four comparisons instead of three products.
        if (Math.Min(A.X, B.X) > Math.Max(lookout.X, target.X) || Math.Max(A.X, B.X) < Math.Min(lookout.X, target.X)
            || Math.Min(A.Y, B.Y) > Math.Max(lookout.Y, target.Y) || Math.Max(A.Y, B.Y) < Math.Min(lookout.Y, target.Y))
        {
            return false;
        }

        // Half-open at the ends, so that a line through a corner crosses one of its two edges, and a line that only touches
        // the corner crosses none or both: then the path around the corner, of the same length, is found instead.
        var sight = target - lookout;
        return sight.Cross(A - lookout) >= 0 != sight.Cross(B - lookout) >= 0
            && (B - A).Cross(target - A) > NoDistanceMm * (B - A).Length;
    }
}
