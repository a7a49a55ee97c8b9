using System.Collections.Immutable;
using System.Globalization;
using PodLayout.Findings;
using PodLayout.Jobs;
using PodLayout.Parts;

namespace PodLayout.Floors;

/// <summary>How weak floors are told.</summary>
public static class FloorFindings
{
    // So many are told one by one.
    private const int MostTold = 8;

    /// <summary>A warning for each kind of floor that does not bear some kind of pod.</summary>
    /// <param name="floors">The floors.</param>
    /// <param name="pods">All kinds of pod in stock.</param>
    /// <param name="part">The part.</param>
    /// <param name="limits">What was allowed.</param>
    /// <param name="jobFile">The job file, for messages.</param>
    public static IEnumerable<Finding> Tell(
        IEnumerable<WeakFloor> floors, IEnumerable<string> pods, Part part, FloorLimits limits, string jobFile)
    {
        ImmutableArray<string> all = [.. pods];
        var alike = floors.GroupBy(f => (f.Name, f.Source, f.LeftMm, string.Join('|', f.Pulls.Select(p => p.Pod))))
            .Select(g => g.OrderByDescending(f => f.Area.AreaMm2).ToList()).ToList();
        // What keeps the most kinds of pod off comes first, and of those the largest.
        var told = alike.OrderByDescending(g => g[0].Pulls.Length).ThenByDescending(g => g.Sum(f => f.Area.AreaMm2)).Take(MostTold).ToList();
        var assumed = string.Join(' ', part.Wood.Plate.Assumptions);
        for (var i = 0; i < told.Count; i++)
        {
            yield return One(told[i], all, limits, i == 0 ? " " + assumed : "", jobFile);
        }

        if (alike.Count > told.Count)
        {
            yield return Say(jobFile, "$", Text($"{alike.Count - told.Count} more kinds of floor do not bear the vacuum of some pods, all smaller: these keep off them."), null);
        }
    }

    /// <summary>What a kind of pod would do to a floor, in words.</summary>
    /// <param name="pull">The pod.</param>
    /// <param name="limits">What is allowed; null when that need not be said.</param>
    public static string Words(FloorPull pull, FloorLimits? limits)
    {
        var (mostMm, leastFactor) = limits is null ? ("", "") : (Text($" (at most {limits.SagMm:0.##})"), Text($" (at least {limits.StressFactor:0.##})"));
        var sag = double.IsInfinity(pull.SagMm) ? "breaks it" : pull.SagMm > 5 ? Text($"sucks it in by more than 5 mm{mostMm}") : Text($"sucks it in by {pull.SagMm:0.00} mm{mostMm}");
        var strength = pull.StrengthFactor < 1 ? $" and breaks it, at {Factor(pull.StrengthFactor)} of its strength" : $", its strength being {Factor(pull.StrengthFactor)} times the stress{leastFactor}";
        return $"the vacuum of a \"{pull.Pod}\" ({pull.VacuumKPa.ToString("0.#", CultureInfo.InvariantCulture)} kPa) {sag}{strength}";
    }

    /// <summary>Which floor, how thick and where.</summary>
    public static string Words(WeakFloor floor) => floor.Name == WeakFloors.WholePart
        ? Text($"the part itself is {floor.LeftMm:0.##} mm thick")
        : Text($"{floor.Name} ({floor.Source}) leaves {floor.LeftMm:0.##} mm of wood");

    // Rounded down, so that nothing looks better than it is.
    private static string Factor(double factor) => (Math.Floor(factor * 100) / 100).ToString("0.##", CultureInfo.InvariantCulture);

    private static Finding One(List<WeakFloor> alike, ImmutableArray<string> all, FloorLimits limits, string assumed, string jobFile)
    {
        var floor = alike[0];
        var worst = floor.Pulls.MaxBy(p => p.NeededMm)!;
        ImmutableArray<string> kept = [.. floor.Pulls.Select(p => $"\"{p.Pod}\"")];
        ImmutableArray<string> borne = [.. all.Where(pod => floor.Pulls.All(p => p.Pod != pod)).Select(pod => $"\"{pod}\"")];
        var isWhole = floor.Name == WeakFloors.WholePart;
        var centre = floor.Area.Bounds.Centre;
        var where = isWhole ? "" : Text($" over {alike.Sum(f => f.Area.AreaMm2) / 100:0.#} cm2 {(alike.Count > 1 ? Text($"in {alike.Count} places, the largest ") : "")}about ({centre.X:0.#}, {centre.Y:0.#})");
        var rest = borne.IsEmpty ? "Every kind of pod of the shop would do so: none may stand under it."
            : isWhole ? $"Only {string.Join(" and ", borne)} may stand under it."
            : $"{string.Join(" and ", kept)} keep off it; {string.Join(" and ", borne)} may stand under it.";
        return Say(
            jobFile, floor.Path, $"{Words(floor)}{where}: {Words(worst, limits)}. {rest}{assumed}",
            Text($"Leave at least {Math.Ceiling(worst.NeededMm * 10 - 1e-9) / 10:0.0} mm{(isWhole ? "" : " of wood there")}, or use smaller pods."));
    }

    private static Finding Say(string jobFile, string path, string message, string? remedy) => new(
        "floor-too-thin", Severity.Warning, FindingKind.Request, message, new Place.InJson(jobFile, path), remedy);

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
