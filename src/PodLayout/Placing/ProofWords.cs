using System.Globalization;
using PodLayout.Jobs;
using PodLayout.Layouts;
using PodLayout.Support;

namespace PodLayout.Placing;

/// <summary>What was proven, in words.</summary>
internal static class ProofWords
{
    /// <summary>The proof that comes with a layout of some pods.</summary>
    /// <param name="job">The job.</param>
    /// <param name="pods">Pods of the layout.</param>
    /// <param name="end">How the search ended.</param>
    /// <param name="holdingFactor">The holding factor that layouts had to reach; null where holding did not matter.</param>
    /// <param name="isRefined">Whether the worst overhang was made as small as it can be with these pods there.</param>
    /// <param name="left">What the layout leaves unsupported.</param>
    public static Proof Of(Job job, int pods, SearchEnd end, double? holdingFactor, bool isRefined, LeftUnsupported left)
    {
        var (scope, where) = Over(job);
        where += HoldingToo(job);
        // A part with an edge needs a pod, however early the work was cut short.
        var bound = Math.Clamp(end.FewestPossible, Math.Min(1, pods), pods);
        var that = holdingFactor is { } factor
            ? string.Create(CultureInfo.InvariantCulture, $"{(job.Part.Shape.Held.IsEmpty ? " that" : " and")} supports the part and holds it at a factor of {factor:0.###}") : "";
        var words = bound == pods
            ? string.Create(CultureInfo.InvariantCulture, $"Proven: no layout {where}{that} has fewer than {Counted(pods)}.")
            : string.Create(
                CultureInfo.InvariantCulture,
                $"Not proven: {Counted(pods)} found; {where} no layout{that} has fewer than {bound}; between the two {(end.ShortBySprings > 0 && !end.IsCut ? "nothing is proven" : "the search was not finished")}.");
        if (bound < pods && end.ShortBySprings > 0)
        {
            words += string.Create(
                CultureInfo.InvariantCulture,
                $" The bound is proven with the factor by pulls; of layouts with fewer pods that hold by pulls {end.ShortBySprings} {(end.ShortBySprings == 1 ? "was" : "were")} tried by springs too, and fell short.");
        }

        if (end.OpenToleranceMm > 0)
        {
            words += string.Create(
                CultureInfo.InvariantCulture,
                $" Left out: layouts that would exist only if the part were laid more exactly than {end.OpenToleranceMm:0.###} mm.");
        }

        words += !isRefined ? ""
            : job.Placement is PlacementWish.Given
            ? " Of all layouts with as many pods here none has a smaller worst overhang, to a hundredth of its limit."
            : " With as many pods at this place of the part none has a smaller worst overhang, to a hundredth of its limit; other places were not compared.";
        return Leaving(left, where, new(scope, bound, end.OpenToleranceMm, words));
    }

    /// <summary>Of a layout that holds too little, and is the firmest that was come upon.</summary>
    /// <param name="job">The job.</param>
    /// <param name="pods">Pods of the layout.</param>
    /// <param name="end">How the search for what supports the part ended.</param>
    /// <param name="left">What the layout leaves unsupported.</param>
    public static Proof OfFirmest(Job job, int pods, SearchEnd end, LeftUnsupported left)
    {
        var (scope, where) = Over(job);
        var bound = Math.Clamp(end.FewestPossible, Math.Min(1, pods), pods);
        return Leaving(left, where, new(scope, bound, end.OpenToleranceMm, string.Create(
            CultureInfo.InvariantCulture,
            $"Of the layouts tried this one of {Counted(pods)} holds best; that none holds better is not proven. To support the part alone no layout {where} has fewer than {Counted(bound)}.")));
    }

    // What was proven of what stays unsupported comes first.
    private static Proof Leaving(LeftUnsupported left, string where, Proof proof)
    {
        if (left.Points.IsEmpty)
        {
            return proof;
        }

        double mm = left.Length / (double)PointLengths.ToMm, leastMm = left.LeastPossible / (double)PointLengths.ToMm;
        var least = left.LeastPossible >= left.Length
            ? string.Create(CultureInfo.InvariantCulture, $"Proven: no layout {where} leaves less than {mm:0.#} mm beyond its limits.")
            : string.Create(
                CultureInfo.InvariantCulture, $"Not proven: {mm:0.#} mm stay beyond their limits; {where} no layout leaves less than {leastMm:0.#} mm; between the two the search was not finished.");
        if (left.OpenToleranceMm > 0)
        {
            least += string.Create(CultureInfo.InvariantCulture, $" Left out: layouts that would exist only if the part were laid more exactly than {left.OpenToleranceMm:0.###} mm.");
        }

        return proof with
        {
            PlacingToleranceMm = Math.Max(proof.PlacingToleranceMm, left.OpenToleranceMm),
            Words = $"{least} Of the layouts that support all the rest: {proof.Words}",
            UnsupportedMm = mm,
            LeastUnsupportedMm = leastMm,
        };
    }

    private static string Counted(int pods) => string.Create(CultureInfo.InvariantCulture, $"{pods} {(pods == 1 ? "pod" : "pods")}");

    private static (ProofScope Scope, string Where) Over(Job job) => job.Placement switch
    {
        PlacementWish.Search search => (
            ProofScope.AllOffsetsAtTheseAngles, $"over every offset of the part on the board at {Angles(search)}"),
        PlacementWish.SearchInterval interval => (
            ProofScope.AllOffsetsAndAngles,
            string.Create(
                CultureInfo.InvariantCulture,
                $"over every offset of the part on the board and every angle from {interval.FromDeg:0.###} to {interval.ToDeg:0.###} degrees")),
        _ => (ProofScope.ThisPlacement, "at this placement"),
    };

    private static string HoldingToo(Job job) => job.Part.Shape.Held.IsEmpty ? ""
        : $" that also holds {string.Join(", ", job.Part.Shape.Held.Select(p => p.Name))}";

    private static string Angles(PlacementWish.Search search) => search.AnglesDeg.Length == 1
        ? string.Create(CultureInfo.InvariantCulture, $"an angle of {search.AnglesDeg[0]:0.###} degrees")
        : "angles of " + string.Join(", ", search.AnglesDeg.Select(a => a.ToString("0.###", CultureInfo.InvariantCulture)))
            + " degrees";
}
