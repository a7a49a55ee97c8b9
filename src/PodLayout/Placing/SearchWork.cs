namespace PodLayout.Placing;

/// <summary>What a search took, in counts that depend neither on the machine nor on the number of threads.</summary>
/// <param name="Rows">Support rows made.</param>
/// <param name="Pairs">Pairs of a seat and a point of which it was asked whether the one supports the other.</param>
internal readonly record struct SearchWork(long Rows, long Pairs)
{
    /// <summary>Both together.</summary>
    public static SearchWork operator +(SearchWork a, SearchWork b) => new(a.Rows + b.Rows, a.Pairs + b.Pairs);
}
