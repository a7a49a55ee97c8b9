using PodLayout.Programs.Motion;
using PodLayout.Programs.Words;

namespace PodLayout.Programs;

/// <summary>Runs a program line by line, in the order of NISTIR 6556, section 3.7 (table 8), and collects the moves.</summary>
internal sealed class ProgramRun
{
    private readonly ProgramOptions _options;
    private readonly ProgramFindings _findings;
    private readonly MachineState _state = new();
    private readonly PathDraft _draft;
    private readonly Mover _mover;
    private readonly Cycles _cycles;
    private readonly SortedSet<int> _workSystems = [];
    private int _toolChanges;
    private bool _inInches;
    private bool _hasMoved;

    public ProgramRun(ProgramOptions options, ProgramFindings findings)
    {
        (_options, _findings) = (options, findings);
        _draft = new(_state, findings);
        _mover = new(_state, _draft, options, findings);
        _cycles = new(_state, _draft, findings);
        if (options.Start is { } start)
        {
            (_state.Tip[0], _state.Tip[1], _state.Tip[2]) = (start.XMm, start.YMm, start.ZMm);
        }
    }

    /// <summary>Whether M2 or M30 has come.</summary>
    public bool HasEnded { get; private set; }

    /// <summary>A second percent sign ends the program as well.</summary>
    public void EndAtPercent() => HasEnded = true;

    /// <summary>The path, once all lines are read; null after a refusal.</summary>
    public ToolPath? Finish(int lines)
    {
        if (!_draft.Compensation.Flush())
        {
            return null;
        }

        if (!HasEnded)
        {
            _findings.Warn(lines == 0 ? null : lines, "program-end-missing", "the program ends without M2, M30 or a closing %; part of it may be missing.", "Check that the whole file is here.");
        }

        if (_draft.Stretches.Count == 0)
        {
            _findings.Refuse(Math.Max(1, lines), "program-without-moves", "found no move of the tool in the program.", "Check that this is the posted program.");
            return null;
        }

        if (_workSystems.Count > 1)
        {
            _findings.Warn(
                null, "work-systems-several", $"the program moves in {_workSystems.Count} work coordinate systems ({string.Join(", ", _workSystems.Select(NameOfSystem))}); except for what G10 L2 says, all are taken to have one zero.",
                "Post it for one work coordinate system, or give the offsets with G10 L2.");
        }

        return new(
            _findings.FileName, [.. _draft.Stretches], [.. _draft.Tools], _draft.DwellSeconds, _toolChanges, lines, _inInches);
    }

    /// <summary>Runs one line; false after a refusal.</summary>
    public bool Step(Block block)
    {
        Modes(block);
        return Compensation(block) && Coordinates(block) && Move(block) && Stop(block) && _findings.Refusal is null;
    }

    private static string NameOfSystem(int system) => system <= 6
        ? CodeGroups.NameOfG(530 + 10 * system) : CodeGroups.NameOfG(590 + system - 6);

    private void Modes(Block block)
    {
        var s = _state;
        s.FeedMode = block.HasG(930) ? 93 : block.HasG(940) ? 94 : block.HasG(950) ? 95 : s.FeedMode;
        var units = block.HasG(200) || block.HasG(700) ? 25.4 : block.HasG(210) || block.HasG(710) ? 1 : 0;
        if (units > 0)
        {
            // Read before F although table 8 has it later: a feed on the same line is meant in the unit that the line names.
            (s.UnitMm, s.UnitIsSaid, _inInches) = (units, true, _inInches || units > 1);
        }

        if (block.Has('F') && !block.HasG(40))
        {
            s.Feed = s.FeedMode == 93 ? block['F'] : block['F'] * s.UnitMm;
        }

        s.SpindleRpm = block.Has('S') ? block['S'] : s.SpindleRpm;
        s.SelectedTool = block.Has('T') ? (int)block['T'] : s.SelectedTool;
        if (block.HasM(6))
        {
            (s.Tool, s.HasToolChange) = (s.SelectedTool, true);
            s.SpindleTurns = false;
            _toolChanges++;
        }
        else if (block.Has('T') && !s.HasToolChange)
        {
            s.Tool = s.SelectedTool;
        }

        s.SpindleTurns = block.HasM(3) || block.HasM(4) || (s.SpindleTurns && !block.HasM(5));
        if (block.HasG(40))
        {
            Dwell(block);
        }

        s.Plane = block.HasG(170) ? ArcPlane.Xy : block.HasG(180) ? ArcPlane.Zx : block.HasG(190) ? ArcPlane.Yz : s.Plane;
    }

