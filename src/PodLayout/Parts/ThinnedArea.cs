using PodLayout.Geometry;

namespace PodLayout.Parts;

/// <summary>Where a cut that does not go through leaves less wood than the part is thick.</summary>
/// <param name="Name">What makes it, in the shop's words.</param>
/// <param name="Source">Where that comes from.</param>
/// <param name="Area">Its extent.</param>
/// <param name="LeftMm">Wood that is left there, mm; where it is uneven, the least.</param>
/// <param name="Path">Its place in the job, for messages.</param>
public sealed record ThinnedArea(string Name, string Source, Region Area, double LeftMm, string Path);
