using System.Collections.Immutable;
using PodLayout.Geometry;
using PodLayout.Jobs;
using PodLayout.Layouts;
using PodLayout.Parts;
using PodLayout.Shops;

namespace PodLayout.Handover.Setup;

/// <summary>The pieces that come loose, each where it is found on the board.</summary>
internal static class LooseSteps
{
    public static IEnumerable<CardBlock> Of(Job job, Layout layout, CardUnit unit)
    {
        if (job.Offcuts.IsEmpty)
        {
            yield break;
        }

        var shape = job.Part.Shape.Laid(Turn.FromDegrees(layout.Placement.AngleDeg), layout.Placement.ZeroOnBoard);
        yield return new CardBlock.Words("Column and row name the grooves that cross nearest to the middle of the piece, counted from the datum.");
        yield return new CardBlock.Table(
            "Pieces that come loose", null,
            ["Piece", $"Size {unit.Name}", unit.MassName, $"X {unit.Name}", $"Y {unit.Name}", "Column", "Row", "Where", "Held by"],
            [.. job.Offcuts.Select((p, i) => new CardRow($"W{CsvText.Count(i + 1)}", Cells(job, layout, shape, p, unit)))]);
    }

    /// <summary>The warnings of pieces that are large and that no pod holds.</summary>
    public static IEnumerable<string> LargeAndLoose(Job job, Layout layout, CardUnit unit) =>
        job.Offcuts.Where(p => p.IsLarge && Holders(layout, p).Count == 0).Select(p =>
            $"{Capital(p.Name)} is large ({unit.Mass(p.MassKg)} {unit.MassName}) and no pod holds it: hold it, tab it, or cut it to chips.");

    private static ImmutableArray<string> Cells(Job job, Layout layout, PartShape laid, Offcut piece, CardUnit unit)
    {
        var at = Turn.FromDegrees(layout.Placement.AngleDeg).Apply(piece.Inside) + layout.Placement.ZeroOnBoard;
        var board = job.Shop.Board;
        var holders = Holders(layout, piece);

        // A frame has no middle of its own that it could be found by.
        string[] place = piece.IsAround && holders.Count == 0 ? ["-", "-", "-", "-", "all round the part, outside its edge"] :
        [
            unit.Rough(at.X), unit.Rough(at.Y), Groove(at.X, board.FirstGroove.X, board.WidthMm, board),
            Groove(at.Y, board.FirstGroove.Y, board.LengthMm, board), Where(layout, laid, at),
        ];
        return
        [
            piece.Name, $"{unit.Rough(piece.WidthMm)} x {unit.Rough(piece.HeightMm)}", unit.Mass(piece.MassKg), .. place,
            holders.Count == 0 ? "no pod" : string.Join(' ', holders),
        ];
    }

    private static List<string> Holders(Layout layout, Offcut piece) =>
        [.. layout.Pods.Select((p, i) => (p.Holds, i)).Where(p => p.Holds == piece.Name).Select(p => LayoutFiling.PodId(p.i))];

    // The nearest groove on the board.
    private static string Groove(double coordinate, double first, double size, GridBoard board)
    {
        var last = Math.Floor((size - first) / board.PitchMm);
        return CsvText.Count((int)Math.Clamp(Math.Round((coordinate - first) / board.PitchMm), 0, Math.Max(0, last)) + 1);
    }

    private static string Where(Layout layout, PartShape laid, Point2 at)
    {
        var part = laid.Outline.Contains(at) ? "inside the part" : SideOf(laid.Outline.Bounds, at, "the part");
        return layout.Pods.IsEmpty ? part : $"{part}, {BesidePod(layout, at)}";
    }

    /// <summary>Where a place on the board lies to the pod that is nearest to it: "left of P3".</summary>
    public static string BesidePod(Layout layout, Point2 at)
    {
        var (pod, index) = layout.Pods.Select((p, i) => (p, i)).MinBy(p => Distance(p.p.BodyBox, at));
        return SideOf(pod.BodyBox, at, LayoutFiling.PodId(index));
    }

    private static double Distance(Box2 box, Point2 p) => new Point2(
        Math.Max(0, Math.Max(box.MinX - p.X, p.X - box.MaxX)), Math.Max(0, Math.Max(box.MinY - p.Y, p.Y - box.MaxY))).Length;

    // By the side that it lies farthest beyond.
    private static string SideOf(Box2 box, Point2 p, string name)
    {
        var (beyond, words) = new[]
        {
            (box.MinX - p.X, "left of"), (p.X - box.MaxX, "right of"), (box.MinY - p.Y, "on your side of"), (p.Y - box.MaxY, "beyond"),
        }.MaxBy(s => s.Item1);
        return beyond <= 0 ? $"over {name}" : $"{words} {name}";
    }

    private static string Capital(string words) => words.Length == 0 ? words : char.ToUpperInvariant(words[0]) + words[1..];
}
