using System.Collections.Immutable;
using PodLayout.Geometry;

namespace PodLayout.Support;

/// <summary>
/// A place from which a path through the wood goes straight on: the point itself, or a re-entrant corner of the part that the
/// path has bent around.
/// </summary>
/// <param name="At">The place.</param>
/// <param name="Spent">Length of the path so far, in limits.</param>
/// <param name="Blinds">Edges nearby that face away: what lies behind one of them is out of sight.</param>
public readonly record struct Lookout(Point2 At, double Spent, ImmutableArray<Blind> Blinds);
