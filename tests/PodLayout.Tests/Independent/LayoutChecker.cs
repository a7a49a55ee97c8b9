using System.Collections.Immutable;
using System.Globalization;
using PodLayout.Geometry;
using PodLayout.Jobs;
using PodLayout.Layouts;
using PodLayout.Parts;
using PodLayout.Shops;

namespace PodLayout.Tests.Independent;

/// <summary>
/// Checks a layout against every rule, sharing nothing with the model but its data types: other arithmetic, other methods.
/// </summary>
public static class LayoutChecker
{
    public static CheckReport Check(PlanResult result)
    {
        var report = new CheckReport();
        var (job, layout) = (result.Job, result.Layout);
        if (layout is null)
        {
            report.Require("layout", false, "there is none");
            return report;
        }

        var (angle, zero) = (layout.Placement.AngleDeg, layout.Placement.ZeroOnBoard);
        var part = job.Part.Shape;
        ImmutableArray<ImmutableArray<Point2>> wood =
            [.. part.Holes.Prepend(part.Outline).Select(r => Plane.Lay(r.Points, angle, zero))];
        ImmutableArray<ImmutableArray<Point2>> defects = [.. part.Defects.Select(d => Plane.Lay(d.Points, angle, zero))];
        CheckPlacement(report, job.Placement, layout);
        CheckPods(report, job, layout);
        CheckApart(report, job.Shop, layout);
        CheckWood(report, job, layout, wood, defects);
        CheckHazards(report, job, layout);
        CheckFloors(report, job, layout);
        CheckPieces(report, job, layout);
        CheckPorts(report, job.Shop.Board, layout);
        CheckSupport(report, job, layout, wood);
        report.Require(
            "proof", layout.Proof.FewestPodsPossible <= layout.Pods.Length, "the bound is above the number of pods");
        return report;
    }

    private static string Name(int index) => "P" + (index + 1).ToString(CultureInfo.InvariantCulture);

    private static void CheckPlacement(CheckReport report, PlacementWish wish, Layout layout)
    {
        var placement = layout.Placement;
        report.Require("placement", wish switch
        {
            PlacementWish.Given given => Plane.Span(given.ZeroOnBoard, placement.ZeroOnBoard) < CheckReport.ToleranceMm
                && given.AngleDeg == placement.AngleDeg,
            PlacementWish.SearchInterval interval => placement.AngleDeg >= interval.FromDeg && placement.AngleDeg <= interval.ToDeg,
            PlacementWish.Search search => search.AnglesDeg.Contains(placement.AngleDeg),
            _ => false,
        }, "the part does not lie as was asked");
    }

    private static void CheckPods(CheckReport report, Job job, Layout layout)
    {
        var (shop, board) = (job.Shop, job.Shop.Board);
        var avoided = job.Part.Shape.Avoided
            .Select(a => Plane.Lay(a.Ring.Points, layout.Placement.AngleDeg, layout.Placement.ZeroOnBoard)).ToList();
        for (var i = 0; i < layout.Pods.Length; i++)
        {
            var pod = layout.Pods[i];
            var body = Stand.BodyOf(pod);
            report.Require("type", shop.Pods.Contains(pod.Type), $"{Name(i)} is of no type in stock");
            report.Require("turn", !pod.Turned || pod.Type.MayTurn, $"{Name(i)} is turned, its type may not be");
            double left = body.X - body.HalfX, low = body.Y - body.HalfY;
            report.Measure("lattice", -Math.Abs(left - (board.FirstGroove.X + pod.Column * board.PitchMm)), 0, $"{Name(i)} (column)");
            report.Measure("lattice", -Math.Abs(low - (board.FirstGroove.Y + pod.Row * board.PitchMm)), 0, $"{Name(i)} (row)");
            report.Require("lattice", pod.Column >= 0 && pod.Row >= 0, $"{Name(i)} stands before the first groove");
            var area = board.UsableArea;
            var inside = Math.Min(
                Math.Min(left - area.MinX, low - area.MinY),
                Math.Min(area.MaxX - body.X - body.HalfX, area.MaxY - body.Y - body.HalfY));
            report.Measure("usable area", inside, 0, Name(i));
            foreach (var spot in avoided)
            {
                report.Measure("obstacle", OutsideBy(body, spot), 0, $"{Name(i)} to a spot to avoid");
            }

            foreach (var obstacle in board.Obstacles)
            {
                report.Measure("obstacle", body.Apart(Stand.Of(obstacle.Shape)), obstacle.ClearanceMm, $"{Name(i)} to {obstacle.Name}");
            }
        }

        foreach (var kept in job.Keep)
        {
            report.Require(
                "kept", layout.Pods.Any(p => p.Type.Name == kept.Type.Name && (p.Column, p.Row) == (kept.Column, kept.Row)
                    && (p.Turned == kept.Turned || p.Type.Footprint.ExtentXMm == p.Type.Footprint.ExtentYMm)),
                string.Create(CultureInfo.InvariantCulture, $"no {kept.Type.Name} at column {kept.Column}, row {kept.Row}"));
        }

        foreach (var used in layout.Pods.GroupBy(p => p.Type.Name))
        {
            report.Require("stock", used.Count() <= used.First().Type.Stock, $"more {used.Key} than there are");
        }

        report.Require("height", layout.Pods.Select(p => p.Type.HeightMm).Distinct().Count() <= 1, "pods of different heights");
        var order = layout.Pods.Select(p => (p.Row, p.Column)).ToList();
        report.Require("order", order.SequenceEqual(order.Order()), "pods are not in order of row, then column");
    }

