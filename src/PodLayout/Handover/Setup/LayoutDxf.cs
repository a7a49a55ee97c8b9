using System.Collections.Immutable;
using PodLayout.Geometry;
using PodLayout.Handover.Picture;
using PodLayout.Layouts;
using PodLayout.Parts;
using PodLayout.Shops;

namespace PodLayout.Handover.Setup;

/// <summary>
/// The layout as a drawing at full size, from the board's datum: for laying over the board's or the part's own drawing. Nothing in
/// it is larger than it is, and each kind of thing has a layer of its own.
/// </summary>
public static class LayoutDxf
{
    private const double NumberShareOfPitch = 0.4;

    // Layers of the drawing, and the layers of the pictures that they are drawn from.
    private static readonly ImmutableArray<(string Name, string Drawn)> LayerNames =
    [
        ("PODLAYOUT-BOARD", SheetDraft.Board), ("PODLAYOUT-GRID", SheetDraft.Grooves), ("PODLAYOUT-GRID-NUMBERS", SheetDraft.Numbers),
        ("PODLAYOUT-PORTS", SheetDraft.Ports), ("PODLAYOUT-ZONES", SheetDraft.Zones), ("PODLAYOUT-PART", SheetDraft.Part),
        ("PODLAYOUT-BLANK", SheetDraft.Blank), ("PODLAYOUT-KEEP-OUT", SheetDraft.Obstacles), ("PODLAYOUT-PODS", SheetDraft.Pods), ("PODLAYOUT-SEALS", SheetDraft.Seals),
        ("PODLAYOUT-OPEN-PORTS", SheetDraft.OpenPorts), ("PODLAYOUT-LABELS", SheetDraft.Labels),
    ];

    /// <summary>The DXF text; without a layout, the board alone.</summary>
    public static string Write(PlanResult result) => DxfWriter.Write(Draw(result));

    /// <summary>The drawing as a sheet.</summary>
    public static Sheet Draw(PlanResult result)
    {
        var board = result.Job.Shop.Board;
        var face = new Box2(0, 0, board.WidthMm, board.LengthMm);
        SheetDraft draft = new(1, face, face);
        Board(draft, result.Job.Shop);
        var extent = face;
        if (result.Layout is { } layout)
        {
            var shape = result.Job.Part.Shape.Laid(Turn.FromDegrees(layout.Placement.AngleDeg), layout.Placement.ZeroOnBoard);
            Part(draft, shape);
            Pods(draft, board, layout);
            extent = LayoutPicture.Content(board, shape);
        }

        return new(LayoutPicture.Title(result), "", extent, 1, [.. LayerNames.Select(l => new Layer(l.Name, draft.On(l.Drawn)))])
        {
            Mark = LayoutMark.Sentence(LayoutMark.Of(result)),
        };
    }

    private static void Board(SheetDraft draft, Shop shop)
    {
        var board = shop.Board;
        draft.AddBox(SheetDraft.Board, "board", draft.Page);
        BoardDrawing.Grooves(draft, board);
        var size = NumberShareOfPitch * board.PitchMm;
        for (var c = 0; board.ColumnXMm(c) <= board.WidthMm; c++)
        {
            draft.AddText(SheetDraft.Numbers, "number", new(board.ColumnXMm(c), -size), CsvText.Count(c + 1), size, TextAnchor.Middle);
        }

        for (var r = 0; board.RowYMm(r) <= board.LengthMm; r++)
        {
            draft.AddText(SheetDraft.Numbers, "number", new(-0.4 * size, board.RowYMm(r)), CsvText.Count(r + 1), size, TextAnchor.End);
        }

        foreach (var port in board.Ports)
        {
            draft.Add(SheetDraft.Ports, new Primitive.Disc("port-plugged", port.Centre, board.PortDiameterMm / 2));
        }

        foreach (var zone in shop.Zones)
        {
            draft.AddBox(SheetDraft.Zones, "board", zone.Area);
        }

        foreach (var obstacle in board.Obstacles)
        {
            draft.Add(SheetDraft.Obstacles, obstacle.Shape switch
            {
                ObstacleShape.Disc d => new Primitive.Disc("obstacle", d.Centre, d.DiameterMm / 2),
                ObstacleShape.Rectangle r => new Primitive.Area("obstacle", [SheetDraft.RingOf(r.Extent)]),
                _ => throw new ArgumentOutOfRangeException(nameof(shop), obstacle.Shape, "Unknown shape."),
            });
        }
    }

    private static void Part(SheetDraft draft, PartShape shape)
    {
        draft.Add(SheetDraft.Part, new Primitive.Area("part-edge", [shape.Outline, .. shape.Holes]));
        foreach (var ring in shape.Blank)
        {
            draft.Add(SheetDraft.Blank, new Primitive.Area("blank-edge", [ring]));
        }

        var keepOuts = shape.Defects.Concat(shape.Avoided.Select(a => a.Ring))
            .Concat(shape.Hazards.SelectMany(h => (h.Shown.IsEmpty ? h.Area : h.Shown).Boundary));
        foreach (var ring in keepOuts)
        {
            draft.Add(SheetDraft.Obstacles, new Primitive.Area("cut-edge", [ring]));
        }
    }

    private static void Pods(SheetDraft draft, GridBoard board, Layout layout)
    {
        for (var i = 0; i < layout.Pods.Length; i++)
        {
            var pod = layout.Pods[i];
            PodDrawing.Body(draft, SheetDraft.Pods, "pod", pod);
            PodDrawing.Seal(draft, pod);
            var size = 0.2 * Math.Min(pod.ExtentXMm, pod.ExtentYMm);
            draft.AddText(SheetDraft.Labels, "pod-id", pod.Centre, LayoutFiling.PodId(i), size, TextAnchor.Middle);
        }

        foreach (var port in LayoutFiling.OpenPorts(layout))
        {
            draft.Add(SheetDraft.OpenPorts, new Primitive.Disc("port-open-ring", port.Centre, board.PortDiameterMm / 2));
        }
    }
}
