namespace PodLayout.Layouts;

/// <summary>A pod of a layout that was changed by hand, and what is wrong with it.</summary>
/// <param name="Pod">Its index.</param>
/// <param name="Counts">Whether it still counts as holding the part; it then breaks a rule all the same.</param>
public sealed record PodFault(int Pod, bool Counts);
