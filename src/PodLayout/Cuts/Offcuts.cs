using System.Collections.Immutable;
using System.Globalization;
using PodLayout.Findings;
using PodLayout.Geometry;
using PodLayout.Jobs;
using PodLayout.Parts;
using PodLayout.Reading;

namespace PodLayout.Cuts;

/// <summary>What comes loose when the part is cut out of its blank.</summary>
public static class Offcuts
{
    // Pieces smaller than this are swarf, mm².
    private const double SmallestMm2 = 25;

    // A piece heavier or longer than this can do harm when the cutter throws it. Common practice, no source.
    private const double LargeKg = 0.2;
    private const double LargeMm = 150;

    private const int MostTold = 12;

    /// <summary>Code of the note that the blank is larger than the part.</summary>
    public const string BlankBeyondPart = "blank-beyond-part";

    /// <summary>The loose pieces, the largest first.</summary>
    /// <param name="blank">The blank's region.</param>
    /// <param name="cut">All that is cut through.</param>
    /// <param name="shape">The part.</param>
    public static ImmutableArray<Region> Of(Region blank, Region cut, PartShape shape)
    {
        var part = Region.Inside(shape.Outline, shape.Holes);
        var pieces = blank.Minus(cut).Pieces;
        // The piece that holds most of the part is the part, whatever else still hangs on it.
        var whole = pieces.MaxBy(p => p.Intersect(part).AreaMm2);
        return [.. pieces.Where(p => p != whole && p.AreaMm2 >= SmallestMm2).OrderByDescending(p => p.AreaMm2)];
    }

    /// <summary>A finding for each loose piece of the job's blank; none where no blank is given.</summary>
    public static Outcome<IReadOnlyList<Region>> Tell(
        Drawing drawing, PartShape shape, CutRequest request, IReadOnlyList<Hazard> hazards, double thicknessMm, double densityKgPerM3, string jobFile)
    {
        if (request.Blank is not { } asked)
        {
            return Outcome<IReadOnlyList<Region>>.Of([]);
        }

        var (blank, outline) = (Blank(drawing, shape, asked), Region.Inside(shape.Outline));
        if (asked.Layer is { } layer && blank.IsEmpty)
        {
            var near = drawing.Layers.Any(l => LayerRoles.Matches(layer, l.Name))
                ? "" : $"; the nearest layers are {string.Join(", ", NearestName.InOrder(layer, drawing.Layers.Select(l => l.Name), 3))}";
            return Outcome<IReadOnlyList<Region>>.Refuse(Say(
                Severity.Refused, jobFile, "blank-missing", $"found no closed line on layer {layer} for the blank{near}.", "Correct the layer's name."));
        }

        var through = Region.UnionOf(hazards.Where(h => h.KeepsBodiesOff && h.KeepsSealsOff).Select(h => h.Shown));
        var pieces = Of(blank, through, shape);
        var findings = pieces.Take(MostTold).Select((p, i) => Piece(p, i, thicknessMm, densityKgPerM3, asked, jobFile)).ToList();
        if (pieces.Length > MostTold)
        {
            findings.Add(Say(Severity.Note, jobFile, "offcut", Text($"{pieces.Length - MostTold} more loose pieces, all smaller."), null));
        }

        if (BeyondPart(blank.Bounds, outline.Bounds) is { } beyond)
        {
            findings.Add(Say(Severity.Note, jobFile, BlankBeyondPart, beyond, null));
        }

        return Outcome<IReadOnlyList<Region>>.Of(pieces, findings);
    }

    /// <summary>
    /// The blank's edges, to be drawn: as they are in the drawing, or the outline grown; empty where no blank is given or it reaches
    /// nowhere beyond the part.
    /// </summary>
    public static ImmutableArray<Ring> EdgesBeyondPart(Drawing drawing, PartShape shape, BlankRequest? asked)
    {
        var blank = asked is null ? Region.Empty : Blank(drawing, shape, asked);
        if (blank.IsEmpty || blank.Minus(Region.Inside(shape.Outline).Grow(Tolerances.PlacingMm)).IsEmpty)
        {
            return [];
        }

        // Rounded corners come in thousands of chords.
        return (blank.IsIntricate ? blank.SimplifiedOutward(Tolerances.ContactMm) : blank).Boundary;
    }

    // Empty where its layer has no closed line.
    private static Region Blank(Drawing drawing, PartShape shape, BlankRequest asked) => asked.Layer is { } name
        ? Region.UnionOf(drawing.Rings.Where(r => LayerRoles.Matches(name, r.Layer)).Select(r => Region.Inside(r.Ring)))
        : Region.Inside(shape.Outline).Grow(asked.GrownByMm);

