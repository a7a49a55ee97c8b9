namespace PodLayout.Placing;

/// <summary>How a search ended.</summary>
/// <param name="Best">The best layout found; null when there is none.</param>
/// <param name="FewestPossible">No layout of the searched set has fewer pods than this.</param>
/// <param name="OpenToleranceMm">
/// Side of the boxes that were left open although their bound does not exclude them: the bound leaves out layouts that exist
/// only inside one of these. 0 when there are none.
/// </param>
/// <param name="Nodes">Sets of placements examined.</param>
/// <param name="IsCut">Whether the work was cut short.</param>
internal sealed record SearchEnd(FoundLayout? Best, int FewestPossible, double OpenToleranceMm, int Nodes, bool IsCut)
{
    /// <summary>What it took.</summary>
    public SearchWork Work { get; init; }

    /// <summary>The least bound of the boxes that were left open; the largest number there is when there are none.</summary>
    public int LeftOpenBound { get; init; } = int.MaxValue;

    /// <summary>Choices that hold by pulls and fall short by springs: the bound does not count them out.</summary>
    public int ShortBySprings { get; init; }
}
