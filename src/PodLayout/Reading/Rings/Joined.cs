namespace PodLayout.Reading.Rings;

/// <summary>What joining made of the lines of a drawing.</summary>
/// <param name="Rings">Lines that close.</param>
/// <param name="Members">For each ring, the lines it was made of.</param>
/// <param name="Open">Lines that do not, after joining.</param>
/// <param name="OpenMembers">For each of these, the lines it was made of.</param>
/// <param name="Branches">Where more than two ends meet.</param>
internal sealed record Joined(List<DrawnPath> Rings, List<List<DrawnPath>> Members, List<DrawnPath> Open, List<List<DrawnPath>> OpenMembers, List<Branch> Branches);
