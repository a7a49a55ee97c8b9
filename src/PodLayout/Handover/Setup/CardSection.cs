using System.Collections.Immutable;

namespace PodLayout.Handover.Setup;

/// <summary>A part of the card under a heading.</summary>
/// <param name="Id">A word that it is linked by.</param>
/// <param name="Heading">Its heading.</param>
/// <param name="Blocks">What stands in it.</param>
internal sealed record CardSection(string Id, string Heading, ImmutableArray<CardBlock> Blocks);
