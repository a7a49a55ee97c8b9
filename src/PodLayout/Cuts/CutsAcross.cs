using System.Collections.Immutable;
using System.Globalization;
using PodLayout.Findings;
using PodLayout.Geometry;
using PodLayout.Parts;
using PodLayout.Programs;
using PodLayout.Reading;

namespace PodLayout.Cuts;

/// <summary>
/// Through cuts of a program that take away more of the finished part than the drawing or an operation allows, as they do when its
/// zero is mistyped.
/// </summary>
/// <remarks>
/// A small hole in the midst of the wood (for a dowel or a screw) is often not drawn: those are listed in a note. What cuts into the
/// outline, or takes out more than such a hole, is warned about.
/// </remarks>
internal static class CutsAcross
{
    /// <summary>How far a cut may pass a finished edge, mm: a worn cutter, a radius that was measured badly. Common practice, no source.</summary>
    private const double EatMm = 0.5;

    // Larger than what is drilled for dowels, bolts and hinges, mm. Common practice, no source.
    private const double LargestHoleMm = 40;

    // Less than this is what rounding leaves, mm2.
    private const double SmallestMm2 = 0.5;

    private const double HairMm = 0.05;

    private const int MostTold = 6;

    /// <summary>A warning for each such piece of the part, the largest first, and a note of holes.</summary>
    /// <param name="path">The program.</param>
    /// <param name="setting">How it stands to the part.</param>
    /// <param name="cuts">What its tools sweep below the underside.</param>
    /// <param name="drawing">The drawing: near its other lines a cut is meant.</param>
    /// <param name="shape">The part.</param>
    /// <param name="operations">What operations cut below the underside.</param>
    public static ImmutableArray<Finding> Of(
        ToolPath path, ProgramSetting setting, IReadOnlyList<ToolCut> cuts, Drawing drawing, PartShape shape, IReadOnlyList<Hazard> operations)
    {
        var wood = Region.Inside(shape.Outline, shape.Holes);
        var within = wood.Shrink(EatMm).Minus(Region.UnionOf(operations.Where(h => h.KeepsBodiesOff).Select(h => h.Shown.Grow(EatMm))));
        var taken = cuts.SelectMany(cut => Taken(cut, drawing, shape, within).Select(piece => (Cut: cut, Piece: piece)))
            .OrderByDescending(t => t.Piece.AreaMm2).ToList();
        if (taken.Count == 0)
        {
            return [];
        }

        var offEdge = new RegionIndex(Region.Inside(shape.Outline).Shrink(EatMm + HairMm));
        var across = taken.Select(t => (t.Cut, t.Piece, IsEdge: !offEdge.ContainsClear(t.Piece.Bounds.Centre, Size(t.Piece) / 2) && t.Piece.Boundary.Any(r => r.Points.Any(p => !offEdge.Contains(p)))))
            .Where(t => t.IsEdge || Size(t.Piece) > LargestHoleMm).ToList();
        var parts = across.Count == 0 ? 1 : wood.Minus(Region.UnionOf(cuts.Select(c => c.Swept))).Pieces.Count(p => p.AreaMm2 > LargestHoleMm * LargestHoleMm);
        // Told where the outline is cut into, which mostly is what parts it.
        var first = Math.Max(0, across.FindIndex(t => t.IsEdge));
        return
        [
            .. across.Take(MostTold).Select((t, i) => Across(path, setting, t.Cut, t.Piece, t.IsEdge, i == first ? parts : 1)),
            .. across.Count > MostTold ? [More(path, across[MostTold].Cut, across.Count - MostTold)] : Array.Empty<Finding>(),
            .. Holes(path, setting, [.. taken.Where(t => !across.Exists(a => a.Piece == t.Piece))]),
        ];
    }

    private static IEnumerable<Region> Taken(ToolCut cut, Drawing drawing, PartShape shape, Region within)
    {
        var free = within.IsEmpty ? within : within.Minus(Drawn(drawing, shape, cut.Tool.DiameterMm));
        if (free.IsEmpty)
        {
            return [];
        }

        // Of thousands of drilled holes most lie clear of every edge: those need no geometry.
        var (index, swept) = (new RegionIndex(free), cut.Swept.Near(free.Bounds));
        var pieces = swept.Pieces.ToLookup(p => Size(p) <= LargestHoleMm && index.ContainsClear(p.Bounds.Centre, Size(p) / 2 + HairMm));
        var others = pieces[true].Any() ? Region.UnionOf(pieces[false]) : swept;
        return pieces[true].Concat(others.IsEmpty ? [] : others.Intersect(free).Pieces).Where(p => p.AreaMm2 > SmallestMm2);
    }

