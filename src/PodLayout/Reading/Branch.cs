using PodLayout.Geometry;

namespace PodLayout.Reading;

/// <summary>A point where more than two line ends meet, so that the way on is not clear.</summary>
/// <param name="Layer">Layer of the lines.</param>
/// <param name="Point">Where they meet, mm.</param>
/// <param name="Ends">How many ends meet.</param>
public sealed record Branch(string Layer, Point2 Point, int Ends);
