using PodLayout.Reading.Rings;

namespace PodLayout.Parts;

/// <summary>Which ring lies in which.</summary>
internal sealed class RingTree
{
    private readonly Dictionary<RoledRing, RoledRing?> _around = new(ReferenceEqualityComparer.Instance);
    private readonly Dictionary<RoledRing, List<RoledRing>> _within = new(ReferenceEqualityComparer.Instance);

    public RingTree(IEnumerable<RoledRing> rings)
    {
        var larger = new List<RoledRing>();
        foreach (var ring in rings.OrderByDescending(r => r.AreaMm2))
        {
            // The smallest around it is the last of the larger ones that is around it.
            var around = larger.FindLast(l => l.Bounds.Contains(ring.Bounds) && Containment.IsInside(ring.Ring, l.Ring));
            _around[ring] = around;
            _within[ring] = [];
            if (around is not null)
                _within[around].Add(ring);
            larger.Add(ring);
        }
    }

    public IEnumerable<RoledRing> Outermost => _around.Where(r => r.Value is null).Select(r => r.Key);

    public bool Contains(RoledRing ring) => _around.ContainsKey(ring);

    /// <summary>Rings directly inside one.</summary>
    public IReadOnlyList<RoledRing> Within(RoledRing ring) => _within[ring];

    public RoledRing? Around(RoledRing ring) => _around[ring];

    /// <summary>How many rings lie around one.</summary>
    public int Depth(RoledRing ring)
    {
        var depth = 0;
        for (var around = _around[ring]; around is not null; around = _around[around])
            depth++;
        return depth;
    }
}
