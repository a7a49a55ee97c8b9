using System.Collections.Immutable;

namespace PodLayout.Reading;

/// <summary>What one format's reader hands over: lines and curves in millimetres, not yet joined.</summary>
/// <param name="Format">Format and version.</param>
/// <param name="Unit">The unit the drawing was taken to be in.</param>
/// <param name="Paths">Lines and curves.</param>
/// <param name="HiddenLayers">Layers that are frozen or off.</param>
/// <param name="EmptyLayers">Layers the drawing names but draws nothing on.</param>
internal sealed record DrawnPaths(
    string Format,
    LengthUnit Unit,
    ImmutableArray<DrawnPath> Paths,
    ImmutableArray<string> HiddenLayers,
    ImmutableArray<string> EmptyLayers)
{
    /// <summary>How many words are written on which layer.</summary>
    public ImmutableDictionary<string, int> Texts { get; init; } = ImmutableDictionary<string, int>.Empty;

    /// <summary>How lengths are told.</summary>
    public DrawnLengths Lengths { get; init; } = DrawnLengths.Mm;
}
