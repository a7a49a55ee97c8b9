using PodLayout.Programs.Words;

namespace PodLayout.Programs.Motion;

/// <summary>The path as it grows, and what is said of moves whose place the program does not tell.</summary>
internal sealed class PathDraft
{
    /// <summary>Moves of a program: the longest that are posted for one part have some hundred thousand. Cycles that repeat ask for more by mistake.</summary>
    private const int MostMoves = 1_500_000;

    private readonly MachineState _state;
    private readonly ProgramFindings _findings;
    private int _lastTool = int.MinValue;

    public PathDraft(MachineState state, ProgramFindings findings)
    {
        (_state, _findings) = (state, findings);
        Compensation = new(state, this, findings);
    }

    public List<Stretch> Stretches { get; } = [];

    public List<int> Tools { get; } = [];

    /// <summary>Time in dwells, seconds.</summary>
    public double DwellSeconds { get; set; }

    /// <summary>What stands between the programmed path and the tool's, while G41 or G42 is on.</summary>
    public Compensation Compensation { get; }

    /// <summary>Adds a move of the tool as it is; false after a refusal.</summary>
    public bool Add(Stretch stretch)
    {
        if (Stretches.Count >= MostMoves)
        {
            return _findings.Refuse(
                stretch.Line, "program-too-long", FormattableString.Invariant($"found more than {MostMoves} moves up to this line; cycles and what they repeat count with every move of theirs."),
                "Check Q and L of the cycles, or post the program in parts.");
        }

        if (stretch.ToolNumber != _lastTool)
        {
            _lastTool = stretch.ToolNumber;
            if (!Tools.Contains(_lastTool))
            {
                Tools.Add(_lastTool);
            }
        }

        Stretches.Add(stretch);
        return true;
    }

    /// <summary>A straight move from where the tip is to a target of which parts may be unknown (NaN).</summary>
    public bool LineTo(double x, double y, double z, StretchKind kind, Block block)
    {
        var from = _state.Point;
        var to = new TipPoint(x, y, z);
        var fromKnown = _state.TipIsKnown;
        (_state.Tip[0], _state.Tip[1], _state.Tip[2]) = (x, y, z);
        var toKnown = _state.TipIsKnown;
        if (!fromKnown || !toKnown)
        {
            return FromNowhere(from, to, toKnown, kind, block);
        }

        if (from == to)
        {
            return true;
        }

        return Pass(Dress(new Stretch(from, to, kind, _state.Tool, block.Line), block));
    }

    /// <summary>An arc from where the tip is.</summary>
    public bool ArcTo(Stretch arc, Block block)
    {
        (_state.Tip[0], _state.Tip[1], _state.Tip[2]) = (arc.To.XMm, arc.To.YMm, arc.To.ZMm);
        return Pass(Dress(arc, block));
    }

    private bool Pass(Stretch stretch)
    {
        if (_state.CompensationSide != 0)
        {
            return Compensation.Add(stretch);
        }

        return Add(stretch);
    }

    // Spindle and feed, and a word where they are missing.
    private Stretch Dress(Stretch stretch, Block block)
    {
        if (stretch.Kind is StretchKind.Rapid or StretchKind.RapidInHole)
        {
            return stretch with { SpindleRpm = _state.SpindleTurns ? _state.SpindleRpm : 0 };
        }

        if (!_state.SpindleTurns)
        {
            _findings.Warn(block.Line, "spindle-stopped", "the tool is fed while no M3 or M4 is in force.");
        }

        var feed = _state.FeedMode switch
        {
            93 => block.Has('F') ? stretch.LengthMm * block['F'] : 0,
            95 => _state.Feed * _state.SpindleRpm,
            _ => _state.Feed,
        };
        if (!(feed > 0))
        {
            _findings.Warn(block.Line, "feed-missing", "the tool is fed, but no feed rate is in force; the cutting time leaves it out.");
            feed = 0;
        }

        return stretch with { FeedMmPerMin = feed, SpindleRpm = _state.SpindleTurns ? _state.SpindleRpm : 0 };
    }

    private bool FromNowhere(TipPoint from, TipPoint to, bool toKnown, StretchKind kind, Block block)
    {
        if (kind != StretchKind.Rapid)
        {
            return _findings.Refuse(
                block.Line, "place-unknown", "the tool is fed from or to a place of which the program has not said X, Y and Z.", "Let a rapid move to X, Y and Z come first.");
        }

        if (!toKnown)
        {
            return true;
        }

        var travels = !(from.XMm == to.XMm && from.YMm == to.YMm);
        if (double.IsNaN(from.ZMm) && travels && !double.IsNaN(from.XMm) && !double.IsNaN(from.YMm))
        {
            _findings.Warn(block.Line, "travel-unchecked", "the tool comes down while it travels, from a height that the program does not say; the travel is not checked.", "Let it travel first and then come down.");
        }

        // The arrival itself is known.
        return Add(Dress(new Stretch(to, to, kind, _state.Tool, block.Line), block));
    }
}
