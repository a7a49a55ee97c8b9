using PodLayout.Geometry;

namespace PodLayout.Checking;

/// <summary>A ring of the part as it lies on the board.</summary>
/// <param name="Words">What it is.</param>
/// <param name="Ring">The ring.</param>
/// <param name="Area">What it encloses.</param>
internal sealed record RingOnBoard(string Words, Ring Ring, RegionIndex Area)
{
    public static RingOnBoard Of(string words, Ring ring, Turn turn, Point2 zero)
    {
        var laid = ring.Laid(turn, zero);
        return new(words, laid, new(Region.Inside(laid)));
    }
}
