using System.Collections.Immutable;
using PodLayout.Jobs;
using PodLayout.Layouts;

namespace PodLayout.Support;

/// <summary>How much of the part each point stands for.</summary>
public static class PointLengths
{
    /// <summary>Lengths are whole numbers of these to a millimetre, so that sums are exact.</summary>
    public const int ToMm = 100;

    private const double AreaOfMm = 1000;

    /// <summary>
    /// For each point the length of edge that is nearer to it than to its neighbours on the ring; for a point inside or on a thin
    /// floor the area of its lattice's square, of which 10 cm² count as a millimetre of edge: edges come first, however densely the
    /// points of an area are set. In hundredths of a millimetre, at least one.
    /// </summary>
    public static ImmutableArray<int> Of(ImmutableArray<PointToSupport> points, SupportRules rules)
    {
        var lengths = new double[points.Length];
        for (var from = 0; from < points.Length;)
        {
            var to = from + 1;
            while (to < points.Length && points[to].Ring == points[from].Ring && points[to].Limit == points[from].Limit)
            {
                to++;
            }

            for (var p = from; p < to; p++)
            {
                var next = p + 1 < to ? p + 1 : from;
                var half = points[p].IsEdge ? (points[next].OnPart - points[p].OnPart).Length / 2 : 0;
                lengths[p] += points[p].Limit switch
                {
                    SupportLimit.Edge => half,
                    SupportLimit.Interior => rules.InteriorStepMm * rules.InteriorStepMm / AreaOfMm,
                    _ => rules.FloorStepMm * rules.FloorStepMm / AreaOfMm,
                };
                lengths[next] += half;
            }

            from = to;
        }

        return [.. lengths.Select(mm => (int)Math.Clamp(Math.Round(mm * ToMm), 1, int.MaxValue / 2))];
    }
}
