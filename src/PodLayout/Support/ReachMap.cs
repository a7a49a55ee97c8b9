using System.Collections.Immutable;
using PodLayout.Geometry;
using PodLayout.Jobs;
using PodLayout.Layouts;
using PodLayout.Parts;

namespace PodLayout.Support;

/// <summary>
/// For every point that must be supported: the lookouts that paths through the wood within its limit can start their last
/// straight leg from. Made once for a part; a placement only turns it.
/// </summary>
/// <remarks>
/// The shortest path inside a polygon from a point to a convex face bends only at re-entrant vertices, and its last leg runs
/// to the point of the face nearest to the last bend (Lee and Preparata 1984, doi:10.1002/net.3230140304, for the bends). An
/// elliptical limit is a linear change of the plane, which keeps straight lines straight, so the same holds in the metric.
/// </remarks>
public sealed class ReachMap
{
    private const int ManyCorners = 1000;
    private const double NarrowShare = 0.125;
    private const double GrownShare = 0.03;
    private const double MostGrownMm = 0.5;

    private readonly ImmutableArray<LimitMetric> _metrics;

    private ReachMap(
        ImmutableArray<PointToSupport> points, ImmutableArray<ImmutableArray<Lookout>> lookouts, ImmutableArray<LimitMetric> metrics)
    {
        Points = points;
        Lookouts = lookouts;
        _metrics = metrics;
    }

    /// <summary>The points.</summary>
    public ImmutableArray<PointToSupport> Points { get; }

    /// <summary>Lookouts of each point, the point itself first, then by length of path.</summary>
    public ImmutableArray<ImmutableArray<Lookout>> Lookouts { get; }

    /// <summary>A limit, in the drawing's directions.</summary>
    public LimitMetric MetricOf(SupportLimit limit) => _metrics[(int)limit];

    /// <summary>Finds the points and their lookouts.</summary>
    /// <param name="part">The part.</param>
    /// <param name="rules">Limits and steps.</param>
    /// <param name="stretch">Multiplies every limit: to ask how far a point is from a pod that is out of reach.</param>
    public static ReachMap Of(Part part, SupportRules rules, double stretch = 1)
    {
        var points = PointSampling.Of(part.Shape, rules);
        ImmutableArray<LimitMetric> metrics =
        [
            LimitMetric.Ellipse(rules.OverhangAlongGrainMm * stretch, rules.OverhangAcrossGrainMm * stretch, part.GrainDeg),
            Round((rules.InteriorSpanMm ?? 1) * stretch),
            Round(rules.ThinFloorSpanMm * stretch),
        ];
        var rings = InTheWay(part.Shape.Holes, Math.Min(rules.OverhangAlongGrainMm, rules.OverhangAcrossGrainMm)).Select(h => new Ring([.. h.CounterClockwise().Points.Reverse()]))
            .Prepend(part.Shape.Outline.CounterClockwise());
        var grid = new EdgeGrid(rings, rules.OverhangAcrossGrainMm / 2);
        ImmutableArray<BendGraph> graphs = [.. metrics.Select(m => new BendGraph(grid, m))];
        return new(points, [.. points.AsParallel().AsOrdered().Select(p => graphs[(int)p.Limit].LookoutsOf(p.OnPart))], metrics);
    }

    // Round a screw's or a dowel's hole a path is longer by little more than half its width: such holes are not in the way. A part
    // of very many larger ones has tens of thousands of corners at which a path could bend: they get fewer and grow a little, so
    // that paths round them only become longer.
    private static IEnumerable<Ring> InTheWay(ImmutableArray<Ring> holes, double limitMm)
    {
        Ring[] wide = [.. holes.Where(h => Math.Max(h.Bounds.Width, h.Bounds.Height) > NarrowShare * limitMm)];
        return wide.Sum(h => h.Points.Length) <= ManyCorners ? wide
            : wide.Select(h => FewerCorners.Of(h.CounterClockwise(), Math.Min(MostGrownMm, GrownShare * h.Bounds.Width)));
    }

    private static LimitMetric Round(double spanMm) => LimitMetric.Ellipse(spanMm, spanMm, 0);
}
