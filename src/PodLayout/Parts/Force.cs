namespace PodLayout.Parts;

/// <summary>A force on the part: X and Y in the drawing's axes, Z up, newtons.</summary>
/// <param name="XN">Along the drawing's X, N.</param>
/// <param name="YN">Along the drawing's Y, N.</param>
/// <param name="ZN">Upwards, N: positive lifts the part off its pods.</param>
public readonly record struct Force(double XN, double YN, double ZN)
{
    /// <summary>Its size, N.</summary>
    public double SizeN => Math.Sqrt(XN * XN + YN * YN + ZN * ZN);
}
