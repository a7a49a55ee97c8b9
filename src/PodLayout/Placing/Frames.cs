using System.Collections.Concurrent;
using System.Collections.Immutable;
using PodLayout.Jobs;
using PodLayout.Seats;
using PodLayout.Support;

namespace PodLayout.Placing;

/// <summary>The frames of one part, made when first asked for and kept while something uses them or did so lately.</summary>
/// <remarks>
/// Over an interval of angles there are thousands of spans, each with a frame of its own; the sets of placements that wait to be
/// examined hold none of them. The search goes down from a set to its parts, so that few frames are made twice.
/// </remarks>
internal sealed class Frames(Job job, ReachMap reach, ImmutableArray<PodPose> poses, HoldingModel? holding)
{
    private readonly ConcurrentDictionary<(double AngleDeg, double HalfSpanDeg), WeakReference<PlacingFrame>> _made = new();

    // Frames that are kept though nothing uses them.
    private const int KeptCount = 16;

    private readonly Queue<PlacingFrame> _lately = new();

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
        lock (_lately)
        {
            _lately.Enqueue(frame);
            if (_lately.Count > KeptCount)
            {
                _lately.Dequeue();
            }
        }

        return frame;
    }
}
