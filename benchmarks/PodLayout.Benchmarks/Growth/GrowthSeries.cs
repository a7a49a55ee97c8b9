using System.Collections.Immutable;

namespace PodLayout.Benchmarks.Growth;

/// <summary>Runs in which one thing was varied.</summary>
/// <param name="Against">What.</param>
/// <param name="Points">The runs.</param>
internal sealed record GrowthSeries(string Against, ImmutableArray<GrowthPoint> Points)
{
    /// <summary>The exponent of a figure: the slope of its logarithm, by least squares; null with fewer than two points.</summary>
    public double? Exponent(Func<GrowthPoint, double?> figure)
    {
        var logs = Points.Where(p => p.IsProven && figure(p) > 0).Select(p => (X: Math.Log(p.X), Y: Math.Log(figure(p)!.Value))).ToArray();
        if (logs.Length < 2)
        {
            return null;
        }

        double meanX = logs.Average(l => l.X), meanY = logs.Average(l => l.Y);
        return logs.Sum(l => (l.X - meanX) * (l.Y - meanY)) / logs.Sum(l => (l.X - meanX) * (l.X - meanX));
    }
}
