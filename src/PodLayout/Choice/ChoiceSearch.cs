using System.Collections.Immutable;

namespace PodLayout.Choice;

/// <summary>One search for a choice of seats: cheap bounds and choices first, the exact model last.</summary>
/// <remarks>
/// In the order of what they cost: the linear relaxation without room and stock, on the few seats that matter then; a choice for it by
/// exchanging pods, or by the solver on those few seats; the relaxation with room and stock; a choice by exchanging pods among all
/// seats; the exact model.
/// </remarks>
internal sealed class ChoiceSearch
{
    private readonly GrowingRows _rows;
    private readonly int _atMost;
    private readonly Wanted _wanted;
    private readonly CancellationToken _cancellation;
    private int _lower;

    /// <summary>Prepares a search.</summary>
    /// <param name="question">The model.</param>
    /// <param name="first">Points to begin with.</param>
    /// <param name="atMost">Only choices with at most this many pods are looked for.</param>
    /// <param name="wanted">What is wanted.</param>
    /// <param name="cancellation">Cuts the work short.</param>
    public ChoiceSearch(CoverQuestion question, ImmutableArray<int> first, int atMost, Wanted wanted, CancellationToken cancellation)
    {
        _rows = new(question, first);
        (_atMost, _wanted, _cancellation) = (atMost, wanted, cancellation);
    }

    private CoverAnswer None => new(default, Math.Max(_lower, _atMost + 1), true);

    /// <summary>Runs it.</summary>
    public CoverAnswer Run()
    {
        CoverAnswer? answer;
        do
        {
            answer = Round();
        }
        while (answer is null);
        return answer;
    }

    // One round; null when rows were added and all is to be looked at again.
    private CoverAnswer? Round()
    {
        var problem = _rows.Loose;
        if (problem.FirstUnsupported >= 0 || _atMost < 0)
        {
            return None;
        }

        var (loose, isSolved) = Loose(problem);
        if (!loose.HasChoice)
        {
            return loose;
        }

        // While points are missing, the choice that may break room and stock rows tells which: only one that misses none is worth
        // making exact.
        var isMissing = _rows.AddMissing(loose.Filled);
        if (_lower <= _wanted.RoughUpTo)
        {
            return Rough(loose.Filled);
        }

        // A choice that took the solver is brought on by exchanging pods: mostly it lacks little, and each proof costs more.
        if (isMissing && isSolved && !_rows.HasHolds && Guessed(loose.Filled) is { } guessed)
        {
            return guessed;
        }

        return isMissing ? null : _rows.HasHolds ? WithHolds(loose.Filled) : WithRoom(loose.Filled);
    }

    private CoverAnswer Rough(ImmutableArray<int> filled) => new(filled, _lower, true) { IsRough = true };

    // The fewest seats where room and stock do not matter. A seat that supports no more than another is then not needed: a
    // far smaller model, whose best choice bounds the full one. Whether the solver was needed for it is told too.
    private (CoverAnswer Answer, bool IsSolved) Loose(CoverProblem problem)
    {
        ImmutableArray<int[]> needed =
            [.. CoverReduction.NeededPoints(problem.Supporters, problem.SeatCount).Select(p => problem.Supporters[p])];
        var seats = CoverReduction.NeededSeats(needed, problem.SeatCount);
        var small = new CoverProblem(seats.Length, CoverReduction.Among(needed, seats), [], []);
        var (bound, whole) = CoverRelaxation.Solve(small.Supporters, small.SeatCount);
        _lower = Math.Max(_lower, bound);
        if (_lower > _atMost)
        {
            return (None, false);
        }

        var choice = !whole.IsDefault && whole.Length <= _lower ? whole : CoverGuess.Of(small, _lower);
        if (choice.IsDefault && _lower <= _wanted.RoughUpTo)
        {
            // Any choice will do to go on with.
            choice = CoverGuess.Of(small, _lower + 1);
        }

        var isSolved = choice.IsDefault;
        var answer = isSolved ? CoverModel.Solve(small, _atMost, default, _cancellation) : new(choice, _lower, true);
        _lower = Math.Max(_lower, answer.LowerBound);
        return (answer with
        {
            Filled = answer.HasChoice ? [.. answer.Filled.Select(i => seats[i])] : default,
            LowerBound = _lower,
        }, isSolved);
    }

    // With room and stock: from the loose choice by moving pods, else by exchanging them, else by the exact model.
    private CoverAnswer? WithRoom(ImmutableArray<int> loose)
    {
        var problem = _rows.Problem;
        if (loose.Length == _lower && RoomRepair.Repair(problem, loose) is { IsDefault: false } repaired)
        {
            return Complete(new(repaired, _lower, true));
        }

        // Where pods stand in each other's way the relaxation without room says little.
        var (bound, fuller) = CoverRelaxation.WithRoom(problem);
        _lower = Math.Max(_lower, bound);
        if (_lower > _atMost)
        {
            return None;
        }

        if (_lower <= _wanted.RoughWithRoomUpTo)
        {
            return Rough(loose);
        }

        if (Guessed(fuller.IsDefault ? loose : fuller) is { } guessed)
        {
            return guessed;
        }

        if (_wanted.IsQuick)
        {
            return new(default, _lower, false);
        }

        if (_wanted.IsRoughBeforeFull)
        {
            return Rough(loose);
        }

        var answer = CoverModel.Solve(_rows.Problem, _atMost, default, _cancellation, atLeast: _lower, any: _wanted.IsAny);
        _lower = Math.Max(_lower, answer.LowerBound);
        return Complete(answer with { LowerBound = _lower }) ?? Guessed(answer.Filled);
    }

    // A choice by exchanging pods that keeps every row, also those of holding; null when none was found, or rows were added for it.
    private CoverAnswer? Guessed(ImmutableArray<int> start)
    {
        var most = _wanted.IsAny ? _atMost : _lower;
        return _rows.Guess(_lower, most, trySteps: _wanted.IsQuick, start) is { IsDefault: false } guess ? Complete(new(guess, _lower, true)) : null;
    }

    private CoverAnswer? WithHolds(ImmutableArray<int> loose)
    {
        while (true)
        {
            // The relaxation is a hundredth of the work, and mostly enough where a set of placements is to be ruled out.
            var (bound, _) = CoverRelaxation.WithRoom(_rows.WithHolds);
            _lower = Math.Max(_lower, bound);
            if (_lower > _atMost)
            {
                return None;
            }

            if (_lower <= _wanted.RoughWithRoomUpTo)
            {
                return Rough(loose);
            }

            // Pods exchanged keep rows of holding as well, and mostly there is a choice with as few as the bound allows.
            var guess = _rows.Guess(_lower, _lower, trySteps: false, loose);
            var answer = guess.IsDefault ? CoverModel.Solve(_rows.WithHolds, _atMost, default, _cancellation, atLeast: _lower) : new(guess, _lower, true);
            answer = answer with { LowerBound = Math.Max(_lower, answer.LowerBound) };
            if (!answer.HasChoice)
            {
                return answer;
            }

            if (_rows.AddMissing(answer.Filled))
            {
                return null;
            }

            if (!_rows.AddHolds(answer.Filled, out var isCover))
            {
                return answer;
            }

            if (isCover)
            {
                return null;
            }
        }
    }

    // The answer when its choice keeps every row; null when rows had to be added.
    private CoverAnswer? Complete(CoverAnswer answer) =>
        answer.HasChoice && (_rows.AddMissing(answer.Filled) || _rows.AddHolds(answer.Filled, out _)) ? null : answer;
}