    // Beside all lines that are not the part's own edges, as wide as the tool and either side; and within closed ones in the part.
    private static Region Drawn(Drawing drawing, PartShape shape, double diameterMm)
    {
        var outline = Region.Inside(shape.Outline);
        var others = drawing.Rings.Where(r => !shape.Holes.Prepend(shape.Outline).Any(edge => IsEdge(r.Ring, edge))).ToList();
        return Region.UnionOf(
        [
            .. others.Select(r => Region.AlongPath([.. r.Ring.Points, r.Ring.Points[0]], diameterMm + EatMm)),
            .. others.Select(r => Region.Inside(r.Ring)).Where(r => r.Minus(outline).IsEmpty),
            .. drawing.OpenContours.Where(c => c.Points.Length > 1).Select(c => Region.AlongPath(c.Points, diameterMm + EatMm)),
        ]);
    }

    // An edge drawn twice, or mended when it was read, is still the edge.
    private static bool IsEdge(Ring drawn, Ring edge)
    {
        if (OperationLines.IsSame(drawn, edge))
        {
            return true;
        }

        var most = EatMm * edge.Points.Select((p, i) => (edge.Points[(i + 1) % edge.Points.Length] - p).Length).Sum();
        if (Math.Abs(drawn.AreaMm2 - edge.AreaMm2) > most)
        {
            return false;
        }

        Region a = Region.Inside(drawn), b = Region.Inside(edge);
        return a.Minus(b).AreaMm2 + b.Minus(a).AreaMm2 <= most;
    }

    private static double Size(Region piece) => Math.Max(piece.Bounds.Width, piece.Bounds.Height);

    private static Finding Across(ToolPath path, ProgramSetting setting, ToolCut cut, Region piece, bool isEdge, int parts)
    {
        var at = piece.PointInside() ?? piece.Bounds.Centre;
        var box = piece.Bounds;
        var where = isEdge ? "its outline is cut into" : "inside its outline, where the drawing has no edge";
        return new(
            "cut-across-part", Severity.Warning, FindingKind.Program,
            Text($"tool {cut.Tool.Number} cuts through the finished part about ({at.X:0.#}, {at.Y:0.#}) mm of the drawing and takes {piece.AreaMm2 / 100:0.##} cm2 of it ({box.Width:0.#} x {box.Height:0.#} mm): {where}, and no operation says so{(parts > 1 ? Text($"; the part falls into {parts} pieces") : "")}."),
            new Place.InFile(path.FileName, Line(path, setting, cut, at)),
            "Check offsetMm and the tool's diameter; where the cut is meant, draw its line or state its operation.");
    }

    private static Finding More(ToolPath path, ToolCut cut, int count) => new(
        "cut-across-part", Severity.Warning, FindingKind.Program,
        Text($"{count} more smaller places of the finished part are cut through, the largest by tool {cut.Tool.Number}."),
        new Place.InFile(path.FileName, cut.FirstLine), "Check offsetMm and the tools' diameters.");

    private static IEnumerable<Finding> Holes(ToolPath path, ProgramSetting setting, IReadOnlyList<(ToolCut Cut, Region Piece)> holes) =>
        from hole in holes
        group hole.Piece by hole.Cut into byTool
        let first = byTool.First().Bounds.Centre
        select new Finding(
            "hole-not-drawn", Severity.Note, FindingKind.Program,
            Text($"tool {byTool.Key.Tool.Number} cuts {byTool.Count()} hole{(byTool.Count() == 1 ? "" : "s")} through the wood that the drawing does not have, up to {byTool.Max(Size):0.#} mm wide: about {Places([.. byTool])}."),
            new Place.InFile(path.FileName, Line(path, setting, byTool.Key, first)));

    private static string Places(IReadOnlyList<Region> pieces) =>
        string.Join(", ", pieces.Take(MostTold).Select(p => Text($"({p.Bounds.Centre.X:0.#}, {p.Bounds.Centre.Y:0.#})")))
        + (pieces.Count > MostTold ? Text($" and {pieces.Count - MostTold} more places") : "");

    // The tool's own nearest move.
    private static int Line(ToolPath path, ProgramSetting setting, ToolCut cut, Point2 at) => Sweeping.Nearest(
        path with { Stretches = [.. path.Stretches.Where(s => s.ToolNumber == cut.Tool.Number)] }, setting, at)?.Stretch.Line ?? cut.FirstLine;

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
