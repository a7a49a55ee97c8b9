using System.Collections.Immutable;
using PodLayout.Findings;
using PodLayout.Geometry;
using PodLayout.Handover.Format;
using PodLayout.Jobs;
using PodLayout.Layouts;
using PodLayout.Parts;
using PodLayout.Shops;

namespace PodLayout.Handover;

/// <summary>From the external form back to the records of the program.</summary>
internal static class LayoutUnfiling
{
    public static PlanResult Plan(LayoutFile file)
    {
        var shop = ShopOf(file.Shop);
        var rules = file.Rules;
        var job = new Job(
            file.Job,
            new(file.Part.Name, ShapeOf(file.Part.InDrawing), file.Part.ThicknessMm, file.Part.Species, file.Part.GrainDeg),
            shop,
            new(rules.SealMarginMm, rules.CutClearanceMm),
            new(
                rules.OverhangAlongGrainMm, rules.OverhangAcrossGrainMm, rules.InteriorSpanMm, rules.EdgeStepMm,
                rules.InteriorStepMm)
            {
                ThinFloorSpanMm = rules.ThinFloorSpanMm,
                MustSupportAll = rules.MustSupportAll == true,
            },
            file.Asked switch
            {
                { Given: { } given } => new PlacementWish.Given(Point(given.ZeroOnBoardMm), given.AngleDeg),
                { SearchAngle: { } interval } => new PlacementWish.SearchInterval(interval.FromDeg, interval.ToDeg),
                _ => new PlacementWish.Search(file.Asked.SearchAnglesDeg),
            })
        {
            Standing = file.Standing is not { } standing ? null : new(
                [.. standing.Pods.Select(p => new StandingPod(p.Type, p.Turned, p.ColumnFromDatum - 1, p.RowFromDatum - 1))],
                new(Point(standing.Placement.ZeroOnBoardMm), standing.Placement.AngleDeg))
            {
                OpenPorts = standing.OpenPorts,
            },
            ProgramZero = file.Program is { } program ? new(program.File, program.ZZero, Point(program.ZeroInDrawingMm))
            {
                Tools = [.. (program.Tools ?? []).Select(t => new ProgramTool(t.Number, t.DiameterMm, t.DeepestZMm))],
                IsInInches = program.IsInInches,
            } : null,
            Offcuts = [.. (file.Offcuts ?? []).Select(o => new Offcut(o.Name, Point(o.InsideMm), o.WidthMm, o.HeightMm, o.MassKg, o.IsLarge, o.IsAround))],
            IsBlankStated = file.IsBlankStated,
            Keep = [.. file.Asked.Keep.Select(k => new KeptPod(
                shop.Pods.First(t => t.Name == k.Pod), k.Turned, k.ColumnFromDatum - 1, k.RowFromDatum - 1))],
        };
        return new(
            file.Holding is { } held ? HoldingGivenFiling.Job(job, held) : job,
            LayoutOf(file, shop),
            [.. file.Unsupported.Select(s => new UnsupportedStretch(
                Point(s.FromMm), Point(s.ToMm), s.LengthMm, s.Limit, s.Cause, s.OverhangThatWouldDoMm)
                {
                    OverhangNowMm = s.OverhangNowMm,
                    Points = [.. (s.PointsMm ?? []).Select(Point)],
                })],
            [.. file.Findings.Select(f => new Finding(f.Code, f.Severity, f.Kind, f.Message, PlaceOf(f.Place), f.Remedy))],
            file.Interrupted,
            new(file.Work.Seats, file.Work.Points, file.Work.Placements))
        {
            Mark = LayoutMark.Of(file),
            WaysOut = [.. (file.WaysOut ?? []).Select(w => new WayOut(w.Words, w.UnsupportedMm, w.Pods, w.HoldingFactor))],
        };
    }

    private static Layout? LayoutOf(LayoutFile file, Shop shop)
    {
        if (file.Placement is not { } placement || file.Proof is not { } proof)
        {
            return null;
        }

        var types = shop.Pods.ToDictionary(t => t.Name, StringComparer.Ordinal);
        var ports = shop.Board.Ports.ToDictionary(p => p.Name, StringComparer.Ordinal);
        var indices = file.Pods.Select((p, i) => (p.Id, i)).ToDictionary(p => p.Id, p => p.i, StringComparer.Ordinal);
        return new(
            new(Point(placement.ZeroOnBoardMm), placement.AngleDeg),
            [.. file.Pods.Select(p => new PlacedPod(
                types[p.Type], p.Turned, p.ColumnFromDatum - 1, p.RowFromDatum - 1, Point(p.CentreMm),
                [.. p.OpenPorts.Select(name => ports[name])])
            {
                Holds = p.Holds,
            })],
            [.. (file.Support?.Points ?? []).Select(p => new SupportPoint(
                Point(p.OnPartMm), p.Limit, p.ShareOfLimit, indices[p.Pod]))],
            new(proof.Scope, proof.FewestPodsPossible, proof.PlacingToleranceMm, proof.Words)
            {
                UnsupportedMm = proof.UnsupportedMm ?? 0,
                LeastUnsupportedMm = proof.LeastUnsupportedMm ?? 0,
            })
        {
            Holding = file.Holding is { } held ? HoldingFiling.Report(held) : null,
        };
    }

