namespace PodLayout.Holding;

/// <summary>What one pod has to do with holding the part.</summary>
/// <param name="VacuumKPa">Gauge vacuum at it, kPa.</param>
/// <param name="PullN">Force with which the vacuum pulls the part down on it, N.</param>
/// <param name="BearsN">
/// Force with which the part presses on it while the cutter is at the weakest place, shared among the pods as evenly as can be, N.
/// </param>
/// <param name="FactorIfLost">The holding factor of the layout when this pod loses its upper seal; infinite when no force of the cutter is enough.</param>
public sealed record PodHold(double VacuumKPa, double PullN, double BearsN, double FactorIfLost);
