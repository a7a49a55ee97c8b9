using System.Collections.Immutable;
using PodLayout.Geometry;
using PodLayout.Parts;

namespace PodLayout.Checking;

/// <summary>A part's outline, hole, defect or cut as it lies on the board.</summary>
/// <param name="Words">What it is.</param>
/// <param name="Rings">Its lines.</param>
/// <param name="Area">What they enclose.</param>
internal sealed record RingOnBoard(string Words, ImmutableArray<Ring> Rings, RegionIndex Area)
{
    public static RingOnBoard Of(string words, Ring ring, Turn turn, Point2 zero)
    {
        var laid = ring.Laid(turn, zero);
        return new(words, [laid], new(Region.Inside(laid)));
    }

    public static RingOnBoard Of(Hazard hazard, Turn turn, Point2 zero)
    {
        var laid = hazard.Area.Laid(turn, zero);
        return new($"{hazard.Name} ({hazard.Source})", laid.Boundary, new(laid));
    }

    public static RingOnBoard Of(WeakFloor floor, Turn turn, Point2 zero)
    {
        var laid = floor.Area.Laid(turn, zero);
        return new(floor.Name == Floors.WeakFloors.WholePart ? floor.Name : $"{floor.Name} ({floor.Source})", laid.Boundary, new(laid));
    }
}
