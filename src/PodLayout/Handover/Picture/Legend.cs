using PodLayout.Geometry;
using PodLayout.Jobs;
using PodLayout.Layouts;
using PodLayout.Parts;
using PodLayout.Shops;

namespace PodLayout.Handover.Picture;

/// <summary>What the signs mean: only those that are in the drawing.</summary>
internal static class Legend
{
    /// <param name="result">What is drawn.</param>
    /// <param name="grainDeg">The grain on the board.</param>
    /// <param name="names">What stands in the pods for each type's name.</param>
    /// <param name="drawn">The drawing; null where it is not drawn yet: then all that may be in it.</param>
    public static IEnumerable<PanelItem> Items(
        PlanResult result, double grainDeg, IReadOnlyDictionary<string, string> names, SheetDraft? drawn) => Occurring(drawn,
    [
        .. Pods(result.Layout, names), .. Kept(result.Job), .. Ports(result), .. Board(result.Job.Shop.Board), .. Part(result, grainDeg),
        .. Support(result), .. HoldingDrawing.Signs(result.Layout), .. Leaders(result, drawn),
    ]);

    /// <summary>The same for the picture that a board is set up from, which does not show the overhang.</summary>
    public static IEnumerable<PanelItem> ForSetup(
        PlanResult result, double grainDeg, IReadOnlyDictionary<string, string> names, SheetDraft? drawn) => Occurring(drawn,
    [
        .. Pods(result.Layout, names), .. FaultDrawing.Signs(drawn), .. Ports(result), .. Before(result.Job), .. Board(result.Job.Shop.Board), .. Zones(result.Job.Shop),
        .. Part(result, grainDeg), .. Unsupported(result), Mark(), .. Leaders(result, drawn),
    ]);

    private static IEnumerable<PanelItem> Unsupported(PlanResult result)
    {
        if (!result.Unsupported.IsEmpty)
        {
            yield return PanelItem.Sign(
                result.Layout is null ? "stretch that no pod can support" : "edge that stays unsupported", "unsupported", (draft, at) => Stroke(draft, at, "unsupported"));
            yield return PanelItem.Sign("spot that stays unsupported", "unsupported-spot", (draft, at) =>
                Symbols.Cross(draft, SheetDraft.Panel, "unsupported-spot", at, 1.2 * draft.Scale));
        }
    }

    private static IEnumerable<PanelItem> Occurring(SheetDraft? drawn, IEnumerable<PanelItem> items) =>
        items.Where(i => drawn is null || i.Explains is not { } style || drawn.Shows(style));

    private static IEnumerable<PanelItem> Leaders(PlanResult result, SheetDraft? drawn)
    {
        yield return PanelItem.Sign("pointer line", "leader", (draft, at) => Stroke(draft, at, "leader"));
        if (result.Layout is { } layout && drawn is not { PortsWithoutName: 0 })
        {
            var count = drawn?.PortsWithoutName ?? layout.Pods.Sum(p => p.OpenPorts.Length);
            yield return PanelItem.Sign(
                $"open, but no room for its name: {(count == 1 ? "one port" : CsvText.Count(count) + " ports")}, named in the list of ports", "port-open-ring", (draft, at) =>
                    Symbols.OpenPort(draft, SheetDraft.Panel, at, 1.1 * draft.Scale));
        }

        var pieces = drawn?.PiecesWithoutName ?? result.Job.Offcuts.Length;
        if (pieces > 0)
        {
            yield return PanelItem.Words($"no room for the names of {(pieces == 1 ? "one loose piece" : CsvText.Count(pieces) + " loose pieces")}", 2).First();
        }
    }

    private static IEnumerable<PanelItem> Before(Job job)
    {
        if (job.Standing is not null)
        {
            yield return PanelItem.Sign("port that is open now: plug it", "port-to-plug", (draft, at) =>
                Symbols.PortToPlug(draft, SheetDraft.Panel, at, 1.1 * draft.Scale));
        }

        if (job.Standing is { Pods.IsEmpty: false })
        {
            yield return PanelItem.Sign("grey: pod that stands already and stays", "pod-stays", (draft, at) =>
            {
                draft.AddBox(SheetDraft.Panel, "pod", Around(draft, at, 3.2, 1.6));
                draft.AddBox(SheetDraft.Panel, "pod-stays", Around(draft, at, 2.9, 1.3));
            });
            yield return PanelItem.Sign("pod on the board now: take up", "before", (draft, at) =>
            {
                var box = Around(draft, at, 3.2, 1.6);
                draft.AddBox(SheetDraft.Panel, "before", box);
                Symbols.Cross(draft, SheetDraft.Panel, "before-cross", box.Centre, 1.1 * draft.Scale);
            });
        }
    }

