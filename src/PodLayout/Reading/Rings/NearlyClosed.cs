using PodLayout.Geometry;

namespace PodLayout.Reading.Rings;

/// <summary>Open lines that would make a ring if gaps a little wider than the join gap were closed: an edge that was not drawn to its end.</summary>
/// <param name="Layer">Layer of the first line.</param>
/// <param name="Ring">The ring that they would make.</param>
/// <param name="From">One end at the widest gap.</param>
/// <param name="To">The other end.</param>
internal sealed record NearlyClosed(string Layer, Ring Ring, Point2 From, Point2 To)
{
    /// <summary>A gap up to this may be a slip of the drawing, mm.</summary>
    public const double WidestSlipMm = 2;

    /// <summary>Gaps of a ring may be at most this share of its length: letters and hatches are open on purpose.</summary>
    private const double GapShare = 0.05;

    /// <summary>One line may miss its own beginning by this share of its length.</summary>
    private const double OwnGapShare = 0.02;

    /// <summary>Area by the square of the length, for a slot twenty times as long as wide: what is thinner is a double line and no edge.</summary>
    private const double Slimmest = 0.01;

    public double GapMm => (To - From).Length;

    public static List<NearlyClosed> Of(IReadOnlyList<OpenContour> contours)
    {
        var gaps = new List<Gap>();
        var lines = contours.Select(c => new DrawnPath(c.Layer, c.Points, false, "")).ToList();
        var joined = Joining.Join(lines, "", WidestSlipMm, gaps);
        var found = new List<NearlyClosed>();
        foreach (var (ring, members) in joined.Rings.Zip(joined.Members))
        {
            var ends = members.SelectMany(m => new[] { m.Points[0], m.Points[^1] }).ToHashSet();
            var own = gaps.Where(g => ends.Contains(g.From) && ends.Contains(g.To)).OrderByDescending(g => g.WidthMm).ToList();
            if (own.Count > 0)
                Add(members[0].Layer, ring.Points, own[0], own.Sum(g => g.WidthMm), GapShare);
        }

        foreach (var c in contours)
        {
            var gap = new Gap(c.Points[^1], c.Points[0]);
            if (gap.WidthMm > WidestSlipMm && c.Points.Length > 2)
                Add(c.Layer, c.Points, gap, gap.WidthMm, OwnGapShare);
        }

        return found;

        void Add(string layer, System.Collections.Immutable.ImmutableArray<Point2> points, Gap widest, double gapsMm, double share)
        {
            var ring = new Ring(points);
            var length = ring.PerimeterMm;
            if (gapsMm <= share * length && ring.AreaMm2 >= Slimmest * length * length)
                found.Add(new(layer, ring, widest.From, widest.To));
        }
    }
}
