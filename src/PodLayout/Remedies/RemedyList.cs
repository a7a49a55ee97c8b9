using System.Collections.Immutable;
using System.Globalization;
using PodLayout.Jobs;
using PodLayout.Layouts;
using PodLayout.Placing;

namespace PodLayout.Remedies;

/// <summary>What is worth trying, in the order of what it costs.</summary>
internal static class RemedyList
{
    private static readonly ImmutableArray<double> QuarterTurnsDeg = [90, 180, 270];
    private static readonly ImmutableArray<double> OtherTurnsDeg = [15, 30, 45, 60, 75, 105, 120, 135, 150, 165];

    // Margins are made smaller to these shares.
    private static readonly ImmutableArray<double> Shares = [0.5, 0.25];

    // A limit is told with so many mm to spare, since points between those that are measured lie a little farther.
    private const double SpareMm = 1;

    // How many new kinds of pod are tried.
    private const int MostPods = 3;

    /// <summary>The changes for a plan.</summary>
    public static IEnumerable<Remedy> Of(PlanResult plan)
    {
        var job = plan.Job;
        foreach (var remedy in (IEnumerable<Remedy>)[.. Laid(job), .. Ports(job), .. Stock(job), .. Pods(job), .. Margins(job), .. Limits(plan)])
        {
            yield return remedy;
        }
    }

    // A posted program binds the part to the machine's directions.
    private static IEnumerable<Remedy> Laid(Job job)
    {
        switch (job.Placement)
        {
            case PlacementWish.Given given:
                yield return new("let the part lie elsewhere at the same angle (placement: \"search\")", job with { Placement = new PlacementWish.Search([given.AngleDeg]) });
                break;
            case PlacementWish.Search search when job.ProgramZero is null:
                ImmutableArray<double> first = [.. QuarterTurnsDeg.Select(d => search.AnglesDeg[0] + d).Where(a => !search.AnglesDeg.Contains(a % 360))];
                if (!first.IsEmpty)
                {
                    yield return new("turn the part", job with { Placement = new PlacementWish.Search(first) });
                }

                yield return new("turn the part", job with { Placement = new PlacementWish.Search([.. OtherTurnsDeg.Select(d => search.AnglesDeg[0] + d)]) });
                break;
        }
    }

    private static IEnumerable<Remedy> Ports(Job job)
    {
        var dead = job.Shop.Board.Ports.Where(p => p.State != Shops.PortState.Working).ToList();
        if (dead.Count > 0)
        {
            yield return new(
                $"make these ports work: {string.Join(", ", dead.Select(p => p.Name).Take(6))}{(dead.Count > 6 ? ", ..." : "")}",
                With(job, job.Shop with { Board = job.Shop.Board with { Ports = [.. job.Shop.Board.Ports.Select(p => p with { State = Shops.PortState.Working })] } }));
        }
    }

    private static IEnumerable<Remedy> Stock(Job job)
    {
        const int ample = 9999;
        yield return new("bring more pods of the kinds that there are", With(job, job.Shop with
        {
            Pods = [.. job.Shop.Pods.Select(p => p.Stock > 0 ? p with { Stock = ample } : p)],
        }));
    }

    private static IEnumerable<Remedy> Pods(Job job) => OtherPods.SmallerOf(job.Shop).Take(MostPods).Select(pod => new Remedy(
        $"make pods of {pod.Name} mm", With(job, job.Shop with { Pods = [.. job.Shop.Pods, pod] })));

    private static IEnumerable<Remedy> Margins(Job job) => Shares.Select(share => new Remedy(
        string.Create(CultureInfo.InvariantCulture, $"margins of {job.Margins.SealMarginMm * share:0.##} mm for seals and {job.Margins.CutClearanceMm * share:0.##} mm for bodies"),
        job with { Margins = new(job.Margins.SealMarginMm * share, job.Margins.CutClearanceMm * share) }));

    // As far as the layout's own overhang asks for: then it supports all.
    private static IEnumerable<Remedy> Limits(PlanResult plan)
    {
        var support = plan.Job.Support;
        double? Needed(SupportLimit limit) => plan.Unsupported.Where(s => s.Limit == limit).Select(s => plan.Layout is null ? s.OverhangThatWouldDoMm : s.OverhangNowMm)
            .Aggregate((double?)0, (most, mm) => mm is null ? null : Math.Max(most ?? double.PositiveInfinity, mm.Value + SpareMm));
        if (plan.Unsupported.IsEmpty || Needed(SupportLimit.Edge) is not { } edge || Needed(SupportLimit.Interior) is not { } inside || Needed(SupportLimit.ThinFloor) is not { } floor)
        {
            yield break;
        }

        var words = new List<string>();
        if (edge > 0)
        {
            var along = edge * support.OverhangAlongGrainMm / support.OverhangAcrossGrainMm;
            words.Add(along > edge
                ? string.Create(CultureInfo.InvariantCulture, $"an overhang of {along:0} mm along and {edge:0} mm across the grain")
                : string.Create(CultureInfo.InvariantCulture, $"an overhang of {edge:0} mm"));
            support = support with { OverhangAlongGrainMm = Math.Round(along), OverhangAcrossGrainMm = Math.Round(edge) };
        }

        if (inside > 0)
        {
            words.Add(string.Create(CultureInfo.InvariantCulture, $"a span of {inside:0} mm inside"));
            support = support with { InteriorSpanMm = Math.Round(inside) };
        }

        if (floor > 0)
        {
            words.Add(string.Create(CultureInfo.InvariantCulture, $"a span of {floor:0} mm on thin floors"));
            support = support with { ThinFloorSpanMm = Math.Round(floor) };
        }

        yield return new($"allow {string.Join(" and ", words)}", plan.Job with { Support = support });
    }

    private static Job With(Job job, Shops.Shop shop) => job with { Shop = shop };
}
