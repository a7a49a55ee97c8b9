using System.Text.Json.Serialization;

namespace PodLayout.Handover.Format;

/// <summary>A point in mm, written as <c>[x, y]</c> on one line.</summary>
/// <param name="X">X in mm.</param>
/// <param name="Y">Y in mm.</param>
[JsonConverter(typeof(XyMmConverter))]
public sealed record XyMm(double X, double Y);
