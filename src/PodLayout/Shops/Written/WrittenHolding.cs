using System.ComponentModel;
using PodLayout.JsonFiles;

namespace PodLayout.Shops.Written;

/// <summary>How firmly parts are to be held, as written.</summary>
internal sealed record WrittenHolding
{
    [Description("The holding factor that is aimed at: how many times the cutter's force could grow before the part moves; 2 when not given.")]
    [Bounds(From = 1, To = 100)]
    public double? TargetFactor { get; init; }

    [Description("A layout with a smaller factor is not handed over; 1.5 when not given.")]
    [Bounds(From = 1, To = 100)]
    public double? LeastFactor { get; init; }

    [Description("Coefficient of friction between the pods' upper faces and the wood; 0.4 when not given. Measure it.")]
    [Bounds(From = 0.001, To = 2)]
    public double Friction { get; init; } = HoldingRules.Default.Friction;
}
