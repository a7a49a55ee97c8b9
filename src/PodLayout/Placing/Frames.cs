using System.Collections.Concurrent;
using System.Collections.Immutable;
using PodLayout.Jobs;
using PodLayout.Seats;
using PodLayout.Support;

namespace PodLayout.Placing;

/// <summary>The frames of one part, made when first asked for and kept while something uses them.</summary>
internal sealed class Frames(Job job, ReachMap reach, ImmutableArray<PodPose> poses, HoldingModel? holding)
{
    private readonly ConcurrentDictionary<(double AngleDeg, double HalfSpanDeg), WeakReference<PlacingFrame>> _made = new();

    private readonly ImmutableArray<ClearWood> _woods = ClearWood.OfGrounds(job.Part.Shape, job.Margins);

    /// <summary>The frame of an angle (half span 0) or of a span of angles.</summary>
    public PlacingFrame Of(double angleDeg, double halfSpanDeg)
    {
        var key = (angleDeg, halfSpanDeg);
        if (_made.TryGetValue(key, out var reference) && reference.TryGetTarget(out var known))
        {
            return known;
        }

        // Two threads may make the same frame: it comes out the same, and one of the two is forgotten.
        var frame = new PlacingFrame(job, reach, _woods, poses, angleDeg, halfSpanDeg) { Holding = holding };
        _made[key] = new(frame);
        return frame;
    }
}
