using System.Collections.Immutable;
using PodLayout.Choice;
using PodLayout.Geometry;
using PodLayout.Jobs;
using PodLayout.Seats;

namespace PodLayout.Placing;

/// <summary>
/// Where the part lies: spatial branch and bound over all offsets, with a proof over all of them and not over a sample.
/// </summary>
internal sealed class PlacingSearch
{
    // Nodes examined together against the same best layout. Fixed, so that the search takes the same course on any number of
    // threads; small, so that a better layout is soon known to all.
    private const int NodesOfRound = 4;

    // So many choices may fall short of the target by springs, where by pulls they would do: then another aim does better.
    private const int MostShortBySprings = 2;

    // The same where there is no layout yet: then none is likely to hold.
    private const int MostShortWithoutAny = 24;

    // Where so many sets of placements were examined, times the seats there are, and no layout was found that holds, none is likely to.
    private const int FewNodes = 60;
    private const long MostNodeSeatsWithoutAny = 40_000;

    // The same for the least factor, below which the part is refused.
    private const long MostNodeSeatsAtLeast = 160_000;

    // Tries made together: few, so that there is something to show soon, and the next must beat it.
    private const int TriesOfRound = 2;

    // Offsets along each side of the pitch that are tried first, so that there is something to beat.
    private const int TriesAlongSide = 2;

    private readonly Job _job;
    private readonly Effort _effort;
    private readonly HoldingModel? _holding;
    private readonly double _placingToleranceMm;
    private readonly IProgress<Progress>? _progress;
    private readonly CancellationToken _cancellation;
    private readonly PriorityQueue<SearchNode, (int Bound, long Order)> _open = new();
    private FoundLayout? _best;
    private int _ceiling;
    private int _nodes;
    private int _seats;
    private SearchWork _work;
    private double _leftOpenMm;
    private int _leftOpenBound = int.MaxValue;
    private int _shortBound = int.MaxValue;
    private int _shortBySprings;
    private long _order;

    /// <summary>Prepares a search.</summary>
    /// <param name="job">The job.</param>
    /// <param name="holding">How the part is to be held; null where that does not matter.</param>
    /// <param name="effort">Threads.</param>
    /// <param name="placingToleranceMm">Offsets nearer than this are not told apart.</param>
    /// <param name="best">A layout to beat; null when there is none.</param>
    /// <param name="progress">Told after each round.</param>
    /// <param name="cancellation">Cuts the work short.</param>
    public PlacingSearch(
        Job job,
        HoldingModel? holding,
        Effort effort,
        double placingToleranceMm,
        FoundLayout? best,
        IProgress<Progress>? progress,
        CancellationToken cancellation)
    {
        _holding = holding;
        (_job, _effort, _placingToleranceMm, _progress, _cancellation) = (job, effort, placingToleranceMm, progress, cancellation);
        _best = best;
        _ceiling = best?.Seats.Length ?? job.Shop.Pods.Sum(p => Math.Min(p.Stock, 10_000)) + 1;
    }

    /// <summary>How far it goes.</summary>
    public SearchCourse Course { get; init; } = SearchCourse.Whole;

    private int AtMost => _ceiling - 1;

    /// <summary>Searches all offsets at some angles.</summary>
    public SearchEnd Run(Frames frames, ImmutableArray<double> anglesDeg) => Run(frames, [.. anglesDeg.Select(a => (a, 0.0))]);

    /// <summary>Searches all offsets at some angles, or at all angles of some spans.</summary>
    public SearchEnd Run(Frames frames, ImmutableArray<(double AngleDeg, double HalfSpanDeg)> spans)
    {
        frames = frames.HeldBy(_holding);
        ImmutableArray<BoardSeats> board = [.. frames.Poses.Select(pose => BoardSeats.Of(pose, _job.Shop.Board))];
        var whole = OffsetBox.WholePitch(_job.Shop.Board.PitchMm);
        var grounds = InParallel(
            spans, span => SearchGround.Over(frames.Of(span.AngleDeg, span.HalfSpanDeg), board, _job, whole));
        _seats = grounds.Sum(g => g.Seats.Length);
        if (Course.Tries)
        {
            TryFirst(grounds, frames);
        }

        if ((Course.EndsWhereShort && _shortBySprings > 0) || (Course.EndsAtFirst && _best is not null))
        {
            return new(_best, 0, 0, 0, false) { Work = _work, ShortBySprings = _shortBySprings };
        }

        foreach (var ground in grounds.Where(g => !g.Classes.IsEmpty))
        {
            // With pods to keep each shift is a search of its own: their rows differ.
            var all = Enumerable.Range(0, ground.Classes.Length);
            foreach (var classes in _job.Keep.IsEmpty ? [all] : all.Select(c => Enumerable.Repeat(c, 1)))
            {
                PushRoot(ground, whole, [.. classes]);
            }
        }

        var isCut = !Exhaust(frames);
        var bound = Math.Min(Math.Min(OpenBound(), _shortBound), _best?.Seats.Length ?? int.MaxValue);
        return new(_best, bound == int.MaxValue ? _ceiling : bound, _leftOpenMm, _nodes, isCut)
        {
            Work = _work,
            LeftOpenBound = _leftOpenBound,
            ShortBySprings = _shortBySprings,
        };
    }

    private void PushRoot(SearchGround ground, OffsetBox whole, ImmutableArray<int> classes) => Push(new(
        ground.Waiting, ground.Frame.AngleDeg, ground.Frame.HalfSpanDeg, whole, classes, [.. ground.FirstPoints.Select(p => new PointRow(p, null))], 0));

