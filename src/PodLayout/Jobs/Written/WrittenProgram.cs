using System.Collections.Immutable;
using System.ComponentModel;
using PodLayout.Geometry;
using PodLayout.JsonFiles;
using PodLayout.Programs;

namespace PodLayout.Jobs.Written;

/// <summary>The posted program as written.</summary>
internal sealed record WrittenProgram
{
    [Description("The program, as a path from the folder of this file.")]
    public required string File { get; init; }

    [Description("Where the program's Z zero lies: partFace, partUnderside, podFace or boardFace.")]
    public required ZZero ZZero { get; init; }

    [Description("The tools that it uses.")]
    [AtLeast(1)]
    [ListOf<WrittenTool>]
    public required ImmutableArray<WrittenTool> Tools { get; init; }

    [Description("Where the program's X and Y zero lies in the drawing, [x, y] in mm; the drawing's zero when not given.")]
    public Point2 OffsetMm { get; init; }

    [Description("Greatest difference between an arc's radius at its start and its end, mm; 0.002 mm, or 0.0002 in for lines in inches, when not given.")]
    [Bounds(From = 0.0001, To = 1)]
    public double? ArcToleranceMm { get; init; }

    [Description("Whether lines that begin with a slash are left out; they are read as being run when not given.")]
    public bool SlashLinesLeftOut { get; init; }
}

/// <summary>A tool as written.</summary>
internal sealed record WrittenTool
{
    [Description("Its number in the program.")]
    [Bounds(From = 0, To = 100_000)]
    public required int Number { get; init; }

    [Description("Free remark; not used.")]
    [LongestText(LongestTextAttribute.Remark)]
    public string? Note { get; init; }

    [Description("Greatest cutting diameter, mm.")]
    [Bounds(From = 0.01, To = 1000)]
    public required double DiameterMm { get; init; }

    [Description("What is particular to this tool, for the forces on the part.")]
    public WrittenCutter? Cutter { get; init; }

    [Description("Form of its end: flat, ball, bull (with cornerRadiusMm) or vee (with angleDeg); flat when not given.")]
    public WrittenCutterForm CornerForm { get; init; }

    [Description("bull: radius of the corners, mm, at most half the diameter.")]
    [Bounds(From = 0.01, To = 500)]
    public double? CornerRadiusMm { get; init; }

    [Description("vee: the whole angle at the point, degrees.")]
    [Bounds(From = 0.001, To = 179)]
    public double? AngleDeg { get; init; }
}

/// <summary>Form of a tool's end, as written.</summary>
internal enum WrittenCutterForm
{
    Flat,
    Ball,
    Bull,
    Vee,
}
