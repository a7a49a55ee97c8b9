namespace PodLayout.Air;

/// <summary>Air pressure by altitude.</summary>
/// <remarks>ISO 2533:1975, the same as the US Standard Atmosphere 1976, up to 11 km.</remarks>
public static class StandardAtmosphere
{
    /// <summary>Pressure at sea level, kPa.</summary>
    public const double SeaLevelKPa = 101.325;

    // Sea level temperature, K; fall of temperature, K/m; the exponent g/(L R).
    private const double SeaLevelK = 288.15;
    private const double LapseKPerM = 0.0065;
    private const double Exponent = 5.25588;

    // The earth's radius in the standard, m.
    private const double EarthM = 6_356_766;

    /// <summary>Pressure at a geopotential altitude, kPa.</summary>
    public static double AtGeopotentialKPa(double altitudeM) =>
        SeaLevelKPa * Math.Pow(1 - LapseKPerM * altitudeM / SeaLevelK, Exponent);

    /// <summary>Pressure at a height above sea level as a map gives it, kPa.</summary>
    public static double AtKPa(double heightM) => AtGeopotentialKPa(EarthM * heightM / (EarthM + heightM));
}
