namespace PodLayout.Reading.Curves;

/// <summary>How a start and an end angle were understood.</summary>
internal enum AngleReading
{
    /// <summary>As written.</summary>
    Plain,

    /// <summary>The end misses the start by a hair after a whole turn: the whole turn.</summary>
    NearlyWhole,

    /// <summary>Start and end are one number: the whole turn.</summary>
    EqualEnds,

    /// <summary>A turn and a little more: the whole turn may be meant, or the little.</summary>
    Doubtful,
}
