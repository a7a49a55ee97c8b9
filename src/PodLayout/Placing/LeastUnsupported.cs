using System.Collections.Immutable;
using PodLayout.Choice;
using PodLayout.Geometry;
using PodLayout.Jobs;
using PodLayout.Seats;

namespace PodLayout.Placing;

/// <summary>
/// Where not every point can be supported: the placement and the pods that leave least of the part beyond its limits, by branch and
/// bound over all offsets. In a set of placements nothing less can be left than what no seat possible in it reaches, nor less than the
/// relaxed choice leaves, in which a seat supports what it could support from any of them.
/// </summary>
internal sealed class LeastUnsupported
{
    // Nodes examined together; fixed, so that the search takes the same course on any number of threads.
    private const int NodesOfRound = 4;

    // Sets of placements, times the seats there are, that are examined at most: with what is found till then the fewest pods are looked
    // for, and the bound is told. Some seconds on two cores.
    private const int MostNodes = 400;
    private const long MostNodeSeats = 120_000;
    private const int FewNodes = 24;

    private const int TriesAlongSide = 3;

    // Angles at which offsets are tried first.
    private const int MostAnglesTried = 16;

    private readonly Job _job;
    private readonly ImmutableArray<Frames> _heights;
    private readonly ImmutableArray<ImmutableArray<BoardSeats>> _boards;
    private readonly ImmutableArray<int> _lengths;
    private readonly Effort _effort;
    private readonly CancellationToken _cancellation;
    private readonly PriorityQueue<Node, (long Bound, long Order)> _open = new();
    private LeftUnsupported? _best;
    private double _leftOpenMm;
    private long _leastThere = long.MaxValue;
    private long _order;

    /// <summary>Prepares a search.</summary>
    /// <param name="job">The job.</param>
    /// <param name="heights">Frames of the part on the pods of each height, where all points are to be supported.</param>
    /// <param name="lengths">What each point stands for.</param>
    /// <param name="effort">Threads.</param>
    /// <param name="cancellation">Cuts the work short.</param>
    public LeastUnsupported(Job job, ImmutableArray<Frames> heights, ImmutableArray<int> lengths, Effort effort, CancellationToken cancellation)
    {
        (_job, _heights, _lengths, _effort, _cancellation) = (job, heights, lengths, effort, cancellation);
        _boards = [.. heights.Select(frames => frames.Poses.Select(pose => BoardSeats.Of(pose, job.Shop.Board)).ToImmutableArray())];
    }

    /// <summary>Whether a few tries are enough: there is to be something to show.</summary>
    public bool IsBrief { get; init; }

    // What an incumbent must leave less than.
    private long Below => _best?.Length ?? _lengths.Sum(l => (long)l) + 1;

    /// <summary>
    /// What no seat reaches, wherever the part is laid, of all placements asked for: at the angles, and on pods of the height, where that
    /// is least. No layout leaves less.
    /// </summary>
    public LeftUnsupported OutOfReach()
    {
        var sets = Roots();
        var found = InParallel(sets, root =>
        {
            ImmutableArray<FrameSeat> seats = root.Seats;
            return Unreached(new(root.Frame, seats, root.Box), seats.Length, null).Out;
        });
        return found.Select(Of).MinBy(left => left.Length) ?? Of([.. Enumerable.Repeat(true, _lengths.Length)]);
    }

    /// <summary>Searches; null when no layout at all was found.</summary>
    public LeftUnsupported? Run()
    {
        var roots = Roots();
        var each = (roots.Length + MostAnglesTried - 1) / MostAnglesTried;
        foreach (var (root, index) in roots.Select((r, i) => (r, i)))
        {
            if (IsBrief && _best is not null)
            {
                break;
            }

            // No shift of the part is left out for the points that it leaves without a seat.
            var ground = SearchGround.Over(root.Frame.Demanding([]), _boards[root.Height], _job, root.Box);
            ground = root.Given is { } shift
                ? SearchGround.At(root.Frame, _boards[root.Height], root.Box, shift.Columns, shift.Rows) : ground with { Frame = root.Frame };
            if (ground.Classes.IsEmpty)
            {
                continue;
            }

            if (root.Given is not null)
            {
                // The best over all heights is no better than the best of each.
                var there = At(ground, ground.Classes[0], root.Box.Centre, Below);
                _leastThere = Math.Min(_leastThere, there?.LeastPossible ?? Below);
                Take(there);
                continue;
            }

            var all = Enumerable.Range(0, ground.Classes.Length);
            foreach (var classes in _job.Keep.IsEmpty ? [all] : all.Select(c => Enumerable.Repeat(c, 1)))
            {
                Push(new(root.Height, new(ground.Waiting, root.Frame.AngleDeg, root.Frame.HalfSpanDeg, root.Box, [.. classes], [], 0), 0, null, default));
            }

            if (index % each == 0)
            {
                TryFirst(root, ground);
            }
        }

        if (!IsBrief)
        {
            Exhaust();
        }

        return _best is not { } best ? null : best with
        {
            LeastPossible = Math.Min(Math.Min(best.Length, _leastThere), _open.TryPeek(out _, out var next) ? next.Bound : best.Length),
            OpenToleranceMm = _leftOpenMm,
        };
    }

