using System.Collections.Immutable;

namespace PodLayout.Vacuum;

/// <summary>The vacuum that is left at each pod of a layout.</summary>
/// <param name="AtPodKPa">Gauge vacuum under the part at each pod, kPa, in the order of the pods; 0 where the seal is lost.</param>
/// <param name="GaugeKPa">Gauge vacuum at the pump's gauge, kPa: what the operator should read before the spindle starts.</param>
/// <param name="BarometerKPa">Air pressure in the shop, kPa absolute.</param>
/// <param name="FlowLPerMin">Air that the pump moves, litres a minute of free air; 0 where only a gauge reading is known.</param>
/// <param name="Assumptions">What was assumed for want of a figure, one sentence each.</param>
public sealed record VacuumReading(
    ImmutableArray<double> AtPodKPa, double GaugeKPa, double BarometerKPa, double FlowLPerMin, ImmutableArray<string> Assumptions);
