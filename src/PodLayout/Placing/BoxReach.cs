using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using PodLayout.Geometry;
using PodLayout.Support;

namespace PodLayout.Placing;

/// <summary>Which seats could support which points from some offset of a box (and some angle of the frame's span).</summary>
public sealed class BoxReach
{
    private readonly TurnedReach _reach;
    private readonly Point2[] _centres;
    private readonly PodFace[] _faces;
    private readonly bool[] _isUnderPart;
    private long _asked;

    /// <summary>Prepares the seats.</summary>
    /// <param name="frame">The part at its angle or angles.</param>
    /// <param name="seats">The seats.</param>
    /// <param name="box">The offsets.</param>
    public BoxReach(PlacingFrame frame, ImmutableArray<FrameSeat> seats, OffsetBox box)
    {
        _reach = frame.Reach;
        _isUnderPart = [.. seats.Select(s => frame.PieceOver(s.Pose) is null)];
        _centres = [.. seats.Select(s => frame.CentreOf(s, box.Centre))];
        var known = new Dictionary<(int, int), PodFace>();
        _faces = [.. seats.Select((s, i) => frame.SweptFace(s.Pose, _centres[i], box, known))];
    }

    /// <summary>How many seats there are.</summary>
    public int Seats => _centres.Length;

    /// <summary>How many pairs of a seat and a point were asked for.</summary>
    public long Asked => _asked;

    /// <summary>Whether a seat could support a point: never false when it can from one of the placements.</summary>
    public bool Supports(int seat, int point)
    {
        _asked++;
        return MayReach(seat, point) && _reach.CouldReach(point, _faces[seat], _centres[seat]);
    }

    /// <summary>The same by boxes alone: quick, and true more often.</summary>
    public bool MayReach(int seat, int point) => _isUnderPart[seat] && _reach.MayReach(point, _faces[seat], _centres[seat]);

    /// <summary>The seats that could support a point, rising.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public int[] SupportersOf(int point)
    {
        var found = new List<int>();
        for (var s = 0; s < _centres.Length; s++)
        {
            if (Supports(s, point))
            {
                found.Add(s);
            }
        }

        return [.. found];
    }
}