    private void TryFirst(Root root, SearchGround ground)
    {
        var pitch = _job.Shop.Board.PitchMm;
        var one = ground with { Frame = _heights[root.Height].Of(root.Frame.AngleDeg, 0) };
        var offsets = Enumerable.Range(0, TriesAlongSide * TriesAlongSide)
            .Select(i => new Point2((i % TriesAlongSide + 0.5) * pitch / TriesAlongSide, (i / TriesAlongSide + 0.5) * pitch / TriesAlongSide));
        foreach (var round in offsets.Chunk(TriesAlongSide))
        {
            var below = Below;
            foreach (var found in InParallel([.. round], offset => At(one, one.Classes[0], offset, below)))
            {
                Take(found);
            }

            if ((IsBrief || _cancellation.IsCancellationRequested) && _best is not null)
            {
                return;
            }
        }
    }

    private void Exhaust()
    {
        var (nodes, work) = (0, 0L);
        while (_open.Count > 0 && nodes < MostNodes && (nodes < FewNodes || work < MostNodeSeats) && !_cancellation.IsCancellationRequested)
        {
            var round = new List<Node>(NodesOfRound);
            while (round.Count < NodesOfRound && _open.TryDequeue(out var node, out _))
            {
                if (node.Bound < Below)
                {
                    round.Add(node);
                }
            }

            var below = Below;
            var verdicts = InParallel([.. round], node => Examine(node, below));
            for (var i = 0; i < verdicts.Length; i++)
            {
                var (found, children, isOpen, seats) = verdicts[i];
                Take(found);
                _leftOpenMm = isOpen ? Math.Max(_leftOpenMm, 2 * Math.Max(round[i].Set.Box.HalfXMm, round[i].Set.Box.HalfYMm)) : _leftOpenMm;
                foreach (var child in children)
                {
                    Push(child);
                }

                work += seats;
            }

            nodes += round.Count;
        }

        while (_open.TryPeek(out var closed, out _) && closed.Bound >= Below)
        {
            _open.Dequeue();
        }
    }

    private (LeftUnsupported? Found, ImmutableArray<Node> Children, bool IsOpen, int Seats) Examine(Node node, long below)
    {
        var set = node.Set;
        var frames = _heights[node.Height];
        var ground = set.Ground.In(frames.Of(set.AngleDeg, set.HalfSpanDeg));
        ImmutableArray<int> roots = [.. NodeExamination.Alive(ground, set)];
        ImmutableArray<FrameSeat> seats = [.. roots.Select(s => ground.Seats[s])];
        var reach = new BoxReach(ground.Frame, seats, set.Box);
        var (isOut, length) = Unreached(reach, seats.Length, node.Out);
        var bound = Math.Max(node.Bound, length);
        if (bound >= below)
        {
            return (null, [], false, seats.Length);
        }

        var asked = AskedRows.Of(_job, ground.Frame, seats, set.Classes.Select(c => ground.Classes[c]), set.Box);
        var question = PlacementModel.Question(_job, ground.Frame, seats, asked, reach.SupportersOf, reach.Supports);

        // A choice of the larger set that leaves no more here is the best here too.
        var isKept = node.Filled is { IsDefault: false } and var before && LeftBy(before, roots, question) <= bound;
        var answer = isKept ? new([.. node.Filled.Select(f => roots.BinarySearch(f))], bound, bound) : PartialCover.Of(question, _lengths, below, _cancellation);
        bound = Math.Max(bound, answer.LowerBound);
        if (bound >= below)
        {
            return (null, [], false, seats.Length);
        }

        ImmutableArray<int> filled = answer.HasChoice ? [.. answer.Filled.Select(s => roots[s])] : [];
        var shift = set.Classes.MaxBy(c => filled.Count(s => ground.Classes[c].Available[s]));
        var one = set.HalfSpanDeg == 0 ? ground : ground with { Frame = frames.Of(set.AngleDeg, 0) };
        var found = isKept ? null : At(one, ground.Classes[shift], set.Box.Centre, below);
        if (found?.Length <= bound)
        {
            return (found, [], false, seats.Length);
        }

        var children = NodeExamination.Split(set, ground.Frame.MostSwingMm, filled, shift, Tolerances.PlacingMm);
        return (
            found, [.. children.Select(child => new Node(node.Height, child, bound, isOut, answer.HasChoice && answer.Left <= bound ? filled : default))], children.IsEmpty,
            seats.Length);
    }

