using System.ComponentModel;
using PodLayout.Geometry;
using PodLayout.JsonFiles;

namespace PodLayout.Shops.Written;

/// <summary>One port as written.</summary>
[InchesToo]
internal sealed record WrittenPort
{
    [Description("Short name for the card; column and row of its groove cell when not given.")]
    public string? Name { get; init; }

    [Description("Its centre, [x, y] in mm; it must lie in a land between grooves.")]
    public required Point2 AtMm { get; init; }
}

/// <summary>Which port is meant.</summary>
[EitherOf(typeof(Named), typeof(Placed))]
internal abstract record WrittenPortMark
{
    /// <summary>By its name.</summary>
    [Bare]
    public sealed record Named : WrittenPortMark
    {
        [Description("Name of the port.")]
        public string Name { get; init; } = "";
    }

    /// <summary>By its place.</summary>
    [Bare]
    public sealed record Placed : WrittenPortMark
    {
        [Description("Centre of the port, [x, y] in mm.")]
        public Point2 AtMm { get; init; }
    }
}
