namespace PodLayout.Air;

/// <summary>A channel of rectangular section, as a way for air.</summary>
public readonly record struct Channel
{
    // Blasius: f = 0.3164 / Re^(1/4).
    private const double Blasius = 0.3164;

    /// <summary>Makes a channel.</summary>
    /// <param name="widthMm">Width of its section, mm.</param>
    /// <param name="depthMm">Depth of its section, mm.</param>
    /// <param name="lengthMm">Its length, mm; 0 for none, which loses nothing.</param>
    public Channel(double widthMm, double depthMm, double lengthMm)
    {
        var (area, diameter, length) = (widthMm * depthMm * 1e-6, DuctFlow.HydraulicDiameterM(widthMm, depthMm), lengthMm / 1000);
        const double Heat = GasFlow.GasConstant * GasFlow.TemperatureK;
        // Re = m D / (A mu); with f = c/Re the flow is proportional to p1² - p2², with Blasius its 7/4th power is.
        SlowResistance = DuctFlow.FrictionReynolds(widthMm, depthMm) * DuctFlow.AirViscosityPaS * length * Heat / (diameter * diameter * area);
        FastResistance = Blasius * Math.Pow(area * DuctFlow.AirViscosityPaS / diameter, 0.25) * length / diameter * Heat / (area * area);
        MostSlowKgPerS = DuctFlow.LaminarUpTo * area * DuctFlow.AirViscosityPaS / diameter;
    }

    /// <summary>Difference of squared pressures for each kg/s of slow flow, Pa² s/kg.</summary>
    public double SlowResistance { get; }

    /// <summary>Difference of squared pressures for each (kg/s)^(7/4) of fast flow.</summary>
    public double FastResistance { get; }

    /// <summary>Where slow flow ends, kg/s.</summary>
    public double MostSlowKgPerS { get; }
}