    private static void CheckApart(CheckReport report, Shop shop, Layout layout)
    {
        var bodies = layout.Pods.Select(Stand.BodyOf).ToList();
        for (var i = 0; i < bodies.Count; i++)
        {
            for (var k = i + 1; k < bodies.Count; k++)
            {
                report.Measure("apart", bodies[i].Apart(bodies[k]), shop.PodGapMm, $"{Name(i)} to {Name(k)}");
            }
        }
    }

    private static void CheckWood(
        CheckReport report, Job job, Layout layout, ImmutableArray<ImmutableArray<Point2>> part,
        ImmutableArray<ImmutableArray<Point2>> defects)
    {
        var margins = job.Margins;
        for (var i = 0; i < layout.Pods.Length; i++)
        {
            var body = Stand.BodyOf(layout.Pods[i]);
            var seal = body.Inset(layout.Pods[i].Type.SealInsetAboveMm);
            var piece = PieceOver(job, layout, layout.Pods[i]);
            var wood = piece is null ? part : PieceRings(piece, layout);
            var skinned = piece is null ? job.Part.Shape.Skinned : [];
            var spoils = wood.Skip(1).Concat(defects).ToList();
            report.Measure("seal in wood", InsideBy(seal, wood[0]), margins.SealMarginMm, $"{Name(i)} to the outline");
            foreach (var ring in spoils)
            {
                report.Measure("seal in wood", OutsideBy(seal, ring), margins.SealMarginMm, $"{Name(i)} to a hole or defect");
            }

            // Beside a skin that is left no tool comes through.
            foreach (var ring in Enumerable.Range(0, wood.Length).Where(r => !skinned.Contains(r)))
            {
                report.Measure(
                    "body clear of cuts", ring == 0 ? InsideBy(body, wood[0]) : OutsideBy(body, wood[ring]), margins.CutClearanceMm,
                    $"{Name(i)} to edge {ring}");
            }
        }
    }

    private static void CheckHazards(CheckReport report, Job job, Layout layout)
    {
        foreach (var hazard in job.Part.Shape.Hazards.Where(h => !h.Area.IsEmpty))
        {
            ImmutableArray<ImmutableArray<Point2>> rings =
                [.. hazard.Area.Boundary.Select(r => Plane.Lay(r.Points, layout.Placement.AngleDeg, layout.Placement.ZeroOnBoard))];
            for (var i = 0; i < layout.Pods.Length; i++)
            {
                var body = Stand.BodyOf(layout.Pods[i]);
                if (hazard.KeepsBodiesOff)
                {
                    report.Measure("body clear of cuts", Off(body), job.Margins.CutClearanceMm, $"{Name(i)} to {hazard.Name}");
                }

                if (hazard.KeepsSealsOff)
                {
                    report.Measure("seal in wood", Off(body.Inset(layout.Pods[i].Type.SealInsetAboveMm)), job.Margins.SealMarginMm, $"{Name(i)} to {hazard.Name}");
                }
            }

            double Off(Stand stand) => OffRings(stand, rings);
        }
    }

