using System.Collections.Immutable;
using PodLayout.Layouts;

namespace PodLayout.Handover.Format;

/// <summary>A stretch of an edge, or a spot of the interior, beyond the limit of every pod.</summary>
/// <param name="Number">Its number in the picture and in the summary.</param>
/// <param name="FromMm">First point, in the drawing's coordinates.</param>
/// <param name="ToMm">Last point.</param>
/// <param name="LengthMm">Length along the edge.</param>
/// <param name="Limit">Which limit holds there: at an edge, inside, or on a thin floor.</param>
/// <param name="Cause">Why.</param>
/// <param name="OverhangNowMm">The greatest overhang (inside: span) there with the pods of the layout; null without one, or where no pod is anywhere near.</param>
/// <param name="OverhangThatWouldDoMm">The across-grain limit that would do; null when none would.</param>
/// <param name="PointsMm">Its points, in the drawing's coordinates: check passes over these and no others; files of before it was written have none.</param>
public sealed record StretchEntry(
    int Number, XyMm FromMm, XyMm ToMm, double LengthMm, SupportLimit Limit, string Cause, double? OverhangThatWouldDoMm, double? OverhangNowMm = null,
    ImmutableArray<XyMm>? PointsMm = null);
