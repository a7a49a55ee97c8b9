using System.Collections.Immutable;
using PodLayout.Parts;
using PodLayout.Shops;

namespace PodLayout.Jobs;

/// <summary>Everything that is asked, checked: the part, the shop, the rules and where the part should lie.</summary>
/// <param name="Name">What the shop calls the job.</param>
/// <param name="Part">The part to hold.</param>
/// <param name="Shop">What there is to hold it with.</param>
/// <param name="Margins">Distances to keep.</param>
/// <param name="Support">How far the part may reach beyond its pods.</param>
/// <param name="Placement">Where it should lie.</param>
public sealed record Job(string Name, Part Part, Shop Shop, Margins Margins, SupportRules Support, PlacementWish Placement)
{
    /// <summary>What stands on the board now; null when it is bare, or when that does not matter.</summary>
    public StandingLayout? Standing { get; init; }

    /// <summary>Where the program has its zero; null when the job names no program.</summary>
    public ProgramZero? ProgramZero { get; init; }

    /// <summary>What the job says of how firmly its part is held.</summary>
    public HoldingWish Holding { get; init; } = new(HoldingRules.Default.LeastFactor, null);

    /// <summary>What comes loose when the part is cut out, the largest first; empty where no blank is given, or in files of before it was kept.</summary>
    public ImmutableArray<Offcut> Offcuts { get; init; } = [];

    /// <summary>Whether the job states the blank; null in files of before it was kept.</summary>
    public bool? IsBlankStated { get; init; } = false;

    /// <summary>Pods that must stand in the layout.</summary>
    public ImmutableArray<KeptPod> Keep { get; init; } = [];
}
