namespace PodLayout.Benchmarks.Growth;

/// <summary>One run of a series.</summary>
/// <param name="X">What was varied.</param>
/// <param name="Pods">Pods found; null when there is no layout.</param>
/// <param name="IsProven">Whether fewer were ruled out.</param>
/// <param name="Seats">Seats of the found placement.</param>
/// <param name="Points">Points that must be supported.</param>
/// <param name="Nodes">Boxes of offsets examined.</param>
/// <param name="Pairs">Seat-point pairs asked for.</param>
/// <param name="WallMs">Wall time, ms.</param>
/// <param name="ProcessorMs">Processor time of all threads, ms.</param>
internal sealed record GrowthPoint(
    double X, int? Pods, bool IsProven, int Seats, int Points, int Nodes, long Pairs, double WallMs, double ProcessorMs);
