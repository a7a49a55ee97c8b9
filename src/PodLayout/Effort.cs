namespace PodLayout;

/// <summary>How much work planning may take.</summary>
/// <param name="Threads">Threads to use; the result does not depend on it. At least 1.</param>
/// <param name="TimeLimit">After this the best layout found is returned; null for no limit.</param>
public sealed record Effort(int Threads, TimeSpan? TimeLimit);
