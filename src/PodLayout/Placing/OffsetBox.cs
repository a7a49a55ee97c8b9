using PodLayout.Geometry;

namespace PodLayout.Placing;

/// <summary>A box of offsets inside one pitch of the grid, mm.</summary>
/// <param name="Centre">Middle of the box.</param>
/// <param name="HalfXMm">Half its extent along X.</param>
/// <param name="HalfYMm">Half its extent along Y.</param>
public readonly record struct OffsetBox(Point2 Centre, double HalfXMm, double HalfYMm)
{
    /// <summary>All offsets within one pitch.</summary>
    public static OffsetBox WholePitch(double pitchMm) => new(new(pitchMm / 2, pitchMm / 2), pitchMm / 2, pitchMm / 2);

    /// <summary>The two halves across the longer side (across X when equal).</summary>
    public (OffsetBox Low, OffsetBox High) Split() => HalfXMm >= HalfYMm
        ? (this with { Centre = new(Centre.X - HalfXMm / 2, Centre.Y), HalfXMm = HalfXMm / 2 },
            this with { Centre = new(Centre.X + HalfXMm / 2, Centre.Y), HalfXMm = HalfXMm / 2 })
        : (this with { Centre = new(Centre.X, Centre.Y - HalfYMm / 2), HalfYMm = HalfYMm / 2 },
            this with { Centre = new(Centre.X, Centre.Y + HalfYMm / 2), HalfYMm = HalfYMm / 2 });
}
