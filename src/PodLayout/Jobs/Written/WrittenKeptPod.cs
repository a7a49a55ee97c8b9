using System.ComponentModel;
using PodLayout.JsonFiles;

namespace PodLayout.Jobs.Written;

/// <summary>A pod that must stand, as written.</summary>
internal sealed record WrittenKeptPod
{
    [Description("Name of its pod type in the shop.")]
    public required string Pod { get; init; }

    [Description("Whether it stands turned by a quarter; false when not given.")]
    public bool Turned { get; init; }

    [Description("The groove along its left edge, counted from 1 from the datum, as in layout.json.")]
    [Bounds(From = 1, To = 100_000)]
    public required int Column { get; init; }

    [Description("The groove along its lower edge, counted from 1 from the datum, as in layout.json.")]
    [Bounds(From = 1, To = 100_000)]
    public required int Row { get; init; }
}
