using System.Collections.Immutable;
using PodLayout.Findings;
using PodLayout.Geometry;
using PodLayout.Handover.Format;
using PodLayout.Jobs;
using PodLayout.Layouts;
using PodLayout.Parts;
using PodLayout.Shops;

namespace PodLayout.Handover;

/// <summary>From the records of the program to the external form, rounded.</summary>
internal static class LayoutFiling
{
    public static string PodId(int index) => string.Create(System.Globalization.CultureInfo.InvariantCulture, $"P{index + 1}");

    /// <summary>What an open port is pointed at with, by its place in the list of open ports.</summary>
    public static string PortId(int index) => string.Create(System.Globalization.CultureInfo.InvariantCulture, $"O{index + 1}");

    public static LayoutFile File(PlanResult result)
    {
        var job = result.Job;

        // What follows from rounded figures is worked out from them: a file read and written again stays the same.
        var shape = Rounded(job.Part.Shape);
        var layout = result.Layout is { } found
            ? found with { Placement = new(Rounded(found.Placement.ZeroOnBoard), Deg(found.Placement.AngleDeg)) } : null;
        LayoutFile file = new(
            LayoutFile.SchemaWord,
            LayoutFile.CurrentVersion,
            job.Name,
            PartOf(job.Part with { Shape = shape }, layout?.Placement),
            new(
                Mm(job.Margins.SealMarginMm), Mm(job.Margins.CutClearanceMm), Mm(job.Support.OverhangAlongGrainMm),
                Mm(job.Support.OverhangAcrossGrainMm), Mm(job.Support.InteriorSpanMm), Mm(job.Support.EdgeStepMm),
                Mm(job.Support.InteriorStepMm), Mm(job.Support.ThinFloorSpanMm), job.Support.MustSupportAll ? true : null),
            AskedOf(job),
            ShopOf(job.Shop),
            job.ProgramZero is not { } zero ? null : new(
                zero.File, zero.Z, Xy(zero.InDrawing),
                zero.Tools.IsEmpty ? null : [.. zero.Tools.Select(t => new ProgramToolEntry(t.Number, Mm(t.DiameterMm), Mm(t.DeepestZMm)))], zero.IsInInches),
            job.Standing is not { } standing ? null : new(
                new(Xy(standing.LaidAt.ZeroOnBoard), Deg(standing.LaidAt.AngleDeg)),
                [.. standing.Pods.Select(p => new StandingPodEntry(p.Type, p.Turned, p.Column + 1, p.Row + 1))],
                standing.OpenPorts),
            layout is null ? null : PlacementOf(layout.Placement),
            [.. (layout?.Pods ?? []).Select(PodOf)],
            [.. OpenPorts(layout).Select(p => p.Name)],
            layout is null ? null : SupportOf(layout),
            layout?.Holding is { } held ? HoldingFiling.Entry(held, job) : null,
            layout is null ? null : new(
                layout.Proof.Scope, layout.Proof.FewestPodsPossible, Mm(layout.Proof.PlacingToleranceMm), layout.Proof.Words,
                layout.Proof.UnsupportedMm > 0 ? Mm(layout.Proof.UnsupportedMm) : null, layout.Proof.UnsupportedMm > 0 ? Mm(layout.Proof.LeastUnsupportedMm) : null),
            [.. result.Unsupported.Select(StretchOf)],
            result.Interrupted,
            new(result.Work.Seats, result.Work.Points, result.Work.Placements),
            [.. result.Findings.Select(FindingOf)],
            Cautions.Of(result),
            job.Offcuts.IsEmpty ? null : [.. job.Offcuts.Select(o => new OffcutEntry(
                o.Name, Xy(o.Inside), Mm(o.WidthMm), Mm(o.HeightMm), Mm(o.MassKg), o.IsLarge, o.IsAround))],
            job.IsBlankStated,
            result.WaysOut.IsEmpty ? null : [.. result.WaysOut.Select((w, i) => new WayOutEntry(
                i + 1, w.Words, Mm(w.UnsupportedMm), w.Pods, w.HoldingFactor is { } factor && double.IsFinite(factor) ? Mm(factor) : null))]);
        return file with { Mark = result.Mark ?? LayoutMark.Hash(file) };
    }

    /// <summary>The ports to open, in the order of the board.</summary>
    public static IEnumerable<Port> OpenPorts(Layout? layout) =>
        (layout?.Pods ?? []).SelectMany(p => p.OpenPorts).Distinct()
            .OrderBy(p => p.Centre.Y).ThenBy(p => p.Centre.X).ThenBy(p => p.Name, StringComparer.Ordinal);

    /// <summary>Rounded to 0.001; adding zero takes the sign off a negative zero.</summary>
    public static double Mm(double value) => Math.Round(value, 3, MidpointRounding.AwayFromZero) + 0.0;

