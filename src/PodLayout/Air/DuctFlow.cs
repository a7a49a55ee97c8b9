namespace PodLayout.Air;

/// <summary>Pressure lost by air that flows slowly through a channel of rectangular section.</summary>
/// <remarks>
/// Fully developed laminar flow, from the series solution of Boussinesq (1868) as given by Shah and London, Laminar Flow
/// Forced Convection in Ducts (1978); the source is cited from memory. The flow is that at the channel's own pressure.
/// </remarks>
public static class DuctFlow
{
    /// <summary>Viscosity of air at 20 degrees Celsius, Pa s; hardly changes with pressure.</summary>
    public const double AirViscosityPaS = 1.813e-5;

    /// <summary>Density of air at 20 degrees Celsius and 101325 Pa, kg/m3: the most it can be in a channel under vacuum.</summary>
    public const double AirDensityKgPerM3 = 1.204;

    /// <summary>Above this Reynolds number the flow may turn turbulent, and the laminar formula gives too little.</summary>
    public const double LaminarUpTo = 2000;

    // Terms fall with the fifth power: 25 leave less than a millionth.
    private const int Terms = 25;

    /// <summary>The Darcy friction factor times the Reynolds number, which depends on the section's shape only.</summary>
    public static double FrictionReynolds(double widthMm, double depthMm)
    {
        double longSide = Math.Max(widthMm, depthMm), shortSide = Math.Min(widthMm, depthMm), ratio = shortSide / longSide;
        double sum = 0;
        for (var n = 1; n < 2 * Terms; n += 2)
        {
            sum += Math.Tanh(n * Math.PI / (2 * ratio)) / Math.Pow(n, 5);
        }

        // Mean velocity between parallel plates, less the share of the short sides' walls.
        var share = 1 - 192 / Math.Pow(Math.PI, 5) * ratio * sum;
        return 96 / (share * Math.Pow(1 + ratio, 2));
    }

    /// <summary>Pressure lost, Pa.</summary>
    /// <param name="widthMm">Width of the channel.</param>
    /// <param name="depthMm">Its depth.</param>
    /// <param name="lengthMm">Its length.</param>
    /// <param name="flowLPerMin">Flow, litres a minute at the channel's pressure.</param>
    public static double LossPa(double widthMm, double depthMm, double lengthMm, double flowLPerMin)
    {
        var (area, diameter) = (widthMm * depthMm * 1e-6, HydraulicDiameterM(widthMm, depthMm));
        var velocity = flowLPerMin / 60_000 / area;
        return FrictionReynolds(widthMm, depthMm) * AirViscosityPaS * (lengthMm / 1000) * velocity / (2 * diameter * diameter);
    }

    /// <summary>Reynolds number with the density of air that is not yet thinned.</summary>
    public static double Reynolds(double widthMm, double depthMm, double flowLPerMin) =>
        AirDensityKgPerM3 * (flowLPerMin / 60_000 / (widthMm * depthMm * 1e-6)) * HydraulicDiameterM(widthMm, depthMm) / AirViscosityPaS;

    /// <summary>Four times the section over its circumference, m.</summary>
    public static double HydraulicDiameterM(double widthMm, double depthMm) => 2 * widthMm * depthMm / (widthMm + depthMm) / 1000;
}