    private static IEnumerable<PanelItem> Zones(Shop shop)
    {
        if (!shop.Zones.IsEmpty)
        {
            yield return PanelItem.Sign("zone of the table, with its valve", "zone", (draft, at) => Stroke(draft, at, "zone"));
        }
    }

    private static PanelItem Mark() => PanelItem.Sign("place on the edge as it is laid: see the table of marks", "stretch-flag", (draft, at) =>
        Symbols.Flag(draft, SheetDraft.Panel, at, "E1"));

    private static IEnumerable<PanelItem> Pods(Layout? layout, IReadOnlyDictionary<string, string> names)
    {
        if (layout is null)
        {
            yield break;
        }

        var type = layout.Pods.Any(p => names[p.Type.Name].Length > 0) ? ", type" : "";
        var isSealed = layout.Pods.Any(p => p.Type.SealInsetAboveMm > 0);
        yield return PanelItem.Sign($"pod: number in placing order{type}{(isSealed ? "; dashed: upper seal" : "")}", "pod", (draft, at) =>
        {
            draft.AddBox(SheetDraft.Panel, "pod", Around(draft, at, 3.2, 1.6));
            if (isSealed)
            {
                draft.AddBox(SheetDraft.Panel, "seal", Around(draft, at, 2.4, 0.9));
            }
        });
        if (layout.Pods.Any(p => p.Turned))
        {
            yield return PanelItem.Sign("filled corner, in the pod or by its number: turned by a quarter", "pod-turned", (draft, at) =>
            {
                var box = Around(draft, at, 3.2, 1.6);
                draft.AddBox(SheetDraft.Panel, "pod", box);
                Symbols.Turned(draft, SheetDraft.Panel, new(box.MinX, box.MaxY), new(2 * draft.Scale, -2 * draft.Scale));
            });
        }
    }

    private static IEnumerable<PanelItem> Kept(Job job)
    {
        if (!job.Keep.IsEmpty)
        {
            yield return PanelItem.Sign(
                "pod to be kept, as asked", "pod-kept", (draft, at) => draft.AddBox(SheetDraft.Panel, "pod-kept", Around(draft, at, 3.2, 1.6)));
        }
    }

    private static IEnumerable<PanelItem> Ports(PlanResult result)
    {
        if (result.Layout is not null)
        {
            yield return PanelItem.Sign("port to open", "port-open-ring", (draft, at) => Symbols.OpenPort(draft, SheetDraft.Panel, at, 1.1 * draft.Scale));
        }

        var words = new (PortState State, string Words)[]
        {
            (PortState.Working, "port, plugged"),
            (PortState.Dead, "dead port: brings no vacuum"),
            (PortState.StuckOpen, "port that cannot be plugged"),
        };
        var open = result.Layout is { } layout ? LayoutFiling.OpenPorts(layout).ToHashSet() : [];
        foreach (var (state, text) in words.Where(w => result.Job.Shop.Board.Ports.Any(p => p.State == w.State && !open.Contains(p))))
        {
            yield return PanelItem.Sign(text, state == PortState.Working ? "port-plugged" : "port-dead", (draft, at) => Symbols.Port(draft, SheetDraft.Panel, at, 1.1 * draft.Scale, state));
        }
    }

