using System.Collections.Immutable;
using PodLayout.Geometry;

namespace PodLayout.Parts;

/// <summary>A part that the drawing may mean.</summary>
/// <param name="Number">Its number, from 1, for --part.</param>
/// <param name="Layer">Layer of its outline.</param>
/// <param name="Outline">Its outline.</param>
/// <param name="Holes">Rings in it that would be its holes.</param>
public sealed record PartCandidate(int Number, string Layer, Ring Outline, ImmutableArray<Ring> Holes);
