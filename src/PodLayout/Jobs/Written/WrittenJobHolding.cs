using System.ComponentModel;
using PodLayout.JsonFiles;

namespace PodLayout.Jobs.Written;

/// <summary>How firmly the part is to be held, as written.</summary>
internal sealed record WrittenJobHolding
{
    [Description("The holding factor to aim at; the shop's when not given.")]
    [Bounds(From = 1, To = 100)]
    public double? TargetFactor { get; init; }

    [Description("A layout with a smaller factor is not handed over; the shop's when not given. To go below the shop's, acceptLessBecause must say why.")]
    [Bounds(From = 1, To = 100)]
    public double? LeastFactor { get; init; }

    [Description("Why this job may be held less firmly than the shop's least factor, in words; it is printed with the layout.")]
    public string? AcceptLessBecause { get; init; }

    [Description("Coefficient of friction between the pods' faces and this wood; the shop's when not given.")]
    [Bounds(From = 0.001, To = 2)]
    public double? Friction { get; init; }
}
