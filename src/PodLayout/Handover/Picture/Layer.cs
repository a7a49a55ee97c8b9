using System.Collections.Immutable;

namespace PodLayout.Handover.Picture;

/// <summary>Primitives that are shown or hidden together.</summary>
/// <param name="Name">Name of the layer, kebab-case.</param>
/// <param name="Primitives">In drawing order.</param>
public sealed record Layer(string Name, ImmutableArray<Primitive> Primitives);
