using PodLayout.Parts;

namespace PodLayout.Holding;

/// <summary>A force and its moment about the origin: newtons and newton millimetres.</summary>
/// <param name="Fx">Force along X, N.</param>
/// <param name="Fy">Force along Y, N.</param>
/// <param name="Fz">Force upwards, N.</param>
/// <param name="Mx">Moment about X, N mm.</param>
/// <param name="My">Moment about Y, N mm.</param>
/// <param name="Mz">Moment about Z, N mm.</param>
public readonly record struct Wrench(double Fx, double Fy, double Fz, double Mx, double My, double Mz)
{
    /// <summary>The wrench of a force that acts at a point (mm).</summary>
    public static Wrench Of(Force force, double x, double y, double z) => new(
        force.XN,
        force.YN,
        force.ZN,
        y * force.ZN - z * force.YN,
        z * force.XN - x * force.ZN,
        x * force.YN - y * force.XN);

    /// <summary>Sum of two wrenches.</summary>
    public static Wrench operator +(Wrench a, Wrench b) =>
        new(a.Fx + b.Fx, a.Fy + b.Fy, a.Fz + b.Fz, a.Mx + b.Mx, a.My + b.My, a.Mz + b.Mz);

    /// <summary>A wrench scaled.</summary>
    public static Wrench operator *(Wrench a, double by) =>
        new(a.Fx * by, a.Fy * by, a.Fz * by, a.Mx * by, a.My * by, a.Mz * by);
}
