using System.Collections.Immutable;
using PodLayout.Shops;

namespace PodLayout.Vacuum;

/// <summary>A pod and the open ports that feed it.</summary>
/// <param name="Type">Which kind of pod.</param>
/// <param name="Ports">Its open ports.</param>
public sealed record PodOnPorts(PodType Type, ImmutableArray<Port> Ports);
