using PodLayout.Findings;
using PodLayout.Reading;
using PodLayout.Reading.Rings;

namespace PodLayout.Parts;

/// <summary>Chooses the ring that is the outline, or says in words what there is to choose from.</summary>
internal sealed class PartChoice
{
    /// <summary>Rings outside the part, on other layers, that come to less than this share of it: signs and letters.</summary>
    private const double SignShare = 0.01;

    /// <summary>Parts that a message lists.</summary>
    private const int MostListed = 12;

    private readonly LayerRoles _roles;
    private readonly DrawingFindings _findings;
    private readonly List<RoledRing> _wood;
    private readonly FrameDoubt? _doubt;

    public PartChoice(List<RoledRing> wood, LayerRoles roles, Func<string, int> textsOn, DrawingFindings findings)
    {
        (_wood, _roles, _findings) = (wood, roles, findings);
        bool IsEligible(RoledRing r) => roles.NamesOutline ? r.Role == LayerRole.Outline : r.Role != LayerRole.Hole;
        var eligible = wood.FindAll(IsEligible);
        Tree = new(wood.Where(r => IsEligible(r) || eligible.Exists(e => Containment.IsInside(r.Ring, e.Ring))));
        var outermost = Tree.Outermost.Where(r => r.Role != LayerRole.Hole).OrderByDescending(r => r.AreaMm2).ToList();
        if (!roles.NamesOutline && outermost.Count > 0 && outermost[0].Role is null)
            _doubt = FrameDoubt.About(outermost[0], Tree, textsOn);
        Parts = [.. (_doubt is null
            ? eligible.Where(r => Tree.Depth(r) % 2 == 0)
            : outermost.Concat(_doubt.Inside)).OrderByDescending(r => r.AreaMm2).ThenBy(r => r.Bounds.MinX).ThenBy(r => r.Bounds.MinY)];
        // Holes with rings in them: where what lies around is a sheet they are the parts.
        Parts = [.. Parts, .. eligible.Where(r => Tree.Depth(r) % 2 == 1 && Tree.Within(r).Any() && !Parts.Contains(r))
            .OrderByDescending(r => r.AreaMm2).ThenBy(r => r.Bounds.MinX).ThenBy(r => r.Bounds.MinY)];
    }

    public RingTree Tree { get; }

    /// <summary>Rings that may be outlines, in the order in which they are counted.</summary>
    public IReadOnlyList<RoledRing> Parts { get; }

    public IEnumerable<RoledRing> HolesOf(RoledRing outline) => Tree.Within(outline);

    /// <summary>The outline; null with a refusal.</summary>
    public RoledRing? Choose()
    {
        if (_roles.Part is { } number)
            return Numbered(number);
        if (_doubt is { IsSlight: false })
            return Frame(_doubt);
        var outermost = Parts.Where(r => Tree.Around(r) is null).ToList();
        if (outermost.Count == 0)
            return null;
        var (first, others) = (outermost[0], outermost[1..]);
        if (others.Count > 0 && !(others.TrueForAll(o => !o.Layer.Equals(first.Layer, StringComparison.OrdinalIgnoreCase)) && others.Sum(o => o.AreaMm2) <= SignShare * first.AreaMm2))
            return RefuseSeveral(others);
        foreach (var other in others)
            _findings.AddAt(Severity.Warning, "ring-outside", $"A ring of {Size(other)} on layer {other.Layer} lies outside the part; it was left out.", other.Ring.Points[0], "If it is a part of its own, name it with --part (podlayout inspect lists the parts).");
        if (Parts.FirstOrDefault(p => Tree.Depth(p) % 2 == 0 && Tree.Around(p) is { } around && !ReferenceEquals(around, first) && ReferenceEquals(Outermost(p), first)) is { } nested)
            return RefuseNested(nested);
        if (_doubt is { IsSlight: true, Inside: [var hole, ..] })
            _findings.AddAt(
                Severity.Warning, "hole-may-be-part",
                $"A rectangle of {Size(first)} with one large hole of {Size(hole)} was taken for the part; it may be a sheet or a blank around the part.",
                hole.Ring.Points[0], $"If the ring in it is the part, take it with --part {Number(hole)} (\"part\": {Number(hole)} in a job).");
        return first;
    }

    private RoledRing Outermost(RoledRing ring)
    {
        while (Tree.Around(ring) is { } around)
            ring = around;
        return ring;
    }

    private string Size(RoledRing ring) => _findings.Lengths.Size(ring.Bounds);