    // What a choice leaves that may have lost seats; as much as there is where it lost one, or what must be kept.
    private long LeftBy(ImmutableArray<int> filled, ImmutableArray<int> roots, CoverQuestion question)
    {
        int[] alive = [.. filled.Select(f => roots.BinarySearch(f))];
        if (Array.Exists(alive, s => s < 0) || !Enumerable.Range(_lengths.Length, question.PointCount - _lengths.Length).All(p => alive.Any(s => question.Supports(s, p))))
        {
            return long.MaxValue;
        }

        return Enumerable.Range(0, _lengths.Length).Where(p => !alive.Any(s => question.Supports(s, p))).Sum(p => (long)_lengths[p]);
    }

    // What the best pods at one offset leave.
    private LeftUnsupported? At(SearchGround ground, ShiftClass shift, Point2 offset, long below)
    {
        var model = PlacementModel.OfSupport(_job, ground, shift, offset);
        var question = model.Within(1);
        var answer = PartialCover.Of(question, _lengths, below, _cancellation);
        if (!answer.HasChoice)
        {
            return null;
        }

        ImmutableArray<FrameSeat> seats = [.. answer.Filled.Select(s => model.Seats[s])];
        var left = Of([.. Enumerable.Range(0, _lengths.Length).Select(p => !answer.Filled.Any(s => question.Supports(s, p)))]);
        return left with { At = new(ground.Frame, offset, shift.Columns, shift.Rows, seats, 1), LeastPossible = Math.Min(left.Length, answer.LowerBound) };
    }

    // Which points no seat reaches; those that none reached in a larger set it reaches in none of its parts.
    private (bool[] Out, long Length) Unreached(BoxReach reach, int seats, bool[]? known)
    {
        var isOut = new bool[_lengths.Length];
        var (last, length) = (0, 0L);
        for (var p = 0; p < isOut.Length; p++)
        {
            // Mostly a neighbour's seat reaches it too.
            isOut[p] = known?[p] == true || (!(last < seats && reach.Supports(last, p)) && (last = FirstOf(p)) == seats);
            length += isOut[p] ? _lengths[p] : 0;
        }

        return (isOut, length);

        int FirstOf(int p)
        {
            var s = 0;
            while (s < seats && !reach.Supports(s, p))
            {
                s++;
            }

            return s;
        }
    }

    private LeftUnsupported Of(bool[] isOut)
    {
        ImmutableArray<int> points = [.. Enumerable.Range(0, isOut.Length).Where(p => isOut[p])];
        var length = points.Sum(p => (long)_lengths[p]);
        return new(points, length, length, null);
    }

    private void Push(Node node)
    {
        if (node.Bound < Below)
        {
            _open.Enqueue(node, (node.Bound, -_order++));
        }
    }

    private void Take(LeftUnsupported? found) => _best = found is not null && found.Length < Below ? found : _best;

    private ImmutableArray<Root> Roots() =>
    [
        .. Enumerable.Range(0, _heights.Length).SelectMany(h => InParallel(AngleSpans.Of(_job), span =>
        {
            var frame = _heights[h].Of(span.AngleDeg, span.HalfSpanDeg);
            if (_job.Placement is PlacementWish.Given given)
            {
                var (offset, columns, rows) = GivenPlacement.Locate(_job, given);
                var spot = new OffsetBox(offset, 0, 0);
                var there = SearchGround.At(frame, _boards[h], spot, columns, rows);
                return new Root(h, frame, spot, [.. there.Seats.Where((_, s) => there.Classes[0].Available[s])], (columns, rows));
            }

            var whole = OffsetBox.WholePitch(_job.Shop.Board.PitchMm);
            return new Root(h, frame, whole, frame.PossibleSeats(whole), null);
        })),
    ];

    private ImmutableArray<TResult> InParallel<T, TResult>(ImmutableArray<T> items, Func<T, TResult> work)
    {
        var results = new TResult[items.Length];
        Parallel.For(0, items.Length, new ParallelOptions { MaxDegreeOfParallelism = _effort.Threads }, i => results[i] = work(items[i]));
        return [.. results];
    }

    // Placements of one frame, with all seats possible in it.
    private sealed record Root(int Height, PlacingFrame Frame, OffsetBox Box, ImmutableArray<FrameSeat> Seats, (int Columns, int Rows)? Given);

    // Filled: the best choice of the larger set, in the seats of its ground; default where none is known.
    private sealed record Node(int Height, SearchNode Set, long Bound, bool[]? Out, ImmutableArray<int> Filled);
}