    private static IEnumerable<PanelItem> Board(GridBoard board)
    {
        var words = new (ObstacleKind Kind, string Words)[]
        {
            (ObstacleKind.Pin, "locator pin"),
            (ObstacleKind.Stop, "stop or clamp"),
            (ObstacleKind.Damage, "damaged spot"),
            (ObstacleKind.Avoided, "no pods here, as asked"),
        };
        foreach (var (kind, text) in words.Where(w => board.Obstacles.Any(o => o.Kind == w.Kind)))
        {
            var isApart = kind != ObstacleKind.Avoided && board.Obstacles.Any(o => o.Kind == kind && o.ClearanceMm > 0);
            yield return PanelItem.Sign(isApart ? text + "; dotted: keep clear" : text, kind == ObstacleKind.Avoided ? "avoided" : "obstacle", (draft, at) => BoardDrawing.ObstacleSign(
                draft, SheetDraft.Panel, kind, kind == ObstacleKind.Pin
                    ? new ObstacleShape.Disc(at, 3 * draft.Scale)
                    : new ObstacleShape.Rectangle(Around(draft, at, 3.2, 1.4))));
        }

        if (board.UsableArea != new Box2(0, 0, board.WidthMm, board.LengthMm))
        {
            yield return PanelItem.Sign("usable area of the board", "usable", (draft, at) => Stroke(draft, at, "usable"));
        }
    }

    private static IEnumerable<PanelItem> Part(PlanResult result, double grainDeg)
    {
        yield return PanelItem.Sign(
            result.Job.Part.Shape.Holes.IsEmpty ? "outline of the part" : "outline of the part and of its holes", "part-edge", (draft, at) => Stroke(draft, at, "part-edge"));
        yield return PanelItem.Sign("grain of the part as it lies", "grain-arrow", (draft, at) =>
        {
            var u = draft.Scale;
            var direction = Turn.FromDegrees(grainDeg).Apply(new(1, 0));
            var reach = direction * (Math.Min(4.5, 2.1 / Math.Max(Math.Abs(direction.Y), 0.01)) * u);
            Symbols.Arrow(draft, SheetDraft.Panel, "grain-arrow", "grain-head", at - reach, at + reach, true);
        });
        if (!result.Job.Part.Shape.Blank.IsEmpty)
        {
            yield return PanelItem.Sign("edge of the blank, as it is laid down", "blank-edge", (draft, at) => Stroke(draft, at, "blank-edge"));
        }

        if (!result.Job.Part.Shape.LeftOutLines.IsEmpty)
        {
            yield return PanelItem.Sign("line of the drawing that was left out: no edge of the part", "left-out", (draft, at) => Stroke(draft, at, "left-out"));
        }

        if (!result.Job.Part.Shape.Avoided.IsEmpty && !result.Job.Shop.Board.Obstacles.Any(o => o.Kind == ObstacleKind.Avoided))
        {
            yield return PanelItem.Sign("no pods here, as asked", "avoided", (draft, at) =>
                BoardDrawing.AvoidedSign(draft, SheetDraft.Panel, SheetDraft.RingOf(Around(draft, at, 3.2, 1.4))));
        }

        if (!result.Job.Part.Shape.Defects.IsEmpty)
        {
            yield return PanelItem.Sign("marked defect: no seal here", "defect-edge", (draft, at) =>
            {
                var box = SheetDraft.RingOf(Around(draft, at, 3.2, 1.4));
                draft.Add(SheetDraft.Panel, new Primitive.Hatch("defect-hatch", [box], grainDeg + 60, 0.8 * draft.Scale));
                draft.Add(SheetDraft.Panel, new Primitive.Area("defect-edge", [box]));
            });
        }

        foreach (var item in Cuts(result.Job.Part.Shape))
        {
            yield return item;
        }

        if (result.Job.ProgramZero is not null)
        {
            yield return PanelItem.Sign("program zero: the point of the triangle", "zero", (draft, at) =>
                Symbols.Zero(draft, SheetDraft.Panel, at - new Point2(0, 1.5 * draft.Scale)));
        }
    }

    private static IEnumerable<PanelItem> Support(PlanResult result)
    {
        foreach (var item in Unsupported(result))
        {
            yield return item;
        }

        if (result.Layout is null)
        {
            yield break;
        }

        if (result.Layout.SupportPoints.Any(p => p.IsEdge))
        {
            yield return PanelItem.Sign("tick at the edge: overhang as a share of its limit, heavy from 85 %", "part-edge", Ticks);
        }

        if (SupportDrawing.ShowsInterior(result.Layout))
        {
            yield return PanelItem.Sign("point inside that must be supported too", "part-edge", (draft, at) =>
            {
                var half = SupportDrawing.PlusMm * draft.Scale;
                draft.AddLine(SheetDraft.Panel, "support-low", at - new Point2(half, 0), at + new Point2(half, 0));
                draft.AddLine(SheetDraft.Panel, "support-low", at - new Point2(0, half), at + new Point2(0, half));
            });
        }

        yield return PanelItem.Sign("limit of overhang around the worst point", "limit", (draft, at) =>
            draft.Add(SheetDraft.Panel, new Primitive.Ellipse("limit", at, 4 * draft.Scale, 1.7 * draft.Scale, 0)));
    }

