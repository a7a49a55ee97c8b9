using System.ComponentModel;
using PodLayout.JsonFiles;

namespace PodLayout.Jobs.Written;

/// <summary>The overhang limit as written.</summary>
[EitherOf(typeof(Same), typeof(ByGrain))]
internal abstract record WrittenOverhang
{
    /// <summary>One for all directions.</summary>
    [Bare]
    public sealed record Same : WrittenOverhang
    {
        [Description("The limit in every direction, mm.")]
        [Bounds(From = 0.01, To = 10_000)]
        public double Mm { get; init; }
    }

    /// <summary>One along the grain and one across.</summary>
    public sealed record ByGrain : WrittenOverhang
    {
        [Description("The limit along the grain, mm.")]
        [Bounds(From = 0.01, To = 10_000)]
        public required double AlongGrainMm { get; init; }

        [Description("The limit across the grain, mm.")]
        [Bounds(From = 0.01, To = 10_000)]
        public required double AcrossGrainMm { get; init; }
    }
}
