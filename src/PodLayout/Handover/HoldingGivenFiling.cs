using System.Collections.Immutable;
using PodLayout.Geometry;
using PodLayout.Handover.Format;
using PodLayout.Holding;
using PodLayout.Jobs;
using PodLayout.Parts;
using PodLayout.Shops;

namespace PodLayout.Handover;

/// <summary>What the holding factor is worked out from, into the external form and back.</summary>
internal static class HoldingGivenFiling
{
    // With the depth of the cut, which files of before do not have.
    private const int Columns = 8;

    public static HoldingGivenEntry Entry(Job job)
    {
        var (loads, supply) = (job.Part.Loads, job.Shop.Vacuum);
        return new(
            job.Shop.Holding.Friction,
            job.Part.DensityKgPerM3,
            job.Holding.ShopLeastFactor,
            Vacuum(supply),
            [.. loads.Passes.Select(p => new PassEntry(p.Name, p.Source, Rounded(p.PeakN), Rounded(p.LeastPeakN)) { FollowsFeed = p.FollowsFeed })],
            Forces(loads),
            loads.AreAssumed,
            loads.Assumptions,
            job.Part.CutAway.IsEmpty ? null : [.. job.Part.CutAway.Select(c => new CutAwayEntry(Rounded(c.VolumeMm3), LayoutFiling.Xy(c.Centroid), c.IsGone))])
        {
            ForcesOnPieces =
            [
                .. job.Part.Shape.Held.Where(p => !p.Loads.Points.IsEmpty).Select(p => new PieceForcesEntry(p.Name, Forces(p.Loads))),
            ],
        };
    }

    private static ImmutableArray<ImmutableArray<double>> Forces(CutterLoads loads) =>
    [
        .. CutterForces.Of(loads, default).Select(f => (ImmutableArray<double>)
        [
            Rounded(f.X), Rounded(f.Y), Rounded(f.HeightMm), Rounded(f.Force.XN), Rounded(f.Force.YN), Rounded(f.Force.ZN),
            loads.Points[f.Point].Pass, Rounded(loads.Points[f.Point].DepthMm),
        ]),
    ];

    private static IEnumerable<PathLoad> Points(ImmutableArray<ImmutableArray<double>> forces) => forces.Select(f => new PathLoad(
        new(f[0], f[1]), f[2], [new(f[3], f[4], f[5])], (int)f[6])
    {
        DepthMm = f.Length < Columns ? 0 : f[7],
    });

    /// <summary>A job with what the file says of its holding.</summary>
    public static Job Job(Job job, HoldingEntry held)
    {
        var given = held.Given;
        CutterLoads loads = new(
            [.. Points(given.ForcesOnPart)],
            [.. given.Passes.Select(p => new CutterPass(p.Name, p.Source, p.PeakN, p.LeastPeakN) { FollowsFeed = p.FollowsFeed })],
            given.Assumptions)
        {
            AreAssumed = given.IsAssumed,
        };
        return job with
        {
            Holding = new(given.ShopLeastFactor, held.AcceptLessBecause),
            Part = job.Part with
            {
                DensityKgPerM3 = given.DensityKgPerM3,
                CutAway = [.. (given.CutAway ?? []).Select(c => new CutAway(c.VolumeMm3, new(c.CentroidMm.X, c.CentroidMm.Y), c.IsGone))],
                Loads = loads,
                Shape = job.Part.Shape with
                {
                    Held = [.. job.Part.Shape.Held.Select(p => (given.ForcesOnPieces ?? []).FirstOrDefault(f => f.Piece == p.Name) is { } on
                        ? p with { Loads = loads with { Points = [.. Points(on.Forces)] } } : p)],
                },
            },
            Shop = job.Shop with { Holding = new(held.TargetFactor, held.LeastFactor, given.Friction), Vacuum = Supply(given.Vacuum) },
        };
    }

