using System.Collections.Immutable;
using System.ComponentModel;
using PodLayout.JsonFiles;
using PodLayout.Parts;

namespace PodLayout.Jobs.Written;

/// <summary>A job as a person writes it in <c>job.json</c>. The published schema is made from these types.</summary>
[Description("What is asked: the part's drawing, the wood, the distances to keep and where the part may lie.")]
internal sealed record WrittenJob
{
    [Description("Where the schema lies; for editors only.")]
    public string? Schema { get; init; }

    [Description("Version of this form: 1.")]
    public required int Version { get; init; }

    [Description("What the shop calls the job; the drawing's file name when not given.")]
    public string? Name { get; init; }

    [Description("Free remark; not used.")]
    [LongestText(LongestTextAttribute.Remark)]
    public string? Note { get; init; }

    [Description("The part's drawing (.dxf or .svg), as a path from the folder of this file.")]
    public required string Drawing { get; init; }

    [Description("Unit of the drawing; goes before what the drawing says of itself.")]
    public WrittenUnit? Units { get; init; }

    [Description("Layer that holds the part's outline; the largest ring of the drawing when not given.")]
    public string? OutlineLayer { get; init; }

    [Description("Number of the part that is meant, where the drawing holds several, as podlayout inspect counts them.")]
    [Bounds(From = 1, To = 100_000)]
    public int? Part { get; init; }

    [Description("What the layers of the drawing hold, by layer name (any case; * stands for any characters); a layer that is not named here holds outline and holes.")]
    [MapOf<LayerRole>]
    public ImmutableSortedDictionary<string, LayerRole> Layers { get; init; } =
        ImmutableSortedDictionary<string, LayerRole>.Empty;

    [Description("Ends of drawn lines nearer than this are joined, with a warning, mm.")]
    [Bounds(From = 0, To = 10)]
    public double JoinGapMm { get; init; } = Tolerances.JoinGapMm;

    [Description("Greatest distance between a drawn curve and the chords that stand for it, mm.")]
    [Bounds(From = 0.0001, To = 1)]
    public double ChordToleranceMm { get; init; } = Tolerances.ChordMm;

    [Description("Thickness of the part, mm.")]
    [Bounds(From = 0.01, To = 1000)]
    public required double ThicknessMm { get; init; }

    [Description("The wood by its name in the trade, for instance hard maple, northern red oak or birch plywood; a name that is not known is warned about.")]
    public string Species { get; init; } = "";

    [Description("Own figures of the wood, where they are known better than by its species.")]
    public WrittenWood? Wood { get; init; }

    [Description("How the underside is: planed, or rough, which leaks more; planed when not given.")]
    public WrittenUnderside Underside { get; init; }

    [Description("Direction of the grain in the drawing, degrees counter-clockwise from X.")]
    [Bounds(From = -360, To = 360)]
    public double GrainDeg { get; init; }

    [Description("Least distance from a pod's upper seal to the edge of sound wood, mm.")]
    [Bounds(From = 0, To = 1000)]
    public double SealMarginMm { get; init; } = 3;

    [Description("Least distance from a pod's body to the finished line of a through-cut, mm.")]
    [Bounds(From = 0, To = 1000)]
    public double CutClearanceMm { get; init; } = 3;

    [Description("How far the part's edge may reach beyond its nearest pod, through the wood, mm: one number, or one along and one across the grain; 60 when not given.")]
    public WrittenOverhang OverhangMm { get; init; } = new WrittenOverhang.Same { Mm = 60 };

    [Description("How far any point within the part may be from its nearest pod, through the wood, mm.")]
    [Bounds(From = 0.01, To = 10_000)]
    [NullMeans("No such rule.")]
    public double? InteriorSpanMm { get; init; } = 200;

    [Description("A floor that a cut from the face leaves thinner than this is thin, mm; 0 for no such rule.")]
    [Bounds(From = 0, To = 1000)]
    public double ThinFloorMm { get; init; } = 6;

    [Description("How far any point of a thin floor may be from its nearest pod, through the wood, mm.")]
    [Bounds(From = 1, To = 10_000)]
    public double ThinFloorSpanMm { get; init; } = 60;

    [Description("Whether there is to be no layout at all where not every point can be supported; otherwise the layout comes that leaves least beyond its limits, with its own exit code.")]
    public bool MustSupportAll { get; init; }

    [Description("How far the vacuum of a pod may suck in the wood above it, mm; pods keep off floors that would sag more.")]
    [Bounds(From = 0.01, To = 10)]
    public double FloorSagMm { get; init; } = 0.25;

    [Description("How many times the stress that a pod's vacuum causes in the wood above it the wood's strength must be, along and across the grain; pods keep off floors that are weaker.")]
    [Bounds(From = 1, To = 100)]
    public double FloorStressFactor { get; init; } = 2;

    [Description("Points along the edges that must be supported are at most this far apart, mm.")]
    [Bounds(From = 0.5, To = 1000)]
    public double EdgeStepMm { get; init; } = 10;

    [Description("Points within the part that must be supported stand on a square lattice of this step, mm.")]
    [Bounds(From = 1, To = 1000)]
    public double InteriorStepMm { get; init; } = 30;

    [Description("Cuts by operation, beside the part's outline and holes, which pods always keep the cut clearance from.")]
    [AtMost(1000)]
    [ListOf<WrittenCut>]
    public ImmutableArray<WrittenCut> Cuts { get; init; } = [];

    [Description("The posted program: pods keep clear of all that it really cuts.")]
    public WrittenProgram? Program { get; init; }

    [Description("The cutter and its cut, for the forces on the part: for all operations and tools that say nothing else.")]
    public WrittenCutter? Cutter { get; init; }

    [Description("How firmly the part is to be held.")]
    public WrittenJobHolding? Holding { get; init; }

    [Description("A tool's tip lower than this above the part's underside counts as cutting below it, mm; a negative number allows a scratch that deep; 0.1 when not given.")]
    [Bounds(From = -100, To = 100)]
    public double LowestTipMm { get; init; } = 0.1;

    [Description("Least height of the deepest tip above the board, mm; 2 when not given.")]
    [Bounds(From = 0, To = 1000)]
    public double BoardClearanceMm { get; init; } = 2;

    [Description("The blank that the part is cut from: loose pieces are then told.")]
    public WrittenBlank? Blank { get; init; }

    [Description("The shop's file, as a path from the folder of this file; the built-in shop when not given.")]
    public string? Shop { get; init; }

    [Description("Pods that must stand in the layout, for instance because they stand on the board already.")]
    [ListOf<WrittenKeptPod>]
    public ImmutableArray<WrittenKeptPod> Keep { get; init; } = [];

    [Description("Areas of the board where no pod may stand, in board coordinates.")]
    [AtMost(2000)]
    [ListOf<WrittenAvoid>]
    public ImmutableArray<WrittenAvoid> Avoid { get; init; } = [];

    [Description("Areas of the part under which no pod may stand, in the drawing's coordinates (mm).")]
    [AtMost(2000)]
    [ListOf<WrittenAvoid>]
    public ImmutableArray<WrittenAvoid> AvoidOnPart { get; init; } = [];

    [Description("Where the part should lie: \"search\" for the best place as drawn, or a place or angles; \"search\" when not given.")]
    public WrittenPlacement Placement { get; init; } = new WrittenPlacement.Word();
}
