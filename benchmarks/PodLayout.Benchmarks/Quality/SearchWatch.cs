using System.Diagnostics;

namespace PodLayout.Benchmarks.Quality;

/// <summary>When a search first said that it had a layout, when it last said that it had a better one, and when it last said anything.</summary>
internal sealed class SearchWatch(Stopwatch clock) : IProgress<Progress>
{
    private readonly Lock _gate = new();
    private int _best = int.MaxValue;

    /// <summary>To the first layout, ms.</summary>
    public double? FirstMs { get; private set; }

    /// <summary>To the last better one, ms.</summary>
    public double? BestMs { get; private set; }

    /// <summary>To the last word, ms.</summary>
    public double? LastMs { get; private set; }

    /// <summary>The bound as last told; null when none was.</summary>
    public int? Bound { get; private set; }

    public void Report(Progress value)
    {
        lock (_gate)
        {
            LastMs = clock.Elapsed.TotalMilliseconds;
            Bound = value.FewestPossible == int.MaxValue ? Bound : value.FewestPossible;
            if (value.PodsOfBest is { } pods && pods < _best)
            {
                _best = pods;
                BestMs = LastMs;
                FirstMs ??= LastMs;
            }
        }
    }
}