    private string Listed(RoledRing part)
    {
        var box = part.Bounds;
        var holes = HolesOf(part).Count();
        return $"part {Number(part)} of {Size(part)} from {_findings.Lengths.Near(new(box.MinX, box.MinY))} on layer {part.Layer}{(holes > 0 ? $" with {Counted.Of(holes, "hole")}" : "")}";
    }

    private int Number(RoledRing part) => Parts.TakeWhile(p => !ReferenceEquals(p, part)).Count() + 1;

    private string List() => string.Join("; ", Parts.Take(MostListed).Select(Listed)) + (Parts.Count > MostListed ? $"; and {Parts.Count - MostListed} more, which podlayout inspect lists" : "");

    private RoledRing? Numbered(int number)
    {
        if (number >= 1 && number <= Parts.Count)
        {
            var chosen = Parts[number - 1];
            var others = Parts.Count - 1;
            if (others > 0)
                _findings.Note("part-chosen", $"Part {number} of {Parts.Count} was taken, as asked: {Size(chosen)} on layer {chosen.Layer}.");
            return chosen;
        }

        _findings.Refuse("part-missing", Parts.Count == 0 ? $"There is no part {number}: the drawing holds no closed ring that could be one." : $"There is no part {number}; the drawing holds {List()}.", Parts.Count == 0 ? "Close the outline in the drawing." : $"Give a number from 1 to {Parts.Count} with --part.");
        return null;
    }

    private RoledRing? RefuseSeveral(List<RoledRing> others)
    {
        _findings.AddAt(
            Severity.Refused, "parts-several", $"The drawing holds {Parts.Count} parts: {List()}.",
            others[0].Ring.Points[0], "Take one with --part NUMBER (\"part\" in a job), or name the part's layer with --outline-layer.");
        return null;
    }

    private RoledRing? RefuseNested(RoledRing nested)
    {
        var hole = Tree.Around(nested)!;
        _findings.AddAt(
            Severity.Refused, "ring-nested",
            $"A ring of {Size(nested)} on layer {nested.Layer} lies inside the hole of {Size(hole)} on layer {hole.Layer} that begins at {_findings.Lengths.At(hole.Ring.Points[0])} {_findings.Lengths.Unit}: {List()}.",
            nested.Ring.Points[0],
            nested.Layer.Equals(hole.Layer, StringComparison.OrdinalIgnoreCase)
                ? "Delete one of them, or take one part with --part NUMBER (part 1 keeps the hole and leaves out what lies in it)."
                : $"Leave one layer out (--layer \"{nested.Layer}=ignore\"), or take one part with --part NUMBER (part 1 keeps the hole and leaves out what lies in it).");
        return null;
    }

    private RoledRing? Frame(FrameDoubt doubt)
    {
        var (frame, inside) = (doubt.Frame, doubt.Inside[0]);
        var outside = Parts.Where(p => Tree.Around(p) is null && !ReferenceEquals(p, frame)).ToList();
        var shape = FrameDoubt.IsRectangle(frame) ? "a rectangle" : "a ring";
        if (doubt.IsSure && outside.Count == 0 && Tree.Within(inside).All(h => Tree.Within(h).Count == 0))
        {
            _findings.AddAt(
                Severity.Warning, "frame-left-out",
                $"{shape[..1].ToUpperInvariant()}{shape[1..]} of {Size(frame)} on layer {frame.Layer} was taken for a sheet frame and left out; the part is the ring of {Size(inside)} on layer {inside.Layer}.",
                frame.Ring.Points[0], $"If the frame is the part, say so: --outline-layer \"{frame.Layer}\".");
            return inside;
        }

        var isSame = inside.Layer.Equals(frame.Layer, StringComparison.OrdinalIgnoreCase);
        var choice = isSame || doubt.Inside.Count(i => i.Layer.Equals(inside.Layer, StringComparison.OrdinalIgnoreCase)) > 1
            ? $"Say which part is meant: --part NUMBER (\"part\" in a job); part 1 has what lies in it as holes{(isSame ? "" : $", as has --outline-layer \"{frame.Layer}\"")}."
            : $"Say which is the part's outline: --outline-layer \"{inside.Layer}\", or --outline-layer \"{frame.Layer}\" with the rings in it as holes (\"outlineLayer\" in a job).";
        _findings.AddAt(
            Severity.Refused, "outline-doubtful",
            $"The largest ring, {shape} of {Size(frame)} on layer {frame.Layer}, may be the part, or a sheet frame or blank around it: in it lies a ring of {Size(inside)} on layer {inside.Layer}. To choose from: {List()}.",
            frame.Ring.Points[0], choice);
        return null;
    }
}
