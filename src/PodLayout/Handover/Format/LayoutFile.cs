using System.Collections.Immutable;

namespace PodLayout.Handover.Format;

/// <summary>
/// What <c>layout.json</c> holds. It says everything that is needed to check the layout again without any other file.
/// Lengths are in mm, rounded to 0.001 mm. The members stand in this order.
/// </summary>
/// <param name="Schema">Always <c>podlayout-layout</c>.</param>
/// <param name="Version">Version of this format.</param>
/// <param name="Job">What the shop calls the job.</param>
/// <param name="Part">The part, as drawn and as it lies on the board.</param>
/// <param name="Rules">Distances and limits that were kept.</param>
/// <param name="Asked">What was asked about where the part should lie.</param>
/// <param name="Shop">The board and the pods in stock.</param>
/// <param name="Program">Where the job's program has its zero; null when the job names none.</param>
/// <param name="Standing">What stood on the board before; null when that did not matter.</param>
/// <param name="Placement">Where the part lies; null when there is no layout.</param>
/// <param name="Pods">The pods in placing order; empty when there is no layout.</param>
/// <param name="OpenPorts">Names of the ports to open; all others stay plugged.</param>
/// <param name="Support">How well the part is supported; null when there is no layout.</param>
/// <param name="Holding">How it holds the part against the cutter; null when there is no layout or that was not computed.</param>
/// <param name="Proof">What is proven; null when there is no layout.</param>
/// <param name="Unsupported">When there is no layout: what could not be supported.</param>
/// <param name="Interrupted">Whether the work was cut short.</param>
/// <param name="Work">How much was looked at.</param>
/// <param name="Findings">What a person should know, in order.</param>
/// <param name="Cautions">What these figures do not say.</param>
/// <param name="Offcuts">What comes loose when the part is cut out; files of before it was written have no such member.</param>
/// <param name="IsBlankStated">Whether the job states the blank; files of before it was written have no such member.</param>
/// <param name="WaysOut">Changes that were tried because something stays unsupported, the best first; absent where none was.</param>
/// <param name="Mark">The plan's mark, which its other files bear too: a hash of all the other members; files of before it was written have no such member.</param>
public sealed record LayoutFile(
    string Schema,
    int Version,
    string Job,
    PartEntry Part,
    RulesEntry Rules,
    AskedEntry Asked,
    ShopEntry Shop,
    ProgramEntry? Program,
    StandingEntry? Standing,
    PlacementEntry? Placement,
    ImmutableArray<PodEntry> Pods,
    ImmutableArray<string> OpenPorts,
    SupportEntry? Support,
    HoldingEntry? Holding,
    ProofEntry? Proof,
    ImmutableArray<StretchEntry> Unsupported,
    bool Interrupted,
    WorkEntry Work,
    ImmutableArray<FindingEntry> Findings,
    ImmutableArray<string> Cautions,
    ImmutableArray<OffcutEntry>? Offcuts = null,
    bool? IsBlankStated = null,
    ImmutableArray<WayOutEntry>? WaysOut = null,
    string? Mark = null)
{
    /// <summary>The word that tells this format from others.</summary>
    public const string SchemaWord = "podlayout-layout";

    /// <summary>The version that this program writes and reads.</summary>
    public const int CurrentVersion = 1;
}