    public static XyMm Xy(Point2 p) => new(Mm(p.X), Mm(p.Y));

    private static double? Mm(double? value) => value is { } v ? Mm(v) : null;

    // 0.001 degree would be 0.06 mm at the far end of a board of 3.6 m.
    private static double Deg(double value) => Math.Round(value, 9, MidpointRounding.AwayFromZero) + 0.0;

    // A limit of 100 mm in steps of 0.0001 is 0.01 mm.
    private static double Share(double value) => Math.Round(value, 4, MidpointRounding.AwayFromZero) + 0.0;

    private static Point2 Rounded(Point2 p) => new(Mm(p.X), Mm(p.Y));

    private static Ring Rounded(Ring ring) => new([.. ring.Points.Select(Rounded)]);

    private static PartShape Rounded(PartShape shape) =>
        new(Rounded(shape.Outline), [.. shape.Holes.Select(Rounded)], [.. shape.Defects.Select(Rounded)])
        {
            Avoided = [.. shape.Avoided.Select(a => a with { Ring = Rounded(a.Ring) })],
            Hazards = [.. shape.Hazards.Select(Rounded)],
            Floors = [.. shape.Floors.Select(f => f with { Area = Rounded(f.Area) })],
            WeakFloors = [.. shape.WeakFloors.Select(f => f with { Area = Rounded(f.Area) })],
            Skinned = shape.Skinned,
            Held = [.. shape.Held.Select(h => h with { Outline = Rounded(h.Outline), Holes = [.. h.Holes.Select(Rounded)] })],
            Blank = [.. shape.Blank.Select(Rounded)],
            LeftOutLines = [.. shape.LeftOutLines.Select(l => l.Select(Rounded).ToImmutableArray())],
        };

    private static Hazard Rounded(Hazard hazard) =>
        new(hazard.Name, hazard.Source, Rounded(hazard.Area), hazard.KeepsBodiesOff, hazard.KeepsSealsOff);

    private static Region Rounded(Region area) => area.Rounded(Tolerances.CoordinateMm);

    public static BoxEntry Box(Box2 b) => new(Mm(b.MinX), Mm(b.MinY), Mm(b.MaxX), Mm(b.MaxY));

    private static PartEntry PartOf(Part part, Placement? placement) => new(
        part.Name, Mm(part.ThicknessMm), part.Species, Deg(part.GrainDeg), Mm(part.Shape.AreaMm2), ShapeOf(part.Shape),
        placement is null ? null : ShapeOf(part.Shape.Laid(Turn.FromDegrees(placement.AngleDeg), placement.ZeroOnBoard)));

    private static ShapeEntry ShapeOf(PartShape shape) => new(
        Box(shape.Outline.Bounds), RingOf(shape.Outline), [.. shape.Holes.Select(RingOf)], [.. shape.Defects.Select(RingOf)],
        [.. shape.Avoided.Select(a => new SpotEntry(a.Name, RingOf(a.Ring)))],
        [.. shape.Hazards.Select(h => new HazardEntry(
            h.Name, h.Source, h.KeepsBodiesOff, h.KeepsSealsOff, [.. h.Area.Boundary.Select(RingOf)]))],
        [.. shape.Floors.Select(f => new FloorEntry(f.Name, f.Source, Mm(f.LeastMm), [.. f.Area.Boundary.Select(RingOf)]))],
        shape.Skinned,
        [.. shape.Held.Select(h => new HeldPieceEntry(h.Name, Mm(h.MassKg), h.IsDemanded, h.IsBalanced, RingOf(h.Outline), [.. h.Holes.Select(RingOf)]))],
        shape.Blank.IsEmpty ? null : [.. shape.Blank.Select(RingOf)],
        shape.WeakFloors.IsEmpty ? null : [.. shape.WeakFloors.Select(f => new WeakFloorEntry(
            f.Name, f.Source, Mm(f.LeftMm),
            [.. f.Pulls.Select(p => new FloorPullEntry(p.Pod, Mm(p.VacuumKPa), double.IsFinite(p.SagMm) ? Mm(p.SagMm) : null, Mm(p.StrengthFactor), Mm(p.NeededMm)))],
            [.. f.Area.Boundary.Select(RingOf)]))],
        shape.LeftOutLines.IsEmpty ? null : [.. shape.LeftOutLines.Select(l => l.Select(Xy).ToImmutableArray())]);

    private static ImmutableArray<XyMm> RingOf(Ring ring) => [.. ring.Points.Select(Xy)];

    private static AskedEntry AskedOf(Job job)
    {
        ImmutableArray<KeptPodEntry> keep = [.. job.Keep.Select(k => new KeptPodEntry(k.Type.Name, k.Turned, k.Column + 1, k.Row + 1))];
        return job.Placement switch
        {
            PlacementWish.Given given => new(new(Xy(given.ZeroOnBoard), Deg(given.AngleDeg)), [], null, keep),
            PlacementWish.Search search => new(null, [.. search.AnglesDeg.Select(Deg)], null, keep),
            PlacementWish.SearchInterval interval => new(null, [], new(Deg(interval.FromDeg), Deg(interval.ToDeg)), keep),
            _ => throw new ArgumentOutOfRangeException(nameof(job), job.Placement, "Unknown wish."),
        };
    }

