namespace PodLayout.Cuts;

/// <summary>Which lines an operation follows.</summary>
public abstract record CutLines
{
    /// <summary>All lines of a layer of the drawing.</summary>
    /// <param name="Name">Its name or pattern.</param>
    public sealed record OfLayer(string Name) : CutLines;

    /// <summary>The part's outline.</summary>
    public sealed record Outline : CutLines;

    /// <summary>The part's holes.</summary>
    public sealed record Holes : CutLines;
}
