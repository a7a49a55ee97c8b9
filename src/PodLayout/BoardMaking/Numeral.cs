using System.Collections.Immutable;
using PodLayout.Geometry;

namespace PodLayout.BoardMaking;

/// <summary>A row or column number to be engraved.</summary>
/// <param name="Number">The number; grooves count from 1.</param>
/// <param name="At">Its middle.</param>
/// <param name="Strokes">The tool's lines.</param>
public sealed record Numeral(int Number, Point2 At, ImmutableArray<ImmutableArray<Point2>> Strokes);