    private static IEnumerable<PanelItem> Cuts(PartShape shape)
    {
        if (shape.Hazards.Any(h => h.KeepsBodiesOff && !h.Shown.IsEmpty))
        {
            yield return PanelItem.Sign("cut below the underside: no pod here", "cut-edge", (draft, at) =>
            {
                var box = SheetDraft.RingOf(Around(draft, at, 3.2, 1.4));
                draft.Add(SheetDraft.Panel, new Primitive.Hatch("cut-hatch", [box], 45, 1.1 * draft.Scale));
                draft.Add(SheetDraft.Panel, new Primitive.Area("cut-edge", [box]));
            });
        }

        if (!shape.Floors.IsEmpty)
        {
            yield return PanelItem.Sign("thin floor left here: a pod stands close by", "floor-edge", (draft, at) =>
            {
                var box = SheetDraft.RingOf(Around(draft, at, 3.2, 1.4));
                draft.Add(SheetDraft.Panel, new Primitive.Hatch("floor-hatch", [box], 0, 1.4 * draft.Scale));
                draft.Add(SheetDraft.Panel, new Primitive.Area("floor-edge", [box]));
            });
        }

        if (!shape.Skinned.IsEmpty)
        {
            yield return PanelItem.Sign("edge held by a thin skin: pods may reach past it, seals not", "skin-edge", (draft, at) =>
            {
                var box = SheetDraft.RingOf(Around(draft, at, 3.2, 1.4));
                PartDrawing.SkinSign(draft, SheetDraft.Panel, [box]);
            });
        }

        if (!shape.Held.IsEmpty)
        {
            yield return PanelItem.Sign("loose piece of the blank, held by pods of its own", "piece-edge", (draft, at) =>
            {
                var box = Around(draft, at, 3.2, 1.4);
                draft.AddBox(SheetDraft.Panel, "part-fill", box);
                draft.AddBox(SheetDraft.Panel, "piece-edge", box);
            });
        }

        if (shape.Hazards.Any(h => !h.TipPaths.IsEmpty))
        {
            yield return PanelItem.Sign("way of a tool's tip below the underside", "tip", (draft, at) => Stroke(draft, at, "tip"));
        }

        if (shape.Hazards.Any(h => !h.KeepsBodiesOff && !h.Shown.IsEmpty))
        {
            yield return PanelItem.Sign("pocket or groove in the underside: no seal here", "defect-edge", (draft, at) =>
            {
                var box = SheetDraft.RingOf(Around(draft, at, 3.2, 1.4));
                draft.Add(SheetDraft.Panel, new Primitive.Hatch("cut-hatch", [box], 135, 1.1 * draft.Scale));
                draft.Add(SheetDraft.Panel, new Primitive.Area("defect-edge", [box]));
            });
        }
    }

    private static void Ticks(SheetDraft draft, Point2 at)
    {
        var u = draft.Scale;
        var foot = at - new Point2(4 * u, 1.2 * u);
        draft.AddLine(SheetDraft.Panel, "part-edge", foot, foot + new Point2(8 * u, 0));
        foreach (var (x, share) in new[] { (1.0, 0.3), (2.5, 0.5), (4.0, 0.7), (5.5, 0.9), (7.0, 1.0) })
        {
            var start = foot + new Point2(x * u, 0);
            draft.AddLine(
                SheetDraft.Panel, SupportDrawing.StyleOf(share), start, start + new Point2(0, share * SupportDrawing.TickMm * u));
        }
    }

    private static void Stroke(SheetDraft draft, Point2 at, string style) =>
        draft.AddLine(SheetDraft.Panel, style, at - new Point2(4.5 * draft.Scale, 0), at + new Point2(4.5 * draft.Scale, 0));

    private static Box2 Around(SheetDraft draft, Point2 at, double halfX, double halfY) => new(
        at.X - halfX * draft.Scale, at.Y - halfY * draft.Scale, at.X + halfX * draft.Scale, at.Y + halfY * draft.Scale);
}
