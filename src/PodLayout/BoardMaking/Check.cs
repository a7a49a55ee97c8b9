using PodLayout.Findings;

namespace PodLayout.BoardMaking;

/// <summary>One thing that was checked.</summary>
/// <param name="What">What it is.</param>
/// <param name="Value">The figure that was computed.</param>
/// <param name="Limit">What it is held against; empty for a figure that is only told.</param>
/// <param name="Finding">What is wrong; null when nothing is.</param>
public sealed record Check(string What, string Value, string Limit, Finding? Finding = null);
