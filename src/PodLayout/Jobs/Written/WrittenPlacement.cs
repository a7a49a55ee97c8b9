using System.Collections.Immutable;
using System.ComponentModel;
using PodLayout.Geometry;
using PodLayout.JsonFiles;

namespace PodLayout.Jobs.Written;

/// <summary>The placement as written.</summary>
[EitherOf(typeof(Word), typeof(InFull))]
internal abstract record WrittenPlacement
{
    /// <summary>Only the word.</summary>
    [Bare]
    public sealed record Word : WrittenPlacement
    {
        [Description("The best offset is searched, the part turned as drawn.")]
        public SearchWord Said { get; init; }
    }

    /// <summary>A place, or angles to search at.</summary>
    public sealed record InFull : WrittenPlacement
    {
        [Description("Where the drawing's zero comes to lie on the board, [x, y] in mm: the part lies exactly there.")]
        public Point2? ZeroOnBoardMm { get; init; }

        [Description("With zeroOnBoardMm: the part's turn about the drawing's zero, degrees counter-clockwise; 0 when not given.")]
        [Bounds(From = -360, To = 360)]
        public double? AngleDeg { get; init; }

        [Description("Instead of zeroOnBoardMm: the best offset is searched at each of these angles, degrees counter-clockwise.")]
        [Bounds(From = -360, To = 360)]
        [AtLeast(1)]
        [AtMost(720)]
        [ListOf<double>]
        public ImmutableArray<double> SearchAnglesDeg { get; init; }

        [Description("Instead of zeroOnBoardMm: the best offset and angle are searched, over every angle of this interval.")]
        public WrittenInterval? SearchAngle { get; init; }
    }
}

/// <summary>An interval of angles as written.</summary>
internal sealed record WrittenInterval
{
    [Description("Smallest angle of the part, degrees counter-clockwise.")]
    [Bounds(From = -360, To = 360)]
    public required double FromDeg { get; init; }

    [Description("Largest angle of the part, degrees counter-clockwise; larger than fromDeg by at most 360.")]
    [Bounds(From = -360, To = 360)]
    public required double ToDeg { get; init; }
}

/// <summary>The word that asks for a search.</summary>
internal enum SearchWord
{
    Search,
}
