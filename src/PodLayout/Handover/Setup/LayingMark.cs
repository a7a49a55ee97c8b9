using PodLayout.Geometry;

namespace PodLayout.Handover.Setup;

/// <summary>A place on the edge of the part, or of its blank, whose coordinates say how it lies.</summary>
/// <param name="Name">Its name in the picture and in the table: E1, E2, ...; pods are P1, P2, ..., and types of pods may be letters.</param>
/// <param name="What">What it is.</param>
/// <param name="At">Where it lies, board coordinates.</param>
/// <param name="XCounts">Whether its X is sharp.</param>
/// <param name="YCounts">Whether its Y is sharp.</param>
internal sealed record LayingMark(string Name, string What, Point2 At, bool XCounts, bool YCounts);
