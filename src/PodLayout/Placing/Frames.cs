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
internal sealed class Frames
{
    private readonly Func<double, double, PlacingFrame> _make;
    private readonly HoldingModel? _holding;
    private readonly ConcurrentDictionary<(double AngleDeg, double HalfSpanDeg), WeakReference<PlacingFrame>> _made = new();

    // Frames that are kept though nothing uses them.
    private const int KeptCount = 16;

    private readonly Queue<PlacingFrame> _lately = new();

    /// <summary>Frames of a part on some pods.</summary>
    /// <param name="job">The job.</param>
    /// <param name="reach">The part's reach map.</param>
    /// <param name="poses">The pods in use.</param>
    /// <param name="holding">How the part is to be held; null where that does not matter.</param>
    public Frames(Job job, ReachMap reach, ImmutableArray<PodPose> poses, HoldingModel? holding)
    {
        var woods = ClearWood.OfGrounds(job.Part.Shape, job.Margins);
        _make = (angleDeg, halfSpanDeg) => new(job, reach, woods, poses, angleDeg, halfSpanDeg) { Holding = holding };
        (Poses, _holding) = (poses, holding);
    }

    private Frames(Frames others, HoldingModel? holding, Func<PlacingFrame, PlacingFrame> change)
    {
        _make = (angleDeg, halfSpanDeg) => change(others.Of(angleDeg, halfSpanDeg));
        (Poses, _holding) = (others.Poses, holding);
    }

    /// <summary>The pods in use.</summary>
    public ImmutableArray<PodPose> Poses { get; }

    /// <summary>The same frames with the part held otherwise: what does not depend on that is made once.</summary>
    public Frames HeldBy(HoldingModel? holding) => holding == _holding ? this : new(this, holding, frame => frame.HeldBy(holding));

    /// <summary>The same frames where only some of the points are to be supported.</summary>
    public Frames Demanding(ImmutableArray<int> points) => new(this, _holding, frame => frame.Demanding(points));

    /// <summary>The frame of an angle (half span 0) or of a span of angles.</summary>
    public PlacingFrame Of(double angleDeg, double halfSpanDeg)
    {
        var key = (angleDeg, halfSpanDeg);
        if (_made.TryGetValue(key, out var reference) && reference.TryGetTarget(out var known))
        {
            return known;
        }

        // Two threads may make the same frame: it comes out the same, and one of the two is forgotten.
        var frame = _make(angleDeg, halfSpanDeg);
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
