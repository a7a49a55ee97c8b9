namespace PodLayout.Choice;

/// <summary>What is asked of a search for a choice of seats, and how far it goes for it.</summary>
public sealed record Wanted
{
    private Wanted()
    {
    }

    /// <summary>The fewest pods, proven.</summary>
    public static Wanted Fewest { get; } = new();

    /// <summary>Any choice within the limit, or the proof that there is none.</summary>
    public static Wanted Any { get; } = new() { IsAny = true };

    /// <summary>Any choice within the limit that exchanging pods comes upon; when it comes upon none nothing is said.</summary>
    public static Wanted AnyQuickly { get; } = new() { IsAny = true, IsQuick = true };

    /// <summary>Whether any choice within the limit will do.</summary>
    public bool IsAny { get; private init; }

    /// <summary>Whether the full model is left alone.</summary>
    public bool IsQuick { get; private init; }

    /// <summary>
    /// A bound of at most this many pods ends the search with a rough choice, whatever room and missing rows would add: no proof is
    /// near. Negative for never.
    /// </summary>
    public int RoughUpTo { get; init; } = -1;

    /// <summary>The same once all points, room and stock are reckoned with in the relaxation.</summary>
    public int RoughWithRoomUpTo { get; init; } = -1;

    /// <summary>Whether a rough choice is given where only the full model would tell.</summary>
    public bool IsRoughBeforeFull { get; init; }
}
