using System.Collections.Immutable;

namespace PodLayout.Handover.Setup;

/// <summary>A piece of the card, whatever it is printed or shown with.</summary>
internal abstract record CardBlock
{
    /// <summary>Whether it stands on the same page of paper as the block after it, where one page has room for both.</summary>
    public bool LeadsOn { get; init; }

    /// <summary>A paragraph.</summary>
    /// <param name="Text">Its words.</param>
    /// <param name="IsStrong">Whether it must not be overlooked.</param>
    public sealed record Words(string Text, bool IsStrong = false) : CardBlock;

    /// <summary>Names with values. An empty value is a line to write on.</summary>
    /// <param name="Rows">The pairs.</param>
    public sealed record Facts(ImmutableArray<(string Name, string Value)> Rows) : CardBlock;

    /// <summary>A table.</summary>
    /// <param name="Caption">What it holds, for somebody who cannot see it.</param>
    /// <param name="Tick">Heading of the boxes to tick; null for none.</param>
    /// <param name="Columns">Headings.</param>
    /// <param name="Rows">Rows.</param>
    public sealed record Table(string Caption, string? Tick, ImmutableArray<string> Columns, ImmutableArray<CardRow> Rows) : CardBlock;

    /// <summary>Things to do, each with a box to tick.</summary>
    /// <param name="Items">Key and words of each.</param>
    public sealed record Steps(ImmutableArray<(string Key, string Text)> Items) : CardBlock;

    /// <summary>Lines to write on.</summary>
    /// <param name="Names">What belongs there.</param>
    public sealed record Lines(ImmutableArray<string> Names) : CardBlock;
}
