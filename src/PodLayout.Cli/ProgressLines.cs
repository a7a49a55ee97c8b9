using System.Diagnostics;
using System.Globalization;

namespace PodLayout.Cli;

/// <summary>
/// Prints where the search stands: the first layout as soon as there is one, and at most one line a second besides, none of them
/// in the first two seconds unless asked for.
/// </summary>
internal sealed class ProgressLines(TextWriter error, bool fromTheStart) : IProgress<Progress>
{
    private static readonly TimeSpan Quiet = TimeSpan.FromSeconds(2);
    private static readonly TimeSpan Between = TimeSpan.FromSeconds(1);

    private readonly Stopwatch clock = Stopwatch.StartNew();
    private readonly Lock gate = new();
    private TimeSpan? last;
    private bool hasLayout;

    public void Report(Progress value)
    {
        lock (gate)
        {
            var now = clock.Elapsed;
            // The first layout is what the programmer waits for.
            var isFirst = !hasLayout && value.PodsOfBest is not null;
            if (last is { } before ? now - before < Between && !isFirst : !fromTheStart && !isFirst && now < Quiet)
            {
                return;
            }

            hasLayout = value.PodsOfBest is not null;
            last = now;
            var best = value.PodsOfBest is { } pods ? string.Create(CultureInfo.InvariantCulture, $"best {pods} pods") : "no layout yet";
            var bound = value.FewestPossible is { } fewest ? string.Create(CultureInfo.InvariantCulture, $"at least {fewest}") : "none possible so far";
            error.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"podlayout: {now.TotalSeconds:0} s: {best}, {bound}; {value.Placements} placements looked at, {value.Open} open"));
        }
    }
}
