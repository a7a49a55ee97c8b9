namespace PodLayout.Holding;

/// <summary>
/// A small motion of the part as a rigid body: how its origin moves (mm) and how it turns (radians), both as small as one likes.
/// </summary>
/// <param name="X">The origin's motion along X.</param>
/// <param name="Y">The origin's motion along Y.</param>
/// <param name="Z">The origin's motion upwards.</param>
/// <param name="AboutX">Turn about X.</param>
/// <param name="AboutY">Turn about Y.</param>
/// <param name="AboutZ">Turn about Z.</param>
public readonly record struct Motion(double X, double Y, double Z, double AboutX, double AboutY, double AboutZ)
{
    /// <summary>Size of the tilt: the turn about an axis in the plane.</summary>
    public double Tilt => Math.Sqrt(AboutX * AboutX + AboutY * AboutY);

    /// <summary>The same motion, larger or smaller.</summary>
    public Motion Scaled(double by) => new(X * by, Y * by, Z * by, AboutX * by, AboutY * by, AboutZ * by);

    /// <summary>Work that a wrench does on the way, N mm.</summary>
    public double Work(Wrench w) =>
        X * w.Fx + Y * w.Fy + Z * w.Fz + AboutX * w.Mx + AboutY * w.My + AboutZ * w.Mz;

    /// <summary>How high a point of the underside rises.</summary>
    public double RiseAt(double x, double y) => Z + AboutX * y - AboutY * x;

    /// <summary>How far a point of the underside slides.</summary>
    public double SlideAt(double x, double y)
    {
        double alongX = X - AboutZ * y, alongY = Y + AboutZ * x;
        return Math.Sqrt(alongX * alongX + alongY * alongY);
    }
}
