using System.Collections.Immutable;

namespace PodLayout.Handover.Setup;

/// <summary>A part of the card under a heading.</summary>
/// <param name="Id">A word that it is linked by; one of <see cref="Order"/>.</param>
/// <param name="Heading">Its heading.</param>
/// <param name="Blocks">What stands in it.</param>
internal sealed record CardSection(string Id, string Heading, ImmutableArray<CardBlock> Blocks)
{
    /// <summary>Where the valves are listed.</summary>
    public const string Valves = "valves";

    /// <summary>Where the gauge reading stands.</summary>
    public const string Holding = "holding";

    /// <summary>Where the warnings stand.</summary>
    public const string Warnings = "offcuts";

    /// <summary>The sections of a card, in the order of work; they are numbered from 1.</summary>
    public static ImmutableArray<string> Order { get; } =
        ["clear", "ports", "pods", Valves, "laying", "heights", Holding, Warnings, "start", "cautions", "basis"];

    /// <summary>What a section is called elsewhere on the card.</summary>
    public static string Named(string id) => $"section {CsvText.Count(Order.IndexOf(id) + 1)}";
}
