using System.Collections.Immutable;

namespace PodLayout.Placing;

/// <summary>
/// What can stand where, without the frame: over an interval of angles sets of placements wait by the thousand, and each of
/// their frames is as large as the part's edge is long.
/// </summary>
/// <param name="Seats">Every seat possible at some offset.</param>
/// <param name="Classes">The whole-pitch shifts worth looking at.</param>
internal sealed record WaitingGround(ImmutableArray<FrameSeat> Seats, ImmutableArray<ShiftClass> Classes)
{
    /// <summary>The same in the frame of the set's own angles, which may be some of the larger set's.</summary>
    /// <remarks>The seats and shifts of the larger span hold all of the smaller's. Points to begin with are in the rows.</remarks>
    public SearchGround In(PlacingFrame frame) => new(frame, Seats, Classes, SearchGround.First(frame));
}
