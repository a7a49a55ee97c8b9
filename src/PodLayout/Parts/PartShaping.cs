using System.Collections.Immutable;
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

    /// <summary>Rings whose box is smaller than this share of the largest are signs and letters.</summary>
    private const double SmallShare = 0.01;

    /// <summary>The part's shape, or a refusal that says what stands in the way and where.</summary>
    public static Outcome<PartShape> From(Drawing drawing, LayerRoles roles) => Look(drawing, roles).Shape;

    /// <summary>The part's shape or the refusal, with what each ring was taken for and what there is to choose from.</summary>
    public static DrawnPart Look(Drawing drawing, LayerRoles roles)
    {
        var findings = new DrawingFindings(drawing.FileName) { Lengths = drawing.Lengths };
        CheckNames(drawing, roles, findings);
        var all = drawing.Rings.Select(r => new RoledRing(r.Layer, r.Ring, roles.RoleOf(r.Layer)) { IsPage = r.CoversPage }).ToList();
        var rings = RingFaults.WithoutDoubles([.. all.Where(r => r.Role is not (LayerRole.Ignore or LayerRole.Cut))], findings);
        var choice = new PartChoice(
            [.. rings.Where(r => r.Role != LayerRole.Defect)], roles, layer => drawing.Layers.Where(l => LayerRoles.Matches(layer, l.Name)).Sum(l => l.Texts), findings);
        ImmutableArray<PartCandidate> candidates = [.. choice.Parts.Select((p, i) => new PartCandidate(i + 1, p.Layer, p.Ring, [.. choice.HolesOf(p).Select(h => h.Ring)]))];
        var open = new OpenLines(drawing, roles, findings);
        var outline = findings.HasRefusal ? null : Outline(rings, choice, roles, open, findings);
        var holes = outline is null ? [] : choice.HolesOf(outline).ToList();
        if (outline is null || findings.HasRefusal)
            return new(Outcome<PartShape>.Refuse(findings.All), candidates, Meanings(all, null, []));
        ImmutableArray<Ring> defects = [.. rings.Where(r => r.Role == LayerRole.Defect).Select(r => r.Ring.CounterClockwise())];
        var shape = new PartShape(outline.Ring, [.. holes.Select(h => h.Ring.CounterClockwise())], defects) { LeftOutLines = open.LeftOut };
        CheckSize(shape, drawing, findings);
        return new(Outcome<PartShape>.Of(shape, findings.All), candidates, Meanings(all, outline, holes));
    }

    private static ImmutableArray<RingMeaning> Meanings(List<RoledRing> all, RoledRing? outline, List<RoledRing> holes) => [.. all.Select(r =>
        r.Role == LayerRole.Cut ? RingMeaning.Cut
        : ReferenceEquals(r, outline) ? RingMeaning.Outline
        : outline is not null && r.Role == LayerRole.Defect ? RingMeaning.Defect
        : holes.Exists(h => ReferenceEquals(h, r)) ? RingMeaning.Hole : RingMeaning.LeftOut)];

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

    private static RoledRing? Outline(List<RoledRing> rings, PartChoice choice, LayerRoles roles, OpenLines open, DrawingFindings findings)
    {
        // A ring that runs through itself has no inside that anything could be chosen by; small ones are told only where they matter.
        if (roles.Part is null)
        {
            var largest = rings.Count == 0 ? 0 : rings.Max(BoxArea);
            var large = rings.Where(r => BoxArea(r) >= SmallShare * largest).ToList();
            RingFaults.RefuseSelfCrossings(large, findings);
            if (!findings.HasRefusal && choice.Parts.Count(p => choice.Tree.Around(p) is null) > 1)
                RingFaults.RefuseCrossings(large, large.FindAll(r => choice.Tree.Contains(r) && choice.Tree.Around(r) is null), findings);
        }

        if (findings.HasRefusal)
            return null;
        if (choice.Parts.Count == 0 && roles.Part is null)
        {
            open.RefuseAll();
            if (!findings.HasRefusal)
                findings.Refuse(
                    "outline-missing", roles.NamesOutline ? "No closed ring lies on the outline's layer." : "The drawing holds no closed ring that could be the outline.",
                    "Close the outline in the drawing, or name the right layer with --outline-layer.");
            return null;
        }

        var outline = choice.Choose();
        if (outline is null)
            return null;
        RingFaults.RefuseSelfCrossings(choice.HolesOf(outline).Prepend(outline), findings);
        open.Settle(outline, roles.Part is not null);
        RefuseOutside(outline, rings, choice, roles, findings);
        RingFaults.RefuseCrossings(rings, [outline, .. choice.HolesOf(outline)], findings);
        return findings.HasRefusal ? null : outline;
    }

    private static double BoxArea(RoledRing ring) => ring.Bounds.Width * ring.Bounds.Height;

    private static void RefuseOutside(RoledRing outline, List<RoledRing> rings, PartChoice choice, LayerRoles roles, DrawingFindings findings)
    {
        if (roles.Part is not null)
            return;
        foreach (var ring in rings.Where(r => r.Role is LayerRole.Hole or null && !ReferenceEquals(r, outline) && !Containment.IsInside(r.Ring, outline.Ring) && !choice.Parts.Any(p => ReferenceEquals(p, r))))
        {
            if (ring.Role == LayerRole.Hole)
                findings.AddAt(Severity.Refused, "hole-outside", $"A ring on hole layer {ring.Layer} lies outside the outline.", ring.Ring.Points[0], $"Move or delete it, or leave its layer out: --layer \"{ring.Layer}=ignore\".");
            else if (roles.NamesOutline)
                findings.AddAt(Severity.Warning, "ring-outside", $"A ring on layer {ring.Layer} lies outside the outline; it was left out.", ring.Ring.Points[0]);
        }
    }

    private static void CheckSize(PartShape shape, Drawing drawing, DrawingFindings findings)
    {
        var box = shape.Outline.Bounds;
        var extent = Math.Max(box.Width, box.Height);
        if (extent is < SmallestLikelyMm or > LargestLikelyMm)
            findings.Warn("size-unlikely", $"The outline measures {drawing.Lengths.Size(box)} (read in {drawing.UnitName}).", "If that is not the part's size, say the unit with --units.");
    }
}
