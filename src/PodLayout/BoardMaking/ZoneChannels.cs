using System.Collections.Immutable;
using PodLayout.Shops;

namespace PodLayout.BoardMaking;

/// <summary>The back channels of one zone.</summary>
/// <param name="Part">The zone under its piece.</param>
/// <param name="Kind">How they are laid.</param>
/// <param name="Runs">The channels.</param>
/// <param name="Ports">The ports they serve.</param>
/// <param name="Network">What flows through them.</param>
public sealed record ZoneChannels(
    ZonePart Part, ChannelKind Kind, ImmutableArray<Run> Runs, ImmutableArray<Port> Ports, ChannelNetwork Network)
{
    /// <summary>Length of all channels, mm.</summary>
    public double LengthMm => Runs.Sum(r => r.LengthMm);
}
