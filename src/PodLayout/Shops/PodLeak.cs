namespace PodLayout.Shops;

/// <summary>Air that leaks in at a pod: past its upper seal, and through the wood within it.</summary>
/// <param name="SealLPerMinPerM">Past a metre of seal at <see cref="AtKPa"/>, litres of free air a minute.</param>
/// <param name="WoodLPerMinPerM2">Through a square metre of wood at <see cref="AtKPa"/>, litres of free air a minute.</param>
public sealed record PodLeak(double SealLPerMinPerM, double WoodLPerMinPerM2)
{
    /// <summary>The vacuum that leaks are given at, kPa below <see cref="Air.StandardAtmosphere.SeaLevelKPa"/>.</summary>
    public const double AtKPa = 80;

    /// <summary>Past a metre of seal on a planed underside. From memory, of the order of what is measured; every shop's differs.</summary>
    public const double PlanedLPerMinPerM = 1;

    /// <summary>Past a metre of seal on a rough underside. From memory, likewise.</summary>
    public const double RoughLPerMinPerM = 8;

    /// <summary>A planed underside of tight wood.</summary>
    public static PodLeak Default { get; } = new(PlanedLPerMinPerM, 20);
}
