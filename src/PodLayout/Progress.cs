namespace PodLayout;

/// <summary>Where the search stands.</summary>
/// <param name="PodsOfBest">Pods of the best layout so far; null when there is none yet.</param>
/// <param name="FewestPossible">Proven so far: no layout has fewer; null when what was looked at holds none at all.</param>
/// <param name="Placements">Placements (or boxes of placements) examined.</param>
/// <param name="Open">Boxes still to be examined.</param>
public sealed record Progress(int? PodsOfBest, int? FewestPossible, int Placements, int Open);
