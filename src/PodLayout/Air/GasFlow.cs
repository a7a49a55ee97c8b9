namespace PodLayout.Air;

/// <summary>Air through holes and channels when its pressure changes much on the way. Mass flows in kg/s, pressures absolute in Pa.</summary>
/// <remarks>
/// Hole: frictionless flow of a perfect gas, with the critical ratio below which the flow no longer grows (White, Fluid
/// Mechanics, chapter on compressible flow; cited from memory). Channel: isothermal flow of a perfect gas with friction,
/// p1² - p2² = f (L/D) (m/A)² R T; slow flow by <see cref="DuctFlow"/>, fast flow by Blasius (1913), f = 0.3164 Re^-1/4.
/// </remarks>
public static class GasFlow
{
    /// <summary>Ratio of specific heats of air.</summary>
    public const double Kappa = 1.4;

    /// <summary>Gas constant of air, J/(kg K).</summary>
    public const double GasConstant = 287.05;

    /// <summary>Temperature that is reckoned with, K: 20 degrees Celsius.</summary>
    public const double TemperatureK = 293.15;

    /// <summary>Density of free air (101.325 kPa, 20 degrees Celsius), kg/m³.</summary>
    public const double FreeAirKgPerM3 = StandardAtmosphere.SeaLevelKPa * 1000 / (GasConstant * TemperatureK);

    /// <summary>Ratio of the pressures below which a hole lets no more air through.</summary>
    public static double CriticalRatio { get; } = Math.Pow(2 / (Kappa + 1), Kappa / (Kappa - 1));

    private static readonly double ChokedFactor =
        Math.Sqrt(Kappa / (GasConstant * TemperatureK)) * Math.Pow(2 / (Kappa + 1), (Kappa + 1) / (2 * (Kappa - 1)));

    /// <summary>Through a hole, per square metre of its section.</summary>
    /// <param name="before">Pressure before it, Pa.</param>
    /// <param name="after">Pressure behind it, Pa; nothing flows when it is not lower.</param>
    public static double ThroughHolePerM2(double before, double after)
    {
        if (!(after < before))
        {
            return 0;
        }

        var ratio = after / before;
        if (ratio <= CriticalRatio)
        {
            return ChokedFactor * before;
        }

        return before * Math.Sqrt(
            2 * Kappa / ((Kappa - 1) * GasConstant * TemperatureK) * (Math.Pow(ratio, 2 / Kappa) - Math.Pow(ratio, (Kappa + 1) / Kappa)));
    }

    /// <summary>The pressure before a channel that drives a flow through it, Pa; the turn of <see cref="ThroughChannel"/>.</summary>
    /// <param name="channel">The channel.</param>
    /// <param name="flowKgPerS">The flow.</param>
    /// <param name="after">Pressure behind it, Pa.</param>
    public static double BeforeChannel(in Channel channel, double flowKgPerS, double after) =>
        Math.Sqrt(after * after + Squares(channel, flowKgPerS));

    /// <summary>The pressure that a flow leaves behind a channel, Pa; 0 where the channel cannot carry so much.</summary>
    /// <param name="channel">The channel.</param>
    /// <param name="flowKgPerS">The flow.</param>
    /// <param name="before">Pressure before it, Pa.</param>
    public static double BehindChannel(in Channel channel, double flowKgPerS, double before) =>
        Math.Sqrt(Math.Max(0, before * before - Squares(channel, flowKgPerS)));

    /// <summary>What a channel of rectangular section lets through; never falls as the pressure before it rises.</summary>
    /// <param name="channel">The channel.</param>
    /// <param name="before">Pressure before it, Pa.</param>
    /// <param name="after">Pressure behind it, Pa; nothing flows when it is not lower.</param>
    public static double ThroughChannel(in Channel channel, double before, double after)
    {
        var squares = before * before - after * after;
        if (!(squares > 0))
        {
            return 0;
        }

        var slow = squares / channel.SlowResistance;
        if (slow <= channel.MostSlowKgPerS)
        {
            return slow;
        }

        // Where slow flow ends the friction jumps up: the flow then stays until the difference drives as much of the fast kind.
        return Math.Max(channel.MostSlowKgPerS, Math.Pow(squares / channel.FastResistance, 4.0 / 7));
    }

    private static double Squares(in Channel channel, double flow) =>
        flow <= channel.MostSlowKgPerS ? channel.SlowResistance * flow : channel.FastResistance * Math.Pow(flow, 1.75);
}
