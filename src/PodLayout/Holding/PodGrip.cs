using System.Collections.Immutable;
using PodLayout.Shops;

namespace PodLayout.Holding;

/// <summary>How a kind of pod bears and holds a part, about its own middle and along its own axes.</summary>
/// <param name="AreaMm2">Area that the vacuum pulls on: the smaller of what the upper and the lower seal enclose, mm².</param>
/// <param name="Friction">Coefficient of friction that it can bring to bear.</param>
/// <param name="Spots">Where it bears the part, and where the friction that belongs to it acts, mm.</param>
/// <remarks>
/// A rectangular pod bears at the four corners of its upper seal, a round one at eight points of it: an inscribed figure, so that
/// the part tips no later than on the pod itself. Friction acts nearer to the middle, at the mean distance of the face's points
/// from its middle: a face that is pressed evenly resists a twist by mu N times that distance (Goyal, Ruina and Papadopoulos
/// 1991), and any mixture of twist and push by no less than these few points do, since the length of a vector is convex.
/// </remarks>
public sealed record PodGrip(
    double AreaMm2, double Friction, ImmutableArray<(double X, double Y, double FrictionX, double FrictionY)> Spots)
{
    /// <summary>
    /// Springs that stand for its upper seal: where each presses, where the friction that belongs to it acts, mm, and its
    /// stiffness, N/mm. Those of a rectangle stand at the corners and at the middles of the sides, weighted as in Simpson's rule,
    /// so that together they push and resist tilting exactly as the whole seal does while all of it bears, and tip no later.
    /// </summary>
    public ImmutableArray<(double X, double Y, double FrictionX, double FrictionY, double StiffnessNPerMm)> Seal { get; init; } = [];

    /// <summary>How many of the springs stand at corners of a rectangular pod: the first; of a round one all count.</summary>
    public int Corners { get; init; }

    private const int RoundSpots = 8;

    /// <summary>The grip of a kind of pod.</summary>
    /// <param name="type">The kind.</param>
    /// <param name="friction">Coefficient of friction between its face and the part.</param>
    public static PodGrip Of(PodType type, double friction)
    {
        double x = type.Footprint.ExtentXMm, y = type.Footprint.ExtentYMm;
        // A pod that is pushed sideways at its top tips over its own lower edge before the part slides on it where it is narrow
        // for its height: half its width over its height is then all the friction there is.
        var steady = Math.Min(friction, Math.Min(x, y) / 2 / type.HeightMm);
        double upper = 2 * type.SealInsetAboveMm, lower = 2 * type.SealInsetBelowMm;
        return type.Footprint is PodFootprint.Round
            ? Round(Math.Max(0, x - upper), Math.Max(0, x - lower), steady, type.SealStiffnessNPerMm2)
            : Rectangle(
                Math.Max(0, x - upper), Math.Max(0, y - upper), Math.Max(0, x - lower) * Math.Max(0, y - lower), steady, type.SealStiffnessNPerMm2);
    }

    private static PodGrip Rectangle(double x, double y, double lowerAreaMm2, double friction, double stiffness)
    {
        double halfX = x / 2, halfY = y / 2;
        var diagonal = Math.Sqrt(halfX * halfX + halfY * halfY);
        var inward = diagonal == 0 ? 0 : MeanDistanceMm(halfX, halfY) / diagonal;
        return new(Math.Min(x * y, lowerAreaMm2), friction, [.. from sy in Signs from sx in Signs
            select (sx * halfX, sy * halfY, sx * halfX * inward, sy * halfY * inward)])
        {
            Seal = Springs(halfX, halfY, stiffness),
            Corners = Signs.Length * Signs.Length,
        };
    }

    // A side of length L counts L/6 at each end and 4L/6 in its middle.
    private static ImmutableArray<(double X, double Y, double FrictionX, double FrictionY, double StiffnessNPerMm)> Springs(
        double halfX, double halfY, double stiffness)
    {
        (double X, double Y, double Length)[] springs =
        [
            .. from sy in Signs from sx in Signs select (sx * halfX, sy * halfY, (halfX + halfY) / 3),
            .. from s in Signs select (0.0, s * halfY, 4 * halfX / 3),
            .. from s in Signs select (s * halfX, 0.0, 4 * halfY / 3),
        ];
        // Pressed evenly the springs resist a twist as the face does.
        var length = springs.Sum(s => s.Length);
        var mean = length == 0 ? 0 : springs.Sum(s => s.Length * Math.Sqrt(s.X * s.X + s.Y * s.Y)) / length;
        var inward = mean == 0 ? 0 : MeanDistanceMm(halfX, halfY) / mean;
        return [.. springs.Select(s => (s.X, s.Y, s.X * inward, s.Y * inward, s.Length * stiffness))];
    }

    private static PodGrip Round(double upper, double lower, double friction, double stiffness)
    {
        var least = Math.Min(upper, lower);
        ImmutableArray<(double X, double Y, double FrictionX, double FrictionY)> spots = [.. Enumerable.Range(0, RoundSpots).Select(i =>
        {
            var angle = (i + 0.5) * 2 * Math.PI / RoundSpots;
            double x = Math.Cos(angle) * upper / 2, y = Math.Sin(angle) * upper / 2;
            return (x, y, x * 2 / 3, y * 2 / 3);
        })];
        return new(Math.PI / 4 * least * least, friction, spots)
        {
            Seal = [.. spots.Select(s => (s.X, s.Y, s.FrictionX, s.FrictionY, Math.PI * upper / RoundSpots * stiffness))],
            Corners = RoundSpots,
        };
    }

    /// <summary>Mean distance of the points of a rectangle from its middle, mm (by integration over a quarter of it).</summary>
    /// <param name="halfX">Half its extent along X, more than 0.</param>
    /// <param name="halfY">Half its extent along Y, more than 0.</param>
    public static double MeanDistanceMm(double halfX, double halfY)
    {
        if (halfX <= 0 || halfY <= 0)
        {
            return (halfX + halfY) / 2;
        }

        var diagonal = Math.Sqrt(halfX * halfX + halfY * halfY);
        return diagonal / 3 + halfX * halfX / (6 * halfY) * Math.Log((halfY + diagonal) / halfX)
            + halfY * halfY / (6 * halfX) * Math.Log((halfX + diagonal) / halfY);
    }

    private static readonly ImmutableArray<int> Signs = [-1, 1];
}
