using System.Collections.Immutable;

namespace PodLayout.Placing;

/// <summary>
/// A search whose layouts hold by pulls and by springs. Only what a layout lacks by pulls is a row; where layouts with fewer pods may
/// hold by pulls, but those that were come upon fall short by springs, it looks again among the layouts that hold more by pulls than
/// is asked: most of those hold by springs too.
/// </summary>
internal static class FirmSearch
{
    // In most layouts the factor by springs is 0.83 to 0.97 of that by pulls (measured: benchmarks/holding-samples.md).
    private static readonly ImmutableArray<double> Aims = [1.1, 1.2];

    /// <summary>Searches, and again with a higher aim while fewer pods may do.</summary>
    /// <param name="holding">How the part is to be held; null where that does not matter.</param>
    /// <param name="toBeat">A layout to beat; null when there is none.</param>
    /// <param name="search">The search, told how the part is to be held, what to beat, and how far to go.</param>
    public static SearchEnd Run(
        HoldingModel? holding, FoundLayout? toBeat, Func<HoldingModel?, FoundLayout?, SearchCourse, SearchEnd> search)
    {
        var end = search(holding, toBeat, SearchCourse.UnlessShort);
        if (holding is null || end.ShortBySprings == 0 || end.IsCut)
        {
            return end;
        }

        foreach (var times in Aims)
        {
            if (end.IsCut || end.Best?.Seats.Length <= end.FewestPossible)
            {
                break;
            }

            var aimed = search(holding.AimingAt(times), end.Best, SearchCourse.Glance);
            var isBetter = aimed.Best is { } better && better.IsBetterThan(end.Best);
            end = After(end, aimed) with
            {
                // What comes after the search asks for no more than the factor again.
                Best = aimed.Best is { } best ? best with { Frame = best.Frame.HeldBy(holding) } : null,
                FewestPossible = end.FewestPossible,
                OpenToleranceMm = end.OpenToleranceMm,
                LeftOpenBound = end.LeftOpenBound,
            };
            if (!isBetter && aimed.ShortBySprings == 0)
            {
                // No layout holds so much by pulls, and none more.
                break;
            }
        }

        // What the rows by pulls allow was not gone through to the end.
        end = end.IsCut || end.Best?.Seats.Length <= end.FewestPossible ? end : After(end, search(holding, end.Best, SearchCourse.WithoutTries));
        return end with { OpenToleranceMm = end.Best?.Seats.Length <= end.LeftOpenBound ? 0 : end.OpenToleranceMm };
    }

    private static SearchEnd After(SearchEnd before, SearchEnd end) => end with
    {
        Nodes = before.Nodes + end.Nodes,
        Work = before.Work + end.Work,
        ShortBySprings = before.ShortBySprings + end.ShortBySprings,
    };
}
