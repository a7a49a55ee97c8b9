using System.Collections.Immutable;
using PodLayout.Parts;

namespace PodLayout.Seats;

/// <summary>What a pod may stand under: the part, the part and beyond an edge where a skin is left, or a loose piece of the blank.</summary>
/// <param name="Wood">The shape whose edges its seal and body keep from.</param>
/// <param name="Piece">The loose piece; null for the part.</param>
/// <param name="IsOverSkin">
/// Whether the body may pass edges where a skin is left. What supports the part is then the pod as far as its upper seal: that
/// much lies under full wood.
/// </param>
public sealed record SeatGround(PartShape Wood, HeldPiece? Piece, bool IsOverSkin)
{
    /// <summary>The grounds of a part: the part itself first.</summary>
    public static ImmutableArray<SeatGround> Of(PartShape shape) =>
    [
        new(shape, null, false),
        .. shape.Skinned.IsEmpty ? [] : new[] { new SeatGround(shape, null, true) },
        .. shape.Held.Select(p => new SeatGround(shape with { Outline = p.Outline, Holes = p.Holes, Skinned = [], Held = [] }, p, false)),
    ];
}
