using PodLayout.Air;
using PodLayout.Shops;

namespace PodLayout.Vacuum;

/// <summary>A pod as a way for air: what leaks in, and the holes through which the pump draws it out.</summary>
/// <param name="LeakPerPa2">Leak for each Pa² between the squares of the air's pressure and the pod's, kg/(s Pa²).</param>
/// <param name="HoleM2">Section of its open ports times the hole's coefficient, m².</param>
/// <param name="IsLost">Whether its upper seal is lost: the air's pressure then stands in it.</param>
internal readonly record struct PodBranch(double LeakPerPa2, double HoleM2, bool IsLost)
{
    // Smaller steps of the root of a pressure's fall than this change the pod's pressure by less than a millionth of a pascal.
    private const double RootTolerance = 1e-9;

    /// <summary>The way of a pod through one of its ports: each takes its share of what leaks in.</summary>
    public static PodBranch Of(VacuumSupply supply, PodOnPorts pod, double portDiameterMm, bool isLost)
    {
        var bore = supply.PortBoreMm ?? portDiameterMm;
        return new(LeakOf(supply.Leak, pod.Type) / Math.Max(1, pod.Ports.Length), supply.HoleCoefficient * Math.PI / 4 * bore * bore * 1e-6, isLost);
    }

    /// <summary>What leaks in at a pod of a type, kg/(s Pa²): slow flow past the seal and through the wood.</summary>
    public static double LeakOf(PodLeak leak, PodType type)
    {
        var (seal, area) = Seal(type);
        var litres = leak.SealLPerMinPerM * seal / 1000 + leak.WoodLPerMinPerM2 * area * 1e-6;
        const double Air = StandardAtmosphere.SeaLevelKPa * 1000, Inside = Air - PodLeak.AtKPa * 1000;
        return litres / 60_000 * GasFlow.FreeAirKgPerM3 / (Air * Air - Inside * Inside);
    }

    /// <summary>Pressure in the pod when there is some in the channel under it, Pa.</summary>
    public double PressurePa(double airPa, double channelPa)
    {
        if (IsLost || channelPa >= airPa)
        {
            return airPa;
        }

        // The flow through the hole grows as the root of the fall, so that the root of the fall is what to look for; where the
        // fall is small it is that of air that keeps its density.
        var (leak, hole, most) = (LeakPerPa2, HoleM2, Math.Sqrt(Math.Max(0, airPa - channelPa)));
        const double Heat = GasFlow.GasConstant * GasFlow.TemperatureK;
        var guess = leak * (airPa * airPa - channelPa * channelPa) / hole * Math.Sqrt(Heat / (2 * channelPa));
        var root = Root.Rising(
            s =>
            {
                var inside = channelPa + s * s;
                return hole * GasFlow.ThroughHolePerM2(inside, channelPa) - leak * (airPa * airPa - inside * inside);
            },
            0,
            most,
            guess,
            RootTolerance);
        return Math.Min(airPa, channelPa + root * root);
    }

    /// <summary>Air that comes through the pod into the channel, kg/s.</summary>
    public double Flow(double airPa, double channelPa)
    {
        if (IsLost)
        {
            return HoleM2 * GasFlow.ThroughHolePerM2(airPa, channelPa);
        }

        var inside = PressurePa(airPa, channelPa);
        return LeakPerPa2 * (airPa * airPa - inside * inside);
    }

    // Circumference, mm, and area, mm², within the upper seal's outer edge.
    private static (double CircumferenceMm, double AreaMm2) Seal(PodType type)
    {
        double x = type.Footprint.ExtentXMm - 2 * type.SealInsetAboveMm, y = type.Footprint.ExtentYMm - 2 * type.SealInsetAboveMm;
        return type.Footprint is PodFootprint.Round ? (Math.PI * x, Math.PI / 4 * x * x) : (2 * (x + y), x * y);
    }
}
