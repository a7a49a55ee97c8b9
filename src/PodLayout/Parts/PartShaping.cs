using System.Globalization;
using PodLayout.Findings;
using PodLayout.Geometry;
using PodLayout.Reading;
using PodLayout.Reading.Rings;

namespace PodLayout.Parts;

/// <summary>Makes the part of a drawing: which ring is the outline, which are holes, which are defects.</summary>
public static class PartShaping
{
    /// <summary>A part whose greatest extent is smaller than this was most likely drawn in another unit, mm.</summary>
    private const double SmallestLikelyMm = 50;

    /// <summary>A part longer than this is longer than the tables of such machines, mm.</summary>
    private const double LargestLikelyMm = 5000;

    /// <summary>The part's shape, or a refusal that says what stands in the way and where.</summary>
    public static Outcome<PartShape> From(Drawing drawing, LayerRoles roles)
    {
        var findings = new DrawingFindings(drawing.FileName);
        CheckNames(drawing, roles, findings);
        RingFaults.RefuseOpen(drawing, roles, findings);
        var rings = drawing.Rings
            .Select(r => new RoledRing(r.Layer, r.Ring, roles.RoleOf(r.Layer)))
            .Where(r => r.Role is not (LayerRole.Ignore or LayerRole.Cut)).ToList();
        rings = RingFaults.WithoutDoubles(rings, findings);
        RingFaults.RefuseCrossings(rings, findings);
        if (findings.HasRefusal)
            return Outcome<PartShape>.Refuse(findings.All);
        var shape = Sort(rings, roles, findings);
        if (shape is null)
            return Outcome<PartShape>.Refuse(findings.All);
        CheckSize(shape, drawing, findings);
        return Outcome<PartShape>.Of(shape, findings.All);
    }

    private static void CheckNames(Drawing drawing, LayerRoles roles, DrawingFindings findings)
    {
        foreach (var name in roles.Names.Where(n => !drawing.Layers.Any(l => LayerRoles.Matches(n, l.Name))))
        {
            var near = string.Join(", ", NearestName.InOrder(name, drawing.Layers.Select(l => l.Name), 3));
            // Lines that a cut was to follow would be taken for edges of the part: what follows from that is not told first.
            var (isOfCut, severity) = (roles.OfCuts.Contains(name), name == roles.OutlineLayer || roles.OfCuts.Contains(name) ? Severity.Refused : Severity.Warning);
            findings.Add(severity, "layer-missing", $"The drawing has no layer {name}{(isOfCut ? ", which a cut or the blank of the job is to follow" : "")}; the nearest names it has: {near}.", "Correct the layer's name.");
        }
    }

    private static PartShape? Sort(List<RoledRing> rings, LayerRoles roles, DrawingFindings findings)
    {
        var wood = rings.Where(r => r.Role != LayerRole.Defect).ToList();
        var candidates = wood.Where(r => roles.NamesOutline ? r.Role == LayerRole.Outline : r.Role != LayerRole.Hole);
        if (candidates.MaxBy(r => r.AreaMm2) is not { } outline)
        {
            findings.Refuse(
                "outline-missing", roles.NamesOutline ? "No closed ring lies on the outline's layer." : "The drawing holds no closed ring that could be the outline.",
                "Close the outline in the drawing, or name the right layer with --outline-layer.");
            return null;
        }

        var holes = HolesOf(outline, wood, roles, findings);
        if (findings.HasRefusal)
            return null;
        RefuseNested(holes, findings);
        return findings.HasRefusal ? null : new(
            outline.Ring,
            [.. holes.Select(h => h.Ring.CounterClockwise())],
            [.. rings.Where(r => r.Role == LayerRole.Defect).Select(r => r.Ring.CounterClockwise())]);
    }

    private static List<RoledRing> HolesOf(RoledRing outline, List<RoledRing> wood, LayerRoles roles, DrawingFindings findings)
    {
        var holes = new List<RoledRing>();
        foreach (var ring in wood.Where(r => !ReferenceEquals(r, outline)))
        {
            if (Containment.IsInside(ring.Ring, outline.Ring))
                holes.Add(ring);
            else if (ring.Role == LayerRole.Hole)
                findings.AddAt(Severity.Refused, "hole-outside", $"A ring on hole layer {ring.Layer} lies outside the outline.", ring.Ring.Points[0], "Move or delete it, or map its layer to ignore.");
            else if (roles.NamesOutline && ring.Role is null)
                findings.AddAt(Severity.Warning, "ring-outside", $"A ring on layer {ring.Layer} lies outside the outline; it was left out.", ring.Ring.Points[0]);
            else
                findings.AddAt(
                    Severity.Refused, "parts-several",
                    $"The drawing holds more than one part: a ring of {Extent(outline.Ring)} mm on layer {outline.Layer} and, outside it, one of {Extent(ring.Ring)} mm on layer {ring.Layer}.",
                    ring.Ring.Points[0], "Give one part a drawing, or name the part's layer with --outline-layer.");
        }

        return holes;
    }

    private static void RefuseNested(List<RoledRing> holes, DrawingFindings findings)
    {
        foreach (var inner in holes)
        {
            var outer = holes.Find(h => !ReferenceEquals(h, inner) && h.AreaMm2 > inner.AreaMm2 && h.Bounds.Contains(inner.Bounds) && Containment.IsInside(inner.Ring, h.Ring));
            if (outer is null)
                continue;
            var at = string.Create(CultureInfo.InvariantCulture, $"({outer.Ring.Points[0].X:0.###}, {outer.Ring.Points[0].Y:0.###})");
            findings.AddAt(
                Severity.Refused, "ring-nested",
                $"A ring on layer {inner.Layer} lies inside the hole on layer {outer.Layer} that begins at {at} mm.", inner.Ring.Points[0],
                "Delete one of them, map a layer to ignore, or, if the larger hole is the part, name its layer with --outline-layer.");
        }
    }

    private static void CheckSize(PartShape shape, Drawing drawing, DrawingFindings findings)
    {
        var box = shape.Outline.Bounds;
        var extent = Math.Max(box.Width, box.Height);
        if (extent is < SmallestLikelyMm or > LargestLikelyMm)
            findings.Warn("size-unlikely", $"The outline measures {Extent(shape.Outline)} mm (read in {drawing.UnitName}).", "If that is not the part's size, say the unit with --units.");
    }

    private static string Extent(Ring ring) =>
        string.Create(CultureInfo.InvariantCulture, $"{ring.Bounds.Width:0.##} x {ring.Bounds.Height:0.##}");
}
