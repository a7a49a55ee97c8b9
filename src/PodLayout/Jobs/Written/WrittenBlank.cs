using System.ComponentModel;
using PodLayout.JsonFiles;

namespace PodLayout.Jobs.Written;

/// <summary>The blank as written.</summary>
internal sealed record WrittenBlank
{
    [Description("Layer of the blank's outline; instead of grownByMm.")]
    public string? Layer { get; init; }

    [Description("How far the blank reaches beyond the part's outline all round, mm; instead of layer.")]
    [Bounds(From = 0, To = 1000)]
    public double? GrownByMm { get; init; }

    [Description("Density of the wood for the mass of loose pieces, kg/m3; that of the part's wood when not given, or 700 when that is not known.")]
    [Bounds(From = 0.001, To = 2000)]
    public double? DensityKgPerM3 { get; init; }

    [Description("Loose pieces heavier than this are held by pods of their own, kg; none are when not given.")]
    [Bounds(From = 0, To = 1000)]
    public double? HoldOverKg { get; init; }

    [Description("Whether a layout is refused that does not hold all of these pieces; a piece that no pod can hold is only warned about when not given.")]
    public bool MustHold { get; init; }
}
