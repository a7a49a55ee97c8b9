using System.Collections.Immutable;
using PodLayout.Geometry;
using PodLayout.Parts;

namespace PodLayout.Handover.Picture;

/// <summary>The part as it lies on the board: outline, holes, defects, grain.</summary>
internal static class PartDrawing
{
    /// <param name="draft">The sheet.</param>
    /// <param name="shape">The part, board coordinates.</param>
    /// <param name="grainDeg">The grain on the board.</param>
    /// <param name="programZero">The program's zero on the board; null without a program.</param>
    public static void Draw(SheetDraft draft, PartShape shape, double grainDeg, Point2? programZero)
    {
        ImmutableArray<Ring> wood = [shape.Outline, .. shape.Holes];
        draft.Add(SheetDraft.Part, new Primitive.Area("part-fill", wood));
        foreach (var defect in shape.Defects)
        {
            draft.AddHatch(SheetDraft.Defects, new Primitive.Hatch("defect-hatch", [defect], grainDeg + 60, 0.8 * draft.Scale));
            draft.Add(SheetDraft.Defects, new Primitive.Area("defect-edge", [defect]));
        }

        foreach (var spot in shape.Avoided)
        {
            BoardDrawing.AvoidedSign(draft, SheetDraft.Defects, spot.Ring);
            draft.Take(spot.Ring.Bounds);
        }

        foreach (var floor in shape.Floors.Where(f => !f.Area.IsEmpty))
        {
            draft.AddHatch(SheetDraft.Defects, new Primitive.Hatch("floor-hatch", floor.Area.Boundary, 0, 1.4 * draft.Scale));
            draft.Add(SheetDraft.Defects, new Primitive.Area("floor-edge", floor.Area.Boundary));
        }

        foreach (var hazard in shape.Hazards.Where(h => !h.Shown.IsEmpty))
        {
            CutEdges(draft, hazard.KeepsBodiesOff ? "cut-edge" : "defect-edge", hazard.Shown);
            foreach (var path in hazard.TipPaths.Where(p => p.Length > 1))
            {
                draft.AddLine(SheetDraft.Defects, "tip", path);
            }
        }

        if (!shape.Blank.IsEmpty)
        {
            draft.Add(SheetDraft.Blank, new Primitive.Area("blank-edge", shape.Blank));
        }

        LeftOutDrawing.Draw(draft, shape.LeftOutLines);
        foreach (var piece in shape.Held)
        {
            ImmutableArray<Ring> rings = [piece.Outline, .. piece.Holes];
            draft.Add(SheetDraft.Part, new Primitive.Area("part-fill", rings));
            draft.Add(SheetDraft.Defects, new Primitive.Area("piece-edge", rings));
        }

        draft.Add(SheetDraft.Support, new Primitive.Area("part-edge", wood));
        SkinSign(draft, SheetDraft.Support, [.. shape.Skinned.Select(ring => wood[ring])]);
        foreach (var ring in wood)
        {
            draft.KeepOff(ring);
        }

        foreach (var ring in shape.Blank.Concat(shape.Defects).Concat(shape.Floors.SelectMany(f => f.Area.Boundary))
            .Concat(shape.Held.SelectMany(h => h.Holes.Prepend(h.Outline))).Concat(shape.Hazards.SelectMany(h => h.Shown.Boundary)))
        {
            draft.KeepOff(ring, isUnderPods: true);
        }

        // Farther out it would stand among the numbers of the grooves, or on the words beside the board.
        if (programZero is { } zero && draft.Content.Contains(Symbols.ZeroBox(draft, zero)))
        {
            Symbols.Zero(draft, SheetDraft.Support, zero);
            var sign = Symbols.ZeroBox(draft, zero);
            draft.Take(sign);
            draft.KeepOff(sign);
            draft.AddWord(sign);
        }
    }

    // Dashes all round a small hole would be two or three, which look like an arc; a ring within it, or strokes, like a port. Words
    // keep off it, since beside a port's name it would be taken for that port.
    private static void CutEdges(SheetDraft draft, string style, Region area)
    {
        const double smallMm = 5, apartMm = 0.9;
        foreach (var size in area.Pieces.GroupBy(p => Math.Max(p.Bounds.Width, p.Bounds.Height) < smallMm * draft.Scale))
        {
            if (!size.Key || style != "cut-edge")
            {
                ImmutableArray<Ring> edges = [.. size.SelectMany(p => p.Boundary)];
                draft.AddHatch(SheetDraft.Defects, new Primitive.Hatch("cut-hatch", edges, style == "cut-edge" ? 45 : 135, 1.1 * draft.Scale));
                draft.Add(SheetDraft.Defects, new Primitive.Area(style, edges));
                continue;
            }

            draft.Add(SheetDraft.Defects, new Primitive.Area(style + SheetDraft.Small, [.. size.Select(p => p.Boundary[0])]));
            foreach (var box in size.Select(p => p.Bounds.Grow(apartMm * draft.Scale)))
            {
                draft.KeepOff(SheetDraft.RingOf(box), isUnderPods: true);
            }
        }
    }

