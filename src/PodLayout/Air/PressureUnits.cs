namespace PodLayout.Air;

/// <summary>Units of pressure that gauges show, kPa each.</summary>
/// <remarks>NIST SP 811 (2008), appendix B.8.</remarks>
public static class PressureUnits
{
    /// <summary>Inch of mercury at 0 degrees Celsius.</summary>
    public const double InHgKPa = 3.386389;

    /// <summary>Pound-force per square inch.</summary>
    public const double PsiKPa = 6.894757;

    /// <summary>Torr.</summary>
    public const double TorrKPa = 0.1333224;

    /// <summary>Millibar.</summary>
    public const double MbarKPa = 0.1;
}