    private static void CheckFloors(CheckReport report, Job job, Layout layout)
    {
        foreach (var floor in job.Part.Shape.WeakFloors)
        {
            ImmutableArray<ImmutableArray<Point2>> rings =
                [.. floor.Area.Boundary.Select(r => Plane.Lay(r.Points, layout.Placement.AngleDeg, layout.Placement.ZeroOnBoard))];
            for (var i = 0; i < layout.Pods.Length; i++)
            {
                var type = layout.Pods[i].Type;
                if (floor.Pulls.Any(p => p.Pod == type.Name))
                {
                    report.Measure("floors bear", OffRings(Stand.BodyOf(layout.Pods[i]).Inset(type.SealInsetAboveMm), rings), 0, $"{Name(i)} to {floor.Name}");
                }
            }
        }
    }

    private static double OffRings(Stand stand, ImmutableArray<ImmutableArray<Point2>> rings)
    {
        var distance = rings.Min(stand.ToLine);
        var isInside = rings.Count(r => Plane.IsInside(r, new(stand.X, stand.Y))) % 2 == 1;
        return isInside ? -Math.Abs(distance) - stand.HalfX : distance;
    }

    private static void CheckPieces(CheckReport report, Job job, Layout layout)
    {
        foreach (var piece in job.Part.Shape.Held)
        {
            report.Require("piece held", layout.Pods.Any(p => PieceOver(job, layout, p) == piece), piece.Name + " has no pod");
        }

        foreach (var pod in layout.Pods)
        {
            report.Require("piece named", pod.Holds == PieceOver(job, layout, pod)?.Name, $"{pod.Holds} is named wrongly");
        }
    }

    private static HeldPiece? PieceOver(Job job, Layout layout, PlacedPod pod) => job.Part.Shape.Held.FirstOrDefault(piece =>
        PieceRings(piece, layout).Count(r => Plane.IsInside(r, pod.Centre)) % 2 == 1);

    private static ImmutableArray<ImmutableArray<Point2>> PieceRings(HeldPiece piece, Layout layout) =>
        [.. piece.Holes.Prepend(piece.Outline).Select(r => Plane.Lay(r.Points, layout.Placement.AngleDeg, layout.Placement.ZeroOnBoard))];

    // What supports the part: bodies under it, but only as far as their seals where they pass an edge with a skin.
    private static List<ImmutableArray<Point2>> Faces(Job job, Layout layout, ImmutableArray<ImmutableArray<Point2>> wood) =>
    [
        .. layout.Pods.Where(p => PieceOver(job, layout, p) is null).Select(pod =>
        {
            var body = Stand.BodyOf(pod);
            var isPast = job.Part.Shape.Skinned.Any(r =>
                (r == 0 ? InsideBy(body, wood[0]) : OutsideBy(body, wood[r])) < job.Margins.CutClearanceMm - CheckReport.ToleranceMm);
            return (isPast ? body.Inset(pod.Type.SealInsetAboveMm) : body).Polygon();
        }),
    ];

    private static double InsideBy(Stand stand, ImmutableArray<Point2> ring)
    {
        var distance = stand.ToLine(ring);
        return Plane.IsInside(ring, new(stand.X, stand.Y)) ? distance : -Math.Abs(distance) - stand.HalfX;
    }

    private static double OutsideBy(Stand stand, ImmutableArray<Point2> ring)
    {
        var distance = stand.ToLine(ring);
        return Plane.IsInside(ring, new(stand.X, stand.Y)) ? -Math.Abs(distance) - stand.HalfX : distance;
    }

