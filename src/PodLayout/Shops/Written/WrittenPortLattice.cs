using System.ComponentModel;
using PodLayout.Geometry;
using PodLayout.JsonFiles;

namespace PodLayout.Shops.Written;

/// <summary>Ports at equal distances, as written.</summary>
[InchesToo]
internal sealed record WrittenPortLattice
{
    [Description("Distance from port to port, mm: one number, or [along X, along Y].")]
    public required WrittenSpacing SpacingMm { get; init; }

    [Description("Centre of any one port of the lattice, [x, y] in mm; it must lie in a land between grooves.")]
    public required Point2 FirstMm { get; init; }
}

/// <summary>A distance both ways, or one for each.</summary>
[EitherOf(typeof(Same), typeof(Each))]
internal abstract record WrittenSpacing
{
    public abstract Point2 Both { get; }

    /// <summary>The same both ways.</summary>
    [Bare]
    public sealed record Same : WrittenSpacing
    {
        [Description("Distance from port to port both ways, mm.")]
        [Bounds(From = 0.01)]
        public double Mm { get; init; }

        public override Point2 Both => new(Mm, Mm);
    }

    /// <summary>One for each way.</summary>
    [Bare]
    public sealed record Each : WrittenSpacing
    {
        [Description("Distance from port to port along X and along Y, mm.")]
        [Bounds(From = 0.01)]
        public Point2 Mm { get; init; }

        public override Point2 Both => Mm;
    }
}
