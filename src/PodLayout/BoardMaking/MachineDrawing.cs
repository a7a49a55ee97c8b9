using System.Collections.Immutable;
using PodLayout.Geometry;
using PodLayout.Handover.Picture;

namespace PodLayout.BoardMaking;

/// <summary>
/// One side of the board for the machine: a layer for each operation, and layers that are only looked at. Both sides have
/// the board's zero, the pins where they stand: a piece is laid on the same pins for both.
/// </summary>
public static class MachineDrawing
{
    private const string Style = "leader";
    private const double NoteMm = 12;

    /// <summary>The drawing of one side.</summary>
    public static Sheet Draw(BoardPlan plan, BoardSide side)
    {
        IEnumerable<Layer> operations = Operations.Of(plan).Where(o => o.Side == side).Select(o => new Layer(o.Layer, o.Shapes));
        ImmutableArray<Layer> layers = side == BoardSide.Front
            ? [.. operations, new("REFERENCE-ZERO", Zero(plan, "FRONT"))]
            : [.. operations, .. Reference(plan), new("REFERENCE-ZERO", Zero(plan, "BACK"))];
        var extent = new Box2(0, 0, plan.Board.WidthMm, plan.Board.LengthMm);
        return new($"{plan.Board.Name}, {(side == BoardSide.Front ? "front" : "back")}", "", extent, 1, layers);
    }

    // What the front already has, where it lies now: to hold the back against, not to cut again.
    private static IEnumerable<Layer> Reference(BoardPlan plan)
    {
        yield return new("REFERENCE-OUTLINE",
            [.. plan.Pieces.Select(p => new Primitive.Area(Style, [SheetDraft.RingOf(p.Over.Apply(p.Outline))]))]);
        yield return new("REFERENCE-PIN-HOLES",
            [.. plan.Pieces.SelectMany(p => p.Pins.Select(pin => new Primitive.Disc(Style, p.Over.Apply(pin.At), pin.HoleDiameterMm / 2)))]);
        yield return new("REFERENCE-PORTS",
        [
            .. plan.Board.Ports.Select(port => new Primitive.Disc(
                Style, plan.Pieces[plan.PieceOf(port)].Over.Apply(port.Centre), plan.Request.Bore.DrillDiameterMm / 2)),
        ]);
    }

    private static ImmutableArray<Primitive> Zero(BoardPlan plan, string side)
    {
        var first = plan.Pieces[0].Pins[0];
        var words = $"{side} - zero 0,0; pin {first.Name} at X {Figure.Mm(first.At.X)} Y {Figure.Mm(first.At.Y)} on both sides";
        return
        [
            new Primitive.Strokes(Style, [new(-NoteMm, 0), new(NoteMm, 0), new(0, -NoteMm), new(0, NoteMm)]),
            new Primitive.Text(Style, new(0, -3 * NoteMm), words, NoteMm, TextAnchor.Start),
        ];
    }
}