    private static Point2 Point(XyMm p) => new(p.X, p.Y);

    private static Box2 Box(BoxEntry b) => new(b.MinXMm, b.MinYMm, b.MaxXMm, b.MaxYMm);

    private static Ring RingOf(ImmutableArray<XyMm> points) => new([.. points.Select(Point)]);

    private static PartShape ShapeOf(ShapeEntry s) =>
        new(RingOf(s.OutlineMm), [.. s.HolesMm.Select(RingOf)], [.. s.DefectsMm.Select(RingOf)])
        {
            Avoided = [.. s.Avoided.Select(a => new AvoidedSpot(a.Name, RingOf(a.RingMm)))],
            Hazards = [.. s.Hazards.Select(h => new Hazard(
                h.Name, h.Source, Region.Bounded(h.RingsMm.Select(RingOf)), h.KeepsBodiesOff, h.KeepsSealsOff))],
            Floors = [.. s.Floors.Select(f => new ThinFloor(f.Name, f.Source, Region.Bounded(f.RingsMm.Select(RingOf)), f.LeastMm))],
            WeakFloors = [.. (s.WeakFloors ?? []).Select(f => new WeakFloor(
                f.Name, f.Source, Region.Bounded(f.RingsMm.Select(RingOf)), f.LeftMm,
                [.. f.Pulls.Select(p => new FloorPull(p.Pod, p.VacuumKPa, p.SagMm ?? double.PositiveInfinity, p.StrengthFactor, p.NeededMm))]))],
            Skinned = s.Skinned,
            Held = [.. s.Held.Select(h => new HeldPiece(
                h.Name, RingOf(h.OutlineMm), [.. h.HolesMm.Select(RingOf)], h.MassKg, h.IsDemanded)
            {
                IsBalanced = h.IsBalanced,
            })],
            Blank = [.. (s.BlankMm ?? []).Select(RingOf)],
            LeftOutLines = [.. (s.LeftOutLinesMm ?? []).Select(l => l.Select(Point).ToImmutableArray())],
        };

    private static Shop ShopOf(ShopEntry s)
    {
        var b = s.Board;
        var board = new GridBoard(
            b.Name, b.WidthMm, b.LengthMm, b.PitchMm, b.GrooveWidthMm, b.GrooveDepthMm, Point(b.FirstGrooveMm),
            Box(b.UsableArea), [.. b.Ports.Select(p => new Port(p.Name, Point(p.CentreMm), p.State))], b.PortDiameterMm,
            b.PortMarginMm, [.. b.Obstacles.Select(o => new Obstacle(o.Name, o.Kind, ExtentOf(o), o.ClearanceMm))]);
        return new(s.Name, board, [.. s.PodTypes.Select(PodTypeOf)], s.PodGapMm)
        {
            Zones = [.. s.Zones.Select(z => new ValveZone(z.Name, Box(z.Area)))],
            WorksInInches = s.WorksInInches,
        };
    }

    private static ObstacleShape ExtentOf(ObstacleEntry o) => o.Extent is { } extent
        ? new ObstacleShape.Rectangle(Box(extent))
        : new ObstacleShape.Disc(Point(o.CentreMm!), o.DiameterMm!.Value);

    private static PodType PodTypeOf(PodTypeEntry t) => new(
        t.Name,
        t.DiameterMm is { } diameter
            ? new PodFootprint.Round(diameter)
            : new PodFootprint.Rectangle(t.WidthMm!.Value, t.LengthMm!.Value),
        t.SealInsetAboveMm, t.SealInsetBelowMm, t.HeightMm, t.MayTurn, t.Stock, t.PortsNeeded)
    {
        SealStiffnessNPerMm2 = t.SealStiffnessNPerMm2 is > 0 and < 1e6 and var stiffness ? stiffness : PodType.UsualSealStiffnessNPerMm2,
    };

    private static Place? PlaceOf(PlaceEntry? p) => p switch
    {
        null => null,
        { Option: { } option } => new Place.InOption(option),
        { JsonPath: { } path } => new Place.InJson(p.File ?? "", path),
        { AtMm: { } at } => new Place.InDrawing(p.File ?? "", at.X, at.Y, p.Entity),
        _ => new Place.InFile(p.File ?? "", p.Line),
    };
}
