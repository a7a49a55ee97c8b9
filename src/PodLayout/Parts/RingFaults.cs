using PodLayout.Findings;
using PodLayout.Geometry;
using PodLayout.Reading;
using PodLayout.Reading.Rings;

namespace PodLayout.Parts;

/// <summary>What keeps closed rings from being the edges of a part.</summary>
internal static class RingFaults
{
    /// <summary>Faults of one kind named one by one; the rest are counted.</summary>
    private const int MostNamed = 5;

    private static void Named<T>(
        IEnumerable<T> faults, string code, DrawingFindings findings, Func<T, (Point2 At, string Message, string Remedy)> describe)
    {
        var all = faults.ToList();
        foreach (var fault in all.Take(MostNamed))
        {
            var (at, message, remedy) = describe(fault);
            findings.AddAt(Severity.Refused, code, message, at, remedy);
        }

        if (all.Count > MostNamed)
            findings.Refuse(code, $"{all.Count - MostNamed} more of this kind.", "Mend the drawing, or leave out layers that are no edge of the part: --layer NAME=ignore.");
    }

    /// <summary>Drops rings that lie on another of the same meaning, drawn with other lines or on another layer.</summary>
    public static List<RoledRing> WithoutDoubles(List<RoledRing> rings, DrawingFindings findings)
    {
        var kept = new List<RoledRing>();
        // Rings whose layer says something come first, so that they are the ones that stay.
        foreach (var ring in rings.OrderBy(r => r.Role is null).ThenByDescending(r => r.AreaMm2))
        {
            var twin = kept.Find(k => (k.Role == LayerRole.Defect) == (ring.Role == LayerRole.Defect) && k.IsAlike(ring) && Containment.IsSame(k.Ring, ring.Ring));
            if (twin is null)
                kept.Add(ring);
            else
                findings.AddAt(Severity.Warning, "duplicate", $"A ring on layer {ring.Layer} lies on one on layer {twin.Layer}; it was dropped.", ring.Ring.Points[0]);
        }

        return kept;
    }

    /// <summary>Refuses rings that cross or touch themselves.</summary>
    public static void RefuseSelfCrossings(IEnumerable<RoledRing> rings, DrawingFindings findings) => Named(
        rings.SelectMany(r => RingCrossings.Find([r.Ring]).Select(c => (c.Point, r.Layer))), "ring-crosses-itself", findings,
        c => (c.Point, $"A ring on layer {c.Layer} crosses or touches itself.", "Mend the line there in the drawing."));

    /// <summary>Refuses rings of the part that cross or touch others; defects may cross others.</summary>
    public static void RefuseCrossings(List<RoledRing> rings, IReadOnlyCollection<RoledRing> ofPart, DrawingFindings findings)
    {
        var own = ofPart.ToHashSet(ReferenceEqualityComparer.Instance);
        // Rings within a hole of the part lie on no wood and may do what they like, but those across its edges may not.
        var looked = rings.Where(r => r.Role != LayerRole.Defect).ToList();
        var crossings = RingCrossings.Find(looked.ConvertAll(r => r.Ring));
        Named(
            crossings.Where(c => c.First != c.Second && (own.Contains(looked[c.First]) || own.Contains(looked[c.Second]))), "rings-cross", findings,
            c => (c.Point, $"Two rings cross or touch (layers {looked[c.First].Layer} and {looked[c.Second].Layer}).", CrossRemedy(looked[c.First].Layer, looked[c.Second].Layer, ofPart.First().Layer)));
    }

    private static string CrossRemedy(string a, string b, string own)
    {
        var other = a.Equals(own, StringComparison.OrdinalIgnoreCase) ? b : a;
        return other.Equals(own, StringComparison.OrdinalIgnoreCase)
            ? "Mend one of them in the drawing." : $"Mend one of them in the drawing, or leave its layer out: --layer \"{other}=ignore\" (or =defect).";
    }
}
