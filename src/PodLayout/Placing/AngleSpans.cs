using System.Collections.Immutable;
using PodLayout.Jobs;

namespace PodLayout.Placing;

/// <summary>The angles that a search begins with: single ones, or spans that cover an interval.</summary>
internal static class AngleSpans
{
    /// <summary>The angles (half span 0) or spans of what the job asks for.</summary>
    public static ImmutableArray<(double AngleDeg, double HalfSpanDeg)> Of(Job job) => job.Placement switch
    {
        PlacementWish.Given given => [(given.AngleDeg, 0)],
        PlacementWish.Search search => [.. search.AnglesDeg.Select(a => (a, 0.0))],
        PlacementWish.SearchInterval interval => Covering(job, interval.FromDeg, interval.ToDeg),
        _ => throw new ArgumentOutOfRangeException(nameof(job), job.Placement, "Unknown placement."),
    };

    private static ImmutableArray<(double AngleDeg, double HalfSpanDeg)> Covering(Job job, double fromDeg, double toDeg)
    {
        // To begin with, spans in which the part's far end swings by half a pitch to either side: wider ones rule out nothing.
        var shape = job.Part.Shape.Outline;
        var far = shape.Points.Max(p => (p - shape.Bounds.Centre).Length);
        var halfSpan = job.Shop.Board.PitchMm / 2 / far * 180 / Math.PI;
        var count = Math.Max(1, (int)Math.Ceiling((toDeg - fromDeg) / (2 * halfSpan)));
        halfSpan = (toDeg - fromDeg) / count / 2;
        return [.. Enumerable.Range(0, count).Select(i => (fromDeg + (2 * i + 1) * halfSpan, halfSpan))];
    }
}
