namespace PodLayout.Placing;

/// <summary>How far a search of placements goes.</summary>
internal sealed record SearchCourse
{
    /// <summary>Through all offsets, after a few have been tried.</summary>
    public static SearchCourse Whole { get; } = new();

    /// <summary>Through all offsets; a layout is known already.</summary>
    public static SearchCourse WithoutTries { get; } = new() { Tries = false };

    /// <summary>The same as <see cref="Whole"/>, unless what would do by pulls falls short by springs where it was tried.</summary>
    public static SearchCourse UnlessShort { get; } = new() { EndsWhereShort = true };

    /// <summary>Through so much as a search takes that comes upon something.</summary>
    public static SearchCourse Glance { get; } = new() { MostNodes = 16 };

    /// <summary>To the first layout, if it is soon come upon: time is up.</summary>
    public static SearchCourse ToFirst { get; } = new() { EndsAtFirst = true, MostNodes = 4 };

    /// <summary>Whether a few offsets are tried first, so that there is something to beat.</summary>
    public bool Tries { get; private init; } = true;

    /// <summary>Whether the search ends where the first tries fell short by springs.</summary>
    public bool EndsWhereShort { get; private init; }

    /// <summary>Whether the first layout is enough.</summary>
    public bool EndsAtFirst { get; private init; }

    /// <summary>Sets of placements that are examined at most.</summary>
    public int MostNodes { get; private init; } = int.MaxValue;
}