    /// <summary>The first of these figures that cannot be worked with; null when all can.</summary>
    public static (string Path, string Message)? FirstWrong(HoldingEntry held, string path)
    {
        var given = held.Given;
        foreach (var (name, forces) in (given.ForcesOnPieces ?? []).Select((f, i) => (FormattableString.Invariant($"forcesOnPieces[{i}].forces"), f.Forces))
            .Prepend(("forcesOnPart", given.ForcesOnPart)))
        {
            for (var i = 0; i < forces.Length; i++)
            {
                if (!IsForce(forces[i], given.Passes.Length))
                {
                    return (FormattableString.Invariant($"{path}.given.{name}[{i}]"), "Eight numbers were expected: place, height, force, the number of a pass, and the depth of the cut.");
                }
            }
        }

        foreach (var (gone, i) in (given.CutAway ?? []).Select((c, i) => (c, i)))
        {
            if (!(gone.VolumeMm3 >= 0) || !double.IsFinite(gone.VolumeMm3)
                || !(Math.Max(Math.Abs(gone.CentroidMm.X), Math.Abs(gone.CentroidMm.Y)) <= Tolerances.LargestCoordinateMm))
            {
                return (FormattableString.Invariant($"{path}.given.cutAway[{i}]"), "A volume of at least 0 about a point of the part was expected.");
            }
        }

        // As the shop and job files are held to.
        foreach (var (name, value, most) in new[]
        {
            ("given.friction", given.Friction, 2), ("given.densityKgPerM3", given.DensityKgPerM3, 2000), ("targetFactor", held.TargetFactor, 100),
            ("leastFactor", held.LeastFactor, 100),
        })
        {
            if (!(value > 0 && value <= most))
            {
                return ($"{path}.{name}", FormattableString.Invariant($"A number above 0 and at most {most} was expected, {value:0.######} was found."));
            }
        }

        var vacuum = given.Vacuum;
        var curve = vacuum.Pump ?? [];
        var isPump = vacuum.Pump is not null && vacuum.GaugeKPa is null && curve.Length >= 2 && curve.All(p => p.Length == 2 && p.All(double.IsFinite))
            && curve.Zip(curve.Skip(1)).All(p => p.First[0] < p.Second[0] && p.First[1] >= p.Second[1]) && curve[^1][1] == 0
            && curve[^1][0] < vacuum.BarometerKPa;
        var isReading = vacuum.Pump is null && vacuum is { GaugeKPa: > 0, NominalM3PerHour: > 0 } && vacuum.GaugeKPa < vacuum.BarometerKPa;
        return isPump || isReading ? null
            : (path + ".given.vacuum", "Either gaugeKPa (below the barometer) with nominalM3PerHour, or a pump's curve with rising vacuum and falling flow was expected.");
    }

    private static bool IsForce(ImmutableArray<double> force, int passes) => force.Length is Columns or Columns - 1 && force.All(double.IsFinite)
        && force[6] == Math.Floor(force[6]) && force[6] >= 0 && force[6] < passes && force.All(v => Math.Abs(v) <= Tolerances.LargestCoordinateMm)
        && (force.Length < Columns || force[7] >= 0);

    private static VacuumEntry Vacuum(VacuumSupply supply)
    {
        var reading = supply.Source as VacuumSource.Reading;
        var pump = supply.Source as VacuumSource.Pump;
        return new(
            supply.BarometerKPa, reading?.GaugeKPa, reading?.NominalM3PerHour,
            pump?.Curve.Select(p => (ImmutableArray<double>)[p.VacuumKPa, p.FreeAirM3PerHour]).ToImmutableArray(),
            supply.PortBoreMm, supply.HoleCoefficient,
            new(
                supply.Channels.WidthMm, supply.Channels.DepthMm, supply.Channels.Wish, supply.Channels.LengthMm,
                [.. supply.Channels.Zones.Select(z => new VacuumZoneEntry(LayoutFiling.Box(z.Area), LayoutFiling.Box(z.VacuumExtent)))]),
            supply.Leak.SealLPerMinPerM, supply.Leak.WoodLPerMinPerM2, supply.Assumptions);
    }

    private static VacuumSupply Supply(VacuumEntry e) => new(
        e.BarometerKPa,
        e.Pump is { } curve
            ? new VacuumSource.Pump([.. curve.Select(p => new FlowPoint(p[0], p[1]))])
            : new VacuumSource.Reading(e.GaugeKPa ?? 0, e.NominalM3PerHour ?? 0),
        e.PortBoreMm,
        e.HoleCoefficient,
        new(
            e.Channels.WidthMm, e.Channels.DepthMm, e.Channels.Wish,
            [.. e.Channels.Zones.Select(z => new VacuumZone(Box(z.Area), Box(z.Vacuum)))], e.Channels.LengthMm),
        new(e.SealLPerMinPerM, e.WoodLPerMinPerM2),
        e.Assumptions);

    private static Box2 Box(BoxEntry b) => new(b.MinXMm, b.MinYMm, b.MaxXMm, b.MaxYMm);

    private static double Rounded(double value) => Math.Round(value, 3, MidpointRounding.AwayFromZero) + 0.0;
}