    // Whoever lays the blank has none of the edges whose places are given.
    private static string? BeyondPart(Box2 blank, Box2 part)
    {
        double[] beyond = [part.MinX - blank.MinX, blank.MaxX - part.MaxX, part.MinY - blank.MinY, blank.MaxY - part.MaxY];
        if (beyond.Max() <= Tolerances.PlacingMm)
        {
            return null;
        }

        var by = beyond.Max() - beyond.Min() <= 0.1 ? Text($"{beyond.Max():0.#} mm all round")
            : Text($"{beyond[0]:0.#} mm to X-, {beyond[1]:0.#} mm to X+, {beyond[2]:0.#} mm to Y- and {beyond[3]:0.#} mm to Y+ of the drawing");
        return $"The part is cut out of a blank that reaches beyond it by {by}. The places of edges are those of the finished part, which are not there yet when the blank is laid down: lay its edges so much farther out.";
    }

    /// <summary>Those that are heavy enough to be held by pods of their own.</summary>
    /// <param name="pieces">The loose pieces, the largest first.</param>
    /// <param name="asked">What the job says of the blank.</param>
    /// <param name="thicknessMm">Thickness of the blank.</param>
    /// <param name="densityKgPerM3">Density of the wood.</param>
    public static ImmutableArray<HeldPiece> ToHold(
        IReadOnlyList<Region> pieces, BlankRequest? asked, double thicknessMm, double densityKgPerM3)
    {
        var held = ImmutableArray.CreateBuilder<HeldPiece>();
        for (var i = 0; i < pieces.Count; i++)
        {
            var kg = asked is null ? 0 : Kg(pieces[i], thicknessMm, densityKgPerM3);
            if (!(kg > asked?.HoldOverKg))
            {
                continue;
            }

            // Simplified inward only: what the simpler piece takes, the true one takes.
            var inner = pieces[i].IsIntricate ? pieces[i].SimplifiedInward(Tolerances.ContactMm) : pieces[i];
            var rings = inner.Rounded(Tolerances.CoordinateMm).Pieces.MaxBy(p => p.AreaMm2)?.Boundary ?? [];
            if (!rings.IsEmpty)
            {
                held.Add(new(Name(i), rings[0], [.. rings.Skip(1).Select(r => r.CounterClockwise())], kg, asked!.MustHold));
            }
        }

        return held.ToImmutable();
    }

    /// <summary>The pieces as they are told of, at most as many as there are findings of them.</summary>
    /// <param name="pieces">The loose pieces, the largest first.</param>
    /// <param name="shape">The part.</param>
    /// <param name="thicknessMm">Thickness of the blank.</param>
    /// <param name="densityKgPerM3">Density of the wood.</param>
    public static ImmutableArray<Offcut> ToWatch(IReadOnlyList<Region> pieces, PartShape shape, double thicknessMm, double densityKgPerM3) =>
    [
        .. pieces.Take(MostTold).Select((piece, i) =>
        {
            var (box, kg) = (piece.Bounds, Kg(piece, thicknessMm, densityKgPerM3));
            return new Offcut(
                Name(i), piece.PointInside() ?? box.Centre, box.Width, box.Height, kg, IsLarge(box, kg), piece.Boundary[0].Contains(shape.Outline.Points[0]));
        }),
    ];

    private static bool IsLarge(Box2 box, double kg) => kg > LargeKg || Math.Max(box.Width, box.Height) > LargeMm;

    private static string Name(int index) => Text($"offcut {index + 1}");

    private static double Kg(Region piece, double thicknessMm, double densityKgPerM3) => piece.AreaMm2 * thicknessMm * 1e-9 * densityKgPerM3;

    private static Finding Piece(Region piece, int index, double thicknessMm, double density, BlankRequest asked, string jobFile)
    {
        var box = piece.Bounds;
        var kg = Kg(piece, thicknessMm, density);
        if (kg > asked.HoldOverKg)
        {
            return Say(Severity.Note, jobFile, "offcut", Text($"{Name(index)} comes loose at ({box.Centre.X:0.#}, {box.Centre.Y:0.#}) mm of the drawing: {box.Width:0.#} x {box.Height:0.#} mm, {kg:0.###} kg at {density:0.#} kg/m3; it is to be held by pods of its own."), null);
        }

        var isLarge = IsLarge(box, kg);
        return Say(
            isLarge ? Severity.Warning : Severity.Note, jobFile, "offcut",
            Text($"{Name(index)} comes loose at ({box.Centre.X:0.#}, {box.Centre.Y:0.#}) mm of the drawing: {box.Width:0.#} x {box.Height:0.#} mm, {piece.AreaMm2 / 100:0.#} cm2, {kg:0.###} kg at {density:0.#} kg/m3."),
            isLarge ? "Hold it, tab it, or cut it to chips." : null);
    }

    private static Finding Say(Severity severity, string jobFile, string code, string message, string? remedy) =>
        new(code, severity, FindingKind.Request, message, new Place.InJson(jobFile, "$.blank"), remedy);

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