    private static void CheckPorts(CheckReport report, GridBoard board, Layout layout)
    {
        var radius = board.PortDiameterMm / 2;
        for (var i = 0; i < layout.Pods.Length; i++)
        {
            var pod = layout.Pods[i];
            var body = Stand.BodyOf(pod);
            var sealedIn = body.Inset(pod.Type.SealInsetBelowMm);
            report.Require("ports enough", pod.OpenPorts.Length >= pod.Type.PortsNeeded, $"{Name(i)} has too few open ports");
            foreach (var port in pod.OpenPorts)
            {
                report.Require("port known", board.Ports.Contains(port), $"{port.Name} is not on the board");
                report.Require("port works", port.State == PortState.Working, $"{port.Name} under {Name(i)} does not work");
                report.Measure("port in seal", sealedIn.Depth(port.Centre) - radius, board.PortMarginMm, $"{port.Name} under {Name(i)}");
            }

            var open = layout.Pods.SelectMany(p => p.OpenPorts).Concat(board.Ports.Where(p => p.State == PortState.StuckOpen));
            foreach (var port in open.Except(pod.OpenPorts))
            {
                // Inside it must be by the port margin, as the pod's own are: else the seal may stand on its edge.
                var clear = Math.Max(sealedIn.Depth(port.Centre) - board.PortMarginMm, -body.Depth(port.Centre)) - radius;
                report.Measure("no port under a seal line", clear, 0, $"{port.Name} near {Name(i)}");
            }
        }

        var twice = layout.Pods.SelectMany(p => p.OpenPorts).GroupBy(p => p.Name).Where(g => g.Count() > 1).Select(g => g.Key);
        report.Require("port once", !twice.Any(), $"used by two pods: {string.Join(", ", twice)}");
    }

    private static void CheckSupport(
        CheckReport report, Job job, Layout layout, ImmutableArray<ImmutableArray<Point2>> wood)
    {
        var rules = job.Support;
        var grain = job.Part.GrainDeg + layout.Placement.AngleDeg;
        var edge = new WoodPaths(wood, rules.OverhangAlongGrainMm, rules.OverhangAcrossGrainMm, grain);
        var edgeTolerance = 1 / Math.Min(rules.OverhangAlongGrainMm, rules.OverhangAcrossGrainMm);
        var faces = Faces(job, layout, wood);
        CheckPoints(report, "edge point", layout, faces, PointsToSupport.OnEdges(job.Part.Shape, rules.EdgeStepMm), edge, edgeTolerance, SupportLimit.Edge);
        if (rules.InteriorSpanMm is { } span)
        {
            var inside = new WoodPaths(wood, span, span, 0);
            CheckPoints(report, "interior point", layout, faces, PointsToSupport.Inside(job.Part.Shape, rules), inside, 1 / span, SupportLimit.Interior);
        }

        var near = new WoodPaths(wood, rules.ThinFloorSpanMm, rules.ThinFloorSpanMm, 0);
        CheckPoints(
            report, "thin floor point", layout, faces, PointsToSupport.OnFloors(job.Part.Shape, rules), near, 1 / rules.ThinFloorSpanMm,
            SupportLimit.ThinFloor);
    }

    private static void CheckPoints(
        CheckReport report, string rule, Layout layout, List<ImmutableArray<Point2>> pods, List<Point2> points, WoodPaths paths, double perMm, SupportLimit limit)
    {
        // A round pod counts as a polygon inside it in the model: up to 0.1 mm on the side of less support.
        const double roundedMm = 0.12;
        var listed = layout.SupportPoints.Where(p => p.Limit == limit).ToList();
        // What the plan left unsupported is not listed: how much that is, and that it could not be less, is looked at elsewhere.
        var leaves = layout.Proof.UnsupportedMm > 0;
        report.Require(rule + "s listed", leaves ? listed.Count <= points.Count : listed.Count == points.Count,
            string.Create(CultureInfo.InvariantCulture, $"{listed.Count} are listed, there are {points.Count}"));
        foreach (var point in points)
        {
            var who = string.Create(CultureInfo.InvariantCulture, $"({point.X:0.###}, {point.Y:0.###})");
            var entry = listed.FirstOrDefault(p => Plane.Span(p.OnPart, point) <= CheckReport.ToleranceMm);
            if (entry is null && leaves)
            {
                continue;
            }

            var share = paths.ShareOfLimit(Plane.Lay(point, layout.Placement.AngleDeg, layout.Placement.ZeroOnBoard), pods);
            report.Measure(rule + " within its limit", -share, -1, who, CheckReport.ToleranceMm * perMm);
            report.Require(rule + "s listed", entry is not null, who + " is not listed");
            if (entry is not null)
            {
                var off = entry.ShareOfLimit - share;
                report.Require(
                    rule + " share", off >= -CheckReport.ToleranceMm * perMm - 1e-4
                        && off <= (CheckReport.ToleranceMm + roundedMm) * perMm + 1e-4,
                    string.Create(CultureInfo.InvariantCulture, $"{who} is listed with {entry.ShareOfLimit:0.####}, it has {share:0.####}"));
            }
        }
    }
}
