using PodLayout.Geometry;

namespace PodLayout.Reading.Rings;

/// <summary>Two rings, or two stretches of one ring, that share a point.</summary>
/// <param name="First">Index of one ring.</param>
/// <param name="Second">Index of the other; the same when a ring meets itself.</param>
/// <param name="Point">Where, mm.</param>
/// <param name="FirstSide">The side of the first ring, counted from 0.</param>
/// <param name="SecondSide">The side of the second.</param>
internal readonly record struct RingCrossing(int First, int Second, Point2 Point, int FirstSide, int SecondSide);
