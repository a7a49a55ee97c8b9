using System.ComponentModel;
using PodLayout.JsonFiles;

namespace PodLayout.Jobs.Written;

/// <summary>The job's own figures of its wood, as written.</summary>
internal sealed record WrittenWood
{
    [Description("Density as it lies on the pods, kg/m3; that of the species when not given.")]
    [Bounds(From = 50, To = 2000)]
    public double? DensityKgPerM3 { get; init; }

    [Description("Modulus of elasticity along the grain, GPa; that of the species when not given.")]
    [Bounds(From = 0.1, To = 50)]
    public double? AlongGrainGPa { get; init; }

    [Description("Air through a square metre of its face at 80 kPa, litres of free air a minute; that of the species when not given.")]
    [Bounds(From = 0, To = 1_000_000)]
    public double? LeakLPerMinPerM2 { get; init; }
}

/// <summary>How the underside is, as written.</summary>
internal enum WrittenUnderside
{
    Planed,
    Rough,
}
