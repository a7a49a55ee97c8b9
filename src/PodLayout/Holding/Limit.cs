namespace PodLayout.Holding;

/// <summary>How far a load can grow before the part moves, and how it then moves.</summary>
/// <param name="Factor">How many times the load can be borne: 0 when the part does not even rest, infinite when no size moves it.</param>
/// <param name="Motion">
/// The motion that the load then sets off, scaled so that the load as it is does work of 1; of no meaning when the factor is
/// infinite.
/// </param>
public readonly record struct Limit(double Factor, Motion Motion);
