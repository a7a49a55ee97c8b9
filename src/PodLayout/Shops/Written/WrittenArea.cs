using System.ComponentModel;
using PodLayout.JsonFiles;

namespace PodLayout.Shops.Written;

/// <summary>A rectangle of the board as written.</summary>
[InchesToo]
internal sealed record WrittenArea
{
    [Description("Left edge, mm.")]
    public required double MinXMm { get; init; }

    [Description("Lower edge, mm.")]
    public required double MinYMm { get; init; }

    [Description("Right edge, mm.")]
    public required double MaxXMm { get; init; }

    [Description("Upper edge, mm.")]
    public required double MaxYMm { get; init; }
}
