namespace PodLayout.Benchmarks.Quality;

/// <summary>What came of an instance. Counts are the same on every machine, times and memory are not.</summary>
/// <param name="Name">The instance.</param>
/// <param name="AreaM2">Area of its wood, m².</param>
/// <param name="Seats">Seats of the chosen placement; 0 without a layout.</param>
/// <param name="Points">Points that must be supported.</param>
/// <param name="Pods">Pods of the layout; null when there is none.</param>
/// <param name="Bound">No layout over all offsets has fewer; null when none was found and none ruled out.</param>
/// <param name="LeftMm">What the layout leaves unsupported, mm.</param>
/// <param name="IsProven">Whether nothing better, neither of what is left nor of pods, or no layout at all, is left over all offsets.</param>
/// <param name="OpenMm">Side of the smallest boxes of offsets that were left undecided; 0 for none.</param>
/// <param name="Nodes">Boxes of offsets examined.</param>
/// <param name="Rows">Support rows made.</param>
/// <param name="Pairs">Pairs of a seat and a point that were asked for.</param>
/// <param name="FirstMs">From the job read to the first layout, ms.</param>
/// <param name="BestMs">To the first layout with as few pods as the last.</param>
/// <param name="ProofMs">To the end of the search.</param>
/// <param name="WholeMs">To the result, overhang made small and holding reckoned.</param>
/// <param name="ProcessorMs">Processor time of all threads up to the result, ms.</param>
/// <param name="StartedMs">Processor time of the process before, for the runtime and to make the job, ms.</param>
/// <param name="PeakMB">The largest working set of the process, MB of 2^20 bytes.</param>
/// <param name="Factor">Holding factor; null without a cutter.</param>
internal sealed record InstanceFigures(
    string Name,
    double AreaM2,
    int Seats,
    int Points,
    int? Pods,
    int? Bound,
    double LeftMm,
    bool IsProven,
    double OpenMm,
    int Nodes,
    long Rows,
    long Pairs,
    double? FirstMs,
    double? BestMs,
    double ProofMs,
    double WholeMs,
    double ProcessorMs,
    double StartedMs,
    double PeakMB,
    double? Factor);