    private void Dwell(Block block)
    {
        var seconds = block.Has('P') ? block['P'] : block.Has('X') ? block['X'] : block['F'];
        if (seconds > 0)
        {
            _draft.DwellSeconds += seconds;
        }
        else
        {
            _findings.Warn(block.Line, "dwell-unclear", "found G4 without its time; expected P and seconds.", "It is left out of the cutting time.");
        }
    }

    private bool Compensation(Block block)
    {
        var s = _state;
        if (block.HasG(400))
        {
            if (!_draft.Compensation.Flush())
            {
                return false;
            }

            s.CompensationSide = 0;
        }
        else if (block.HasG(410) || block.HasG(420))
        {
            return _draft.Compensation.TurnOn(block, block.HasG(410) ? 1 : -1, _options);
        }

        return true;
    }

    private bool Coordinates(Block block)
    {
        var s = _state;
        if (block.HasG(430) || block.HasG(490))
        {
            s.LengthIsCompensated = block.HasG(430);
            if (block.HasG(430) && block.Has('H') && (int)block['H'] != s.Tool && block['H'] != 0)
            {
                _findings.Warn(block.Line, "length-of-other-tool", "H names another tool's length than that of the tool in the spindle.", "Z is taken as the height of the tip all the same.");
            }
        }

        foreach (var g in block.G)
        {
            s.WorkSystem = CodeGroups.OfG(g) == 12 ? SystemOf(g) : s.WorkSystem;
        }

        s.IsIncremental = block.HasG(910) || (s.IsIncremental && !block.HasG(900));
        s.CentresAreAbsolute = block.HasG(901) || (s.CentresAreAbsolute && !block.HasG(911));
        s.ReturnsToStart = block.HasG(980) || (s.ReturnsToStart && !block.HasG(990));
        return true;
    }

    // G54 is the first, G59.3 the ninth.
    private static int SystemOf(int g) => g > 590 ? g - 590 + 6 : (g - 530) / 10;

    private bool Move(Block block)
    {
        var special = block.G.Find(g => CodeGroups.OfG(g) == CodeGroups.NonModal && g is not 40 and not 530);
        var hasSpecial = block.G.Exists(g => CodeGroups.OfG(g) == CodeGroups.NonModal && g is not 40 and not 530);
        var motion = block.G.FindIndex(g => CodeGroups.OfG(g) == CodeGroups.Motion);
        if (motion >= 0)
        {
            var next = block.G[motion];
            // On the way to a reference point the tool moves rapidly anyway.
            if (hasSpecial && block.HasAxis && next != 800 && !(next == 0 && special is 280 or 300))
            {
                return _findings.Refuse(
                    block.Line, "axes-claimed-twice", $"found {CodeGroups.NameOfG(next)} and {CodeGroups.NameOfG(special)} on one line; both use the axis words.", "Put them on two lines.");
            }

            _cycles.Forget(_state.Motion, next);
            _state.Motion = next == 800 ? null : next;
        }

        if (hasSpecial)
        {
            return new SpecialMoves(_state, _mover, _findings).Do(block, special);
        }

        if (block.HasG(40) || !NeedsMotion(block))
        {
            return true;
        }

        return Named(block) && Motions(block);
    }

    private bool NeedsMotion(Block block) => block.HasAxis
        || ((block.Has('I') || block.Has('J') || block.Has('K')) && _state.Motion is 20 or 30);

    private bool Named(Block block)
    {
        if (_state.Motion is null)
        {
            return _findings.Refuse(
                block.Line, "motion-missing", "found axis words, but no G0, G1, G2, G3 or cycle is in force.", "Say how the tool is to move.");
        }

        if (!_hasMoved && !_state.UnitIsSaid)
        {
            _findings.Warn(block.Line, "unit-assumed", "the first move comes before any G20 or G21; it is taken as millimetres.", "Add G21 (or G20) at the top.");
        }

        if (_state.SelectedTool > 0 && !_state.HasToolChange)
        {
            _findings.Warn(block.Line, "tool-change-missing", "a tool is named by T but no M6 has come; it is taken as being in the spindle.");
        }

        _hasMoved = true;
        _workSystems.Add(_state.WorkSystem);
        return true;
    }

    private bool Motions(Block block)
    {
        var motion = _state.Motion!.Value;
        if (motion > 30)
        {
            return _state.CompensationSide == 0
                ? _cycles.Run(block, motion)
                : _findings.Refuse(block.Line, "cycle-under-compensation", "found a drilling cycle while cutter radius compensation is on.", "Put G40 before it (NISTIR 6556, section 3.5.16).");
        }

        return block.HasG(530) ? new SpecialMoves(_state, _mover, _findings).ToMachine(block) : _mover.Go(block, motion);
    }

    private bool Stop(Block block)
    {
        if (block.HasM(2) || block.HasM(30))
        {
            HasEnded = true;
        }

        return true;
    }
}