    private void TryFirst(ImmutableArray<SearchGround> grounds, Frames frames)
    {
        var pitch = _job.Shop.Board.PitchMm;
        var tries = from ground in grounds
                    where !ground.Classes.IsEmpty
                    from y in Enumerable.Range(0, TriesAlongSide)
                    from x in Enumerable.Range(0, TriesAlongSide)
                    select (ground, Offset: new Point2((x + 0.5) * pitch / TriesAlongSide, (y + 0.5) * pitch / TriesAlongSide));
        foreach (var round in tries.Chunk(TriesOfRound))
        {
            foreach (var (found, work, shortBySprings) in InParallel([.. round], t => Try(t.ground with { Frame = frames.Of(t.ground.Frame.AngleDeg, 0) }, t.Offset)))
            {
                Take(found);
                _work += work;
                _shortBySprings += shortBySprings;
            }

            _progress?.Report(new(_best?.Seats.Length, 0, _nodes, grounds.Length));
        }
    }

    // With loose pieces to hold the exact model is slow: only where nothing is found without it.
    private (FoundLayout? Found, SearchWork Work, int ShortBySprings) Try(SearchGround ground, Point2 offset)
    {
        if (NodeExamination.WithPieces(_job, ground, ground.Classes[0], offset, AtMost, _cancellation) is { } withPieces)
        {
            return (withPieces, default, 0);
        }

        var end = NodeExamination.Solve(
            _job, ground, ground.Classes[0], offset, AtMost, _cancellation, null, _holding is null ? Wanted.AnyQuickly : Wanted.Any);
        return (end.Found ?? MorePods.Of(_job, ground, ground.Classes[0], offset, AtMost, _cancellation), end.Work, end.ShortBySprings);
    }

    // Returns false when cut short. What is still open when too many choices have fallen short by springs stays open.
    private bool Exhaust(Frames frames)
    {
        var before = _shortBySprings;
        while (_open.Count > 0 && GoesOn(before))
        {
            var round = new List<SearchNode>(NodesOfRound);
            while (round.Count < NodesOfRound && _open.TryDequeue(out var node, out _))
            {
                // What cannot beat the best known is done with.
                if (node.Bound <= AtMost)
                {
                    round.Add(node);
                }
            }

            if (_cancellation.IsCancellationRequested)
            {
                round.ForEach(Push);
                return false;
            }

            var verdicts = InParallel(
                [.. round], node => NodeExamination.Examine(_job, node, frames, AtMost, _placingToleranceMm, _cancellation));
            for (var i = 0; i < verdicts.Length; i++)
            {
                Take(verdicts[i].Found);
                _work += verdicts[i].Work;
                foreach (var child in verdicts[i].Children)
                {
                    Push(child);
                }

                if (verdicts[i].IsLeftOpen && verdicts[i].Bound <= AtMost)
                {
                    var side = 2 * Math.Max(round[i].Box.HalfXMm, round[i].Box.HalfYMm);
                    _leftOpenMm = Math.Max(_leftOpenMm, side);
                    _leftOpenBound = Math.Min(_leftOpenBound, verdicts[i].Bound);
                    _shortBound = verdicts[i].ShortBySprings > 0 ? Math.Min(_shortBound, verdicts[i].Bound) : _shortBound;
                }

                _shortBySprings += verdicts[i].ShortBySprings;
            }

            _nodes += round.Count;
            var bound = Math.Min(OpenBound(), _best?.Seats.Length ?? int.MaxValue);
            _progress?.Report(new(_best?.Seats.Length, bound == int.MaxValue ? null : bound, _nodes, _open.Count));
            if (verdicts.Any(v => v.IsCut))
            {
                return false;
            }
        }

        return true;
    }

    private long MostNodeSeats => _holding!.Ground.Factor <= _job.Shop.Holding.LeastFactor ? MostNodeSeatsAtLeast : MostNodeSeatsWithoutAny;

    private bool GoesOn(int shortBefore) => _best is null
        ? _shortBySprings - shortBefore < MostShortWithoutAny
            && (_holding is null || _nodes < FewNodes || (long)_nodes * _seats < MostNodeSeats) && _nodes < Course.MostNodes
        : _shortBySprings - shortBefore < MostShortBySprings && _nodes < Course.MostNodes && !Course.EndsAtFirst;

    private int OpenBound() => _open.TryPeek(out _, out var priority) ? priority.Bound : int.MaxValue;

    // Nodes of the lowest bound first; among equals the newest, which goes down to layouts soonest.
    private void Push(SearchNode node)
    {
        if (node.Bound <= AtMost)
        {
            _open.Enqueue(node, (node.Bound, -_order++));
        }
    }

    private void Take(FoundLayout? found)
    {
        if (found is not null && found.IsBetterThan(_best))
        {
            _best = found;
            if (found.Seats.Length < _ceiling)
            {
                _ceiling = found.Seats.Length;
                // What can no longer beat the best would only take room.
                var still = _open.UnorderedItems.Where(o => o.Priority.Bound <= AtMost).ToArray();
                _open.Clear();
                _open.EnqueueRange(still);
            }
        }
    }

    private ImmutableArray<TResult> InParallel<T, TResult>(ImmutableArray<T> items, Func<T, TResult> work)
    {
        var results = new TResult[items.Length];
        Parallel.For(0, items.Length, new ParallelOptions { MaxDegreeOfParallelism = _effort.Threads }, i => results[i] = work(items[i]));
        return [.. results];
    }
}
