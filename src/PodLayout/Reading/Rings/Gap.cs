using PodLayout.Geometry;

namespace PodLayout.Reading.Rings;

/// <summary>A gap that was bridged.</summary>
/// <param name="From">One end.</param>
/// <param name="To">The other end.</param>
internal readonly record struct Gap(Point2 From, Point2 To)
{
    public double WidthMm => (To - From).Length;
}