    /// <summary>The word beside the sign of the program's zero, where there is room; the legend says it too.</summary>
    public static void ZeroName(SheetDraft draft, Point2? programZero)
    {
        const string words = "program zero";
        const double sizeMm = 2.6;
        if (programZero is not { } zero || !draft.Shows("zero"))
        {
            return;
        }

        var u = draft.Scale;
        var sign = Symbols.ZeroBox(draft, zero);
        var box = draft.TextBox(default, words, sizeMm);
        double x = (sign.Width + box.Width) / 2 + 0.5 * u, y = (sign.Height + box.Height) / 2 + 0.4 * u;
        var places = new[] { new Point2(x, 0), new(-x, 0), new(0, y), new(0, -y), new(x, y), new(-x, y), new(x, -y), new(-x, -y) };
        foreach (var place in places.Select(p => box.Moved(sign.Centre + p)).Where(p => draft.IsFree(p) && !draft.IsCrossed(p) && !draft.HasWord(p)).Take(1))
        {
            draft.AddBox(SheetDraft.Labels, "knockout", place);
            draft.AddText(SheetDraft.Labels, "text", place.Centre, words, sizeMm, TextAnchor.Middle);
            draft.Take(place);
            draft.AddWord(place);
        }
    }

    /// <summary>Edges that hang on a skin: black and white by turns, as wide as both lines together.</summary>
    public static void SkinSign(SheetDraft draft, string layer, ImmutableArray<Ring> edges)
    {
        foreach (var style in edges.IsEmpty ? [] : new[] { "skin-edge", "skin-core" })
        {
            draft.Add(layer, new Primitive.Area(style, edges));
        }
    }

    /// <summary>
    /// The grain arrow, where it finds room in the part between pods and words: off all lines, or over those of cuts; else as near to
    /// the part as there is room.
    /// </summary>
    /// <param name="draft">The sheet.</param>
    /// <param name="shape">The part, board coordinates.</param>
    /// <param name="grainDeg">The grain on the board.</param>
    /// <param name="wanted">Places that are left free for other words, as long as there is room elsewhere in the part.</param>
    public static void GrainArrow(SheetDraft draft, PartShape shape, double grainDeg, params IReadOnlyList<Box2> wanted)
    {
        var direction = Turn.FromDegrees(grainDeg).Apply(new(1, 0));
        var bounds = shape.Outline.Bounds;
        const int steps = 24;
        var places = Enumerable.Range(0, (steps + 1) * (steps + 1))
            .Select(i => new Point2(
                bounds.MinX + bounds.Width * (i % (steps + 1)) / steps, bounds.MinY + bounds.Height * (i / (steps + 1)) / steps))
            .OrderBy(p => (p - bounds.Centre).Length).ToList();
        var beyond = 12 * draft.Scale;
        var around = Enumerable.Range(0, (steps + 1) * (steps + 1))
            .Select(i => new Point2(
                bounds.MinX - beyond + (bounds.Width + 2 * beyond) * (i % (steps + 1)) / steps, bounds.MinY - beyond + (bounds.Height + 2 * beyond) * (i / (steps + 1)) / steps))
            .OrderBy(p => Math.Round((p - bounds.Centre).Length, 6)).ToList();
        (double Half, bool IsInside, bool OverLines)[] ways =
        [
            (9.0, true, false), (6, true, false), (4, true, false), (6, true, true), (4, true, true), (3.2, true, false), (2.4, true, false), (5, false, false), (4, false, true),
        ];
        foreach (var (half, isInside, overLines, off) in ways.Where(w => wanted.Count > 0 && w.IsInside && !w.OverLines)
            .Select(w => (w.Half, w.IsInside, w.OverLines, wanted)).Concat(ways.Select(w => (w.Half, w.IsInside, w.OverLines, wanted: (IReadOnlyList<Box2>)[]))))
        {
            var reach = direction * (half * draft.Scale);
            foreach (var at in (isInside ? places : around).Where(at => HasRoom(draft, isInside ? shape : null, at, reach, overLines)
                && !off.Any(b => EdgePath.Touches(b, at - reach, at + reach))))
            {
                Symbols.Arrow(draft, SheetDraft.Labels, "grain-arrow", "grain-head", at - reach, at + reach, true);
                var middle = Box2.Around([at - reach, at + reach]);
                draft.KeepOff(at - reach, at + reach);
                draft.Take(middle.Grow(draft.Scale));
                draft.AddWord(middle.Grow(0.6 * draft.Scale));
                return;
            }
        }
    }

    // In the wood of a part; anywhere without one.
    private static bool HasRoom(SheetDraft draft, PartShape? shape, Point2 at, Point2 reach, bool overLines)
    {
        if (!overLines && draft.IsCrossed(Box2.Around([at - reach * 1.1, at + reach * 1.1]).Grow(0.9 * draft.Scale)))
        {
            return false;
        }

        const int samples = 12;
        return Enumerable.Range(-samples, 2 * samples + 1).All(i =>
        {
            var p = at + reach * (1.15 * i / samples);
            var around = new Box2(p.X, p.Y, p.X, p.Y).Grow(1.2 * draft.Scale);
            return draft.IsFree(around) && (shape is null || new[] { (-1, -1), (1, -1), (1, 1), (-1, 1) }.All(c => InWood(
                shape, p + new Point2(c.Item1, c.Item2) * (1.2 * draft.Scale))));
        });
    }

    private static bool InWood(PartShape shape, Point2 p) =>
        shape.Holes.Prepend(shape.Outline).Concat(shape.Defects).Aggregate(0, (n, ring) => n + (Within(ring, p) ? 1 : 0)) == 1
        && Within(shape.Outline, p);

    /// <summary>Whether a point lies within a ring.</summary>
    public static bool Within(Ring ring, Point2 p)
    {
        var isInside = false;
        for (var i = 0; i < ring.Points.Length; i++)
        {
            var a = ring.Points[i];
            var b = ring.Points[(i + 1) % ring.Points.Length];
            if (a.Y <= p.Y != b.Y <= p.Y && p.X < a.X + (p.Y - a.Y) / (b.Y - a.Y) * (b.X - a.X))
            {
                isInside = !isInside;
            }
        }

        return isInside;
    }
}
