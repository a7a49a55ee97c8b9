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
    private const int Columns = 7;

    public static HoldingGivenEntry Entry(Job job)
    {
        var (loads, supply) = (job.Part.Loads, job.Shop.Vacuum);
        return new(
            job.Shop.Holding.Friction,
            job.Part.DensityKgPerM3,
            job.Holding.ShopLeastFactor,
            Vacuum(supply),
            [.. loads.Passes.Select(p => new PassEntry(p.Name, p.Source, Rounded(p.PeakN), Rounded(p.LeastPeakN)))],
            [
                .. CutterForces.Of(loads, default).Select(f => (ImmutableArray<double>)
                [
                    Rounded(f.X), Rounded(f.Y), Rounded(f.HeightMm), Rounded(f.Force.XN), Rounded(f.Force.YN), Rounded(f.Force.ZN),
                    loads.Points[f.Point].Pass,
                ]),
            ],
            loads.AreAssumed,
            loads.Assumptions);
    }

    /// <summary>A job with what the file says of its holding.</summary>
    public static Job Job(Job job, HoldingEntry held)
    {
        var given = held.Given;
        var points = given.ForcesOnPart.Select(f => new PathLoad(
            new(f[0], f[1]), f[2], [new(f[3], f[4], f[5])], (int)f[6]));
        return job with
        {
            Holding = new(given.ShopLeastFactor, held.AcceptLessBecause),
            Part = job.Part with
            {
                DensityKgPerM3 = given.DensityKgPerM3,
                Loads = new(
                    [.. points], [.. given.Passes.Select(p => new CutterPass(p.Name, p.Source, p.PeakN, p.LeastPeakN))], given.Assumptions)
                {
                    AreAssumed = given.IsAssumed,
                },
            },
            Shop = job.Shop with { Holding = new(held.TargetFactor, held.LeastFactor, given.Friction), Vacuum = Supply(given.Vacuum) },
        };
    }

    /// <summary>The first of these figures that cannot be worked with; null when all can.</summary>
    public static (string Path, string Message)? FirstWrong(HoldingEntry held, string path)
    {
        var given = held.Given;
        for (var i = 0; i < given.ForcesOnPart.Length; i++)
        {
            var force = given.ForcesOnPart[i];
            if (force.Length != Columns || !force.All(double.IsFinite) || force[6] != Math.Floor(force[6])
                || force[6] < 0 || force[6] >= given.Passes.Length || force.Take(6).Any(v => Math.Abs(v) > Tolerances.LargestCoordinateMm))
            {
                return (FormattableString.Invariant($"{path}.given.forcesOnPart[{i}]"), "Seven numbers were expected, the last of them that of a pass.");
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
