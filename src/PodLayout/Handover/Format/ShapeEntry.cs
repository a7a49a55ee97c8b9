using System.Collections.Immutable;

namespace PodLayout.Handover.Format;

/// <summary>The shape of the part: closed rings, counter-clockwise, the first point not repeated.</summary>
/// <param name="Bounds">The smallest box around the outline.</param>
/// <param name="OutlineMm">The outer edge.</param>
/// <param name="HolesMm">Through holes.</param>
/// <param name="DefectsMm">Spots where a seal will not hold.</param>
/// <param name="Avoided">Spots under which no pod's body may stand.</param>
/// <param name="Hazards">What else pods keep clear of: cuts, pockets in the underside.</param>
/// <param name="Floors">Spots where a cut from the face leaves little wood.</param>
/// <param name="Skinned">Rings whose cut leaves a skin, so that bodies may pass them: 0 for the outline, 1.. for the holes.</param>
/// <param name="Held">Loose pieces of the blank that pods of their own hold.</param>
/// <param name="BlankMm">
/// Edges of the blank, ring by ring as in <see cref="HazardEntry"/>; null when it reaches nowhere beyond the part or is not given. Files
/// of before it was written have no such member.
/// </param>
/// <param name="WeakFloors">Floors that do not bear the vacuum of some kinds of pod; null where there are none. Older files have no such member.</param>
/// <param name="LeftOutLinesMm">
/// Lines of the drawing that do not close and were left out of the part, each from end to end; of very many the longest, coarser. They are
/// shown and not reckoned with. Null where there are none; older files have no such member.
/// </param>
public sealed record ShapeEntry(
    BoxEntry Bounds,
    ImmutableArray<XyMm> OutlineMm,
    ImmutableArray<ImmutableArray<XyMm>> HolesMm,
    ImmutableArray<ImmutableArray<XyMm>> DefectsMm,
    ImmutableArray<SpotEntry> Avoided,
    ImmutableArray<HazardEntry> Hazards,
    ImmutableArray<FloorEntry> Floors,
    ImmutableArray<int> Skinned,
    ImmutableArray<HeldPieceEntry> Held,
    ImmutableArray<ImmutableArray<XyMm>>? BlankMm = null,
    ImmutableArray<WeakFloorEntry>? WeakFloors = null,
    ImmutableArray<ImmutableArray<XyMm>>? LeftOutLinesMm = null);