    private static PlacementEntry PlacementOf(Placement placement) =>
        new(Xy(placement.ZeroOnBoard), Deg(placement.AngleDeg));

    private static ShopEntry ShopOf(Shop shop)
    {
        var board = shop.Board;
        return new(
            shop.Name,
            Mm(shop.PodGapMm),
            new(
                board.Name, Mm(board.WidthMm), Mm(board.LengthMm), Mm(board.PitchMm), Mm(board.GrooveWidthMm),
                Mm(board.GrooveDepthMm), Xy(board.FirstGroove), Box(board.UsableArea), Mm(board.PortDiameterMm),
                Mm(board.PortMarginMm), [.. board.Ports.Select(p => new PortEntry(p.Name, Xy(p.Centre), p.State))],
                [.. board.Obstacles.Select(ObstacleOf)]),
            [.. shop.Pods.Select(PodTypeOf)],
            [.. shop.Zones.Select(z => new ZoneEntry(z.Name, Box(z.Area)))],
            shop.WorksInInches);
    }

    private static ObstacleEntry ObstacleOf(Obstacle o) => o.Shape switch
    {
        ObstacleShape.Disc d => new(o.Name, o.Kind, Xy(d.Centre), Mm(d.DiameterMm), null, Mm(o.ClearanceMm)),
        ObstacleShape.Rectangle r => new(o.Name, o.Kind, null, null, Box(r.Extent), Mm(o.ClearanceMm)),
        _ => throw new ArgumentOutOfRangeException(nameof(o), o, "Unknown shape."),
    };

    private static PodTypeEntry PodTypeOf(PodType t)
    {
        var rectangle = t.Footprint as PodFootprint.Rectangle;
        var round = t.Footprint as PodFootprint.Round;
        return new(
            t.Name, Mm(rectangle?.WidthMm), Mm(rectangle?.LengthMm), Mm(round?.DiameterMm), Mm(t.SealInsetAboveMm),
            Mm(t.SealInsetBelowMm), Mm(t.HeightMm), t.MayTurn, t.Stock, t.PortsNeeded)
        {
            SealStiffnessNPerMm2 = t.SealStiffnessNPerMm2,
        };
    }

    private static PodEntry PodOf(PlacedPod pod, int index) => new(
        PodId(index), pod.Type.Name, pod.Turned, pod.Column + 1, pod.Row + 1, Xy(pod.Centre),
        Box((pod with { Centre = Rounded(pod.Centre) }).BodyBox), pod.Holds,
        [.. pod.OpenPorts.Select(p => p.Name)]);

    private static SupportEntry SupportOf(Layout layout)
    {
        var turn = Turn.FromDegrees(layout.Placement.AngleDeg);
        var points = layout.SupportPoints.Select(p => new SupportPointEntry(
            Xy(p.OnPart), Xy(turn.Apply(Rounded(p.OnPart)) + layout.Placement.ZeroOnBoard), p.Limit, Share(p.ShareOfLimit), PodId(p.Pod)));
        return new(Share(layout.WorstShareOfLimit), WorstPoint(layout) is { } worst ? Xy(worst.OnPart) : null, [.. points]);
    }

    /// <summary>The first of the points with the worst share; null when there are no points.</summary>
    public static SupportPoint? WorstPoint(Layout layout) =>
        layout.SupportPoints.FirstOrDefault(p => p.ShareOfLimit >= layout.WorstShareOfLimit);

    private static StretchEntry StretchOf(UnsupportedStretch s, int index) => new(
        index + 1, Xy(s.From), Xy(s.To), Mm(s.LengthMm), s.Limit, s.Cause, Mm(s.OverhangThatWouldDoMm), Mm(s.OverhangNowMm),
        [.. s.Points.Select(Xy)]);

    private static FindingEntry FindingOf(Finding f) => new(
        f.Code, f.Severity, f.Kind, Plain.Cut(f.Message), f.Place is null ? null : PlaceOf(f.Place), f.Remedy);

    private static PlaceEntry PlaceOf(Place place) => place switch
    {
        Place.InFile p => new(p.File, p.Line, null, null, null, null),
        Place.InDrawing p => new(p.File, null, new(Mm(p.XMm), Mm(p.YMm)), p.Entity, null, null),
        Place.InJson p => new(p.File, null, null, null, p.Path, null),
        Place.InOption p => new(null, null, null, null, null, p.Name),
        _ => throw new ArgumentOutOfRangeException(nameof(place), place, "Unknown place."),
    };
}
