using System.Collections.Immutable;

namespace PodLayout.Choice;

/// <summary>The rows of a question that were needed so far.</summary>
internal sealed class GrowingRows
{
    // Rows added at a time: enough to come to an end soon, few enough to leave out what the next choice supports anyway.
    private const int RowsOfRound = 32;

    private readonly CoverQuestion _question;
    private readonly bool[] _isIn;
    private readonly List<int[]> _rows = [];
    private readonly List<HoldRow> _holds = [];
    private CoverGuess? _guess;

    /// <summary>The rows of some points.</summary>
    public GrowingRows(CoverQuestion question, ImmutableArray<int> first)
    {
        _question = question;
        _isIn = new bool[question.PointCount];
        foreach (var point in first)
        {
            Add(point);
        }
    }

    /// <summary>Whether there are rows of holding that are more than points to support.</summary>
    public bool HasHolds => _holds.Count > 0;

    /// <summary>The rows of points alone.</summary>
    public CoverProblem Loose => new(_question.SeatCount, [.. _rows], [], []);

    /// <summary>The rows, without those of holding.</summary>
    public CoverProblem Problem => new(_question.SeatCount, [.. _rows], _question.Rooms.Value, _question.Stocks);

    /// <summary>All rows.</summary>
    public CoverProblem WithHolds => Problem with { Holds = [.. _holds] };

    /// <summary>Adds rows for the points that a choice leaves without support; false when there are none.</summary>
    public bool AddMissing(ImmutableArray<int> filled)
    {
        var missing = Enumerable.Range(0, _question.PointCount)
            .Where(p => !_isIn[p] && !filled.Any(s => _question.Supports(s, p))).ToArray();
        // Spread over the part: neighbours mostly ask for the same.
        var step = Math.Max(1, missing.Length / RowsOfRound);
        foreach (var p in missing.Where((_, i) => i % step == 0))
        {
            Add(p);
        }

        return missing.Length > 0;
    }

    /// <summary>
    /// Adds the rows of holding that a choice breaks; false when there are none. Those that any one of some seats keeps are like
    /// points to support, and help the quick choices too.
    /// </summary>
    /// <param name="filled">A choice that supports every point.</param>
    /// <param name="isCover">Whether some were like points to support.</param>
    public bool AddHolds(ImmutableArray<int> filled, out bool isCover)
    {
        var broken = _question.HoldsBrokenBy?.Invoke(filled) ?? [];
        isCover = false;
        foreach (var hold in broken)
        {
            if (hold.IsCover)
            {
                isCover = true;
                AddRow(hold.Seats);
            }
            else
            {
                _holds.Add(hold);
                _guess?.Add(hold);
            }
        }

        return broken.Length > 0;
    }

    /// <summary>
    /// A choice that keeps every row known, within room and stock, found by exchanging pods, with as few as are found soon; default
    /// when none was found. Rows are added for the points that the choices on the way leave without support.
    /// </summary>
    /// <param name="atLeast">Fewest pods to try.</param>
    /// <param name="atMost">Most pods to try.</param>
    /// <param name="trySteps">Whether to try the numbers between the fewest and the most too.</param>
    /// <param name="start">A choice to begin with, which may break room and stock rows.</param>
    public ImmutableArray<int> Guess(int atLeast, int atMost, bool trySteps, ImmutableArray<int> start)
    {
        if (_guess is null)
        {
            _guess = new(_question.SeatCount, _question.Rooms.Value, _question.Stocks);
            _rows.ForEach(_guess.Add);
            _holds.ForEach(_guess.Add);
        }

        _guess.Start(start);
        ImmutableArray<int> best = default;
        var step = 0;
        for (var pods = Math.Max(1, atLeast); best.IsDefault && pods <= atMost; pods = Math.Min(pods + step, Math.Max(atMost, pods + 1)))
        {
            best = Guess(pods);
            // One by one to begin with, then in longer steps.
            step = trySteps ? step + (step < 2 ? 1 : step / 2) : atMost;
        }

        // Back to what a longer step may have left out.
        for (var pods = best.IsDefault || !trySteps ? 0 : best.Length - 1; step > 1 && pods > atLeast && Guess(pods) is { IsDefault: false } fewer; pods = fewer.Length - 1)
        {
            best = fewer;
        }

        return best;
    }

    private ImmutableArray<int> Guess(int pods)
    {
        while (_rows.TrueForAll(r => r.Length > 0) && _guess!.Search(pods) is { IsDefault: false } choice)
        {
            if (!AddMissing(choice))
            {
                return choice;
            }
        }

        return default;
    }

    private void Add(int point)
    {
        _isIn[point] = true;
        AddRow(_question.SupportersOf(point));
    }

    private void AddRow(int[] seats)
    {
        _rows.Add(seats);
        _guess?.Add(seats);
    }
}
