using PodLayout.Programs.Words;

namespace PodLayout.Programs.Motion;

/// <summary>Drilling cycles G81 to G89 and G73 (NISTIR 6556, section 3.5.16).</summary>
/// <remarks>G73 is not in the report; its tool goes where that of G83 goes, with shorter ways back.</remarks>
internal sealed class Cycles(MachineState state, PathDraft draft, ProgramFindings findings)
{
    // How far above the last depth a peck drill slows down, mm; 0.010 inch in the report's section 3.5.16.4.
    private const double PeckGapMm = 0.254;

    private const int MostPecks = 10_000;
    private const int MostRepeats = 10_000;

    private double? _depth, _retract, _peck;
    private double _dwell;

    /// <summary>What a cycle keeps for the next line ends with the first other motion.</summary>
    public void Forget(int? before, int next)
    {
        if (next <= 30 || next == 800 || before is null or <= 30)
        {
            (_depth, _retract, _peck, _dwell) = (null, null, null, 0);
        }
    }

    /// <summary>Runs one line of a cycle.</summary>
    public bool Run(Block block, int motion)
    {
        var name = CodeGroups.NameOfG(motion);
        var (a, b, n) = state.Plane switch { ArcPlane.Xy => (0, 1, 2), ArcPlane.Zx => (2, 0, 1), _ => (1, 2, 0) };
        var deep = Block.Axes[n];
        _depth = block.Has(deep) ? block[deep] * state.UnitMm : _depth;
        _retract = block.Has('R') ? block['R'] * state.UnitMm : _retract;
        _peck = block.Has('Q') ? block['Q'] * state.UnitMm : _peck;
        _dwell = block.Has('P') ? block['P'] : _dwell;
        if (Wrong(block, motion, deep, n) is { } wrong)
        {
            return findings.Refuse(block.Line, "cycle-unclear", $"found {name} {wrong}.", "Mend the line (NISTIR 6556, section 3.5.16).");
        }

        var retract = state.IsIncremental ? state.Tip[n] + _retract!.Value : state.ZeroOf(n) + _retract!.Value;
        var bottom = state.IsIncremental ? retract + _depth!.Value : state.ZeroOf(n) + _depth!.Value;
        if (retract < bottom)
        {
            return findings.Refuse(block.Line, "cycle-unclear", $"found {name} whose R lies below its {deep}.", "Mend R or the depth.");
        }

        double[] tip = [.. state.Tip];
        var ways = new Ways(tip, n, draft, block);
        if (tip[n] < retract && !ways.Along(retract, StretchKind.Rapid))
        {
            return false;
        }

        var clear = state.ReturnsToStart ? Math.Max(tip[n], retract) : retract;
        var repeats = block.Has('L') ? (int)block['L'] : 1;
        for (var i = 0; i < repeats; i++)
        {
            foreach (var axis in (ReadOnlySpan<int>)[a, b])
            {
                var letter = Block.Axes[axis];
                tip[axis] = !block.Has(letter) ? tip[axis]
                    : state.IsIncremental ? tip[axis] + block[letter] * state.UnitMm : state.Absolute(axis, block[letter]);
            }

            if (!Hole(block, motion, ways, (a, b), retract, bottom, clear))
            {
                return false;
            }
        }

        return true;
    }

    private string? Wrong(Block block, int motion, char deep, int n)
    {
        var isPeck = motion is 830 or 730;
        if (state.FeedMode == 93)
            return "in inverse time feed (G93)";
        if (_depth is null || _retract is null)
            return $"without {(_depth is null ? deep : 'R')}";
        if (isPeck && !(_peck > 0))
            return "without Q, or with Q that is not more than 0";
        if (block.Has('L') && block['L'] is not (>= 1 and <= MostRepeats))
            return $"with L that is not from 1 to {MostRepeats}";
        if (double.IsNaN(state.Tip[n]))
            return $"before the program has said where {deep} is";
        if (motion == 870 && !(block.Has('K') && (block.Has('I') || block.Has('J'))))
            return "without I, J and K";
        return null;
    }

    private bool Hole(Block block, int motion, Ways ways, (int A, int B) plane, double retract, double bottom, double clear)
    {
        if (motion == 870)
        {
            return BackBore(block, ways, plane, bottom, clear);
        }

        if (!ways.Across() || !ways.Along(retract, StretchKind.Rapid))
        {
            return false;
        }

        var isPeck = motion is 830 or 730;
        if (isPeck && !Pecks(block, motion, ways, retract, bottom))
        {
            return false;
        }

        if (!ways.Along(bottom, StretchKind.Line))
        {
            return false;
        }

        if (motion is 820 or 860 or 880 or 890)
        {
            draft.DwellSeconds += _dwell;
        }

        // Tapping and boring feed out again.
        return ways.Along(motion is 840 or 850 or 890 ? Math.Min(retract, clear) : clear, motion is 840 or 850 or 890 ? StretchKind.Line : StretchKind.Rapid)
            && ways.Along(clear, StretchKind.Rapid);
    }

    // All pecks but the last.
    private bool Pecks(Block block, int motion, Ways ways, double retract, double bottom)
    {
        var peck = _peck!.Value;
        if ((retract - bottom) / peck > MostPecks)
        {
            return findings.Refuse(block.Line, "cycle-unclear", $"found pecks so short that one hole takes more than {MostPecks}.", "Check Q and the unit.");
        }

        for (var depth = retract - peck; depth > bottom + 1e-9; depth -= peck)
        {
            var back = Math.Min(retract, depth + PeckGapMm);
            if (!ways.Along(depth, StretchKind.Line)
                || !ways.Along(motion == 830 ? retract : back, StretchKind.Rapid)
                || !ways.Along(back, StretchKind.RapidInHole))
            {
                return false;
            }
        }

        return true;
    }

    // G87, section 3.5.16.8: in beside the hole's axis, over to it, up to K and back, and out the same way.
    private bool BackBore(Block block, Ways ways, (int A, int B) plane, double bottom, double clear)
    {
        double[] aside = [block['I'], block['J']];
        var middle = (state.IsIncremental ? bottom : state.ZeroOf(ways.Normal)) + block['K'] * state.UnitMm;
        if (state.Plane != ArcPlane.Xy)
        {
            return findings.Refuse(block.Line, "word-not-read", "found G87 outside G17, which is not read.", "Post it in G17.");
        }

        if (middle < bottom)
        {
            return findings.Refuse(block.Line, "cycle-unclear", "found G87 whose K lies below its depth.", "Mend K or Z.");
        }

        bool Aside(int sign)
        {
            ways.Tip[plane.A] += sign * aside[0] * state.UnitMm;
            ways.Tip[plane.B] += sign * aside[1] * state.UnitMm;
            return ways.Across();
        }

        return Aside(1) && ways.Along(bottom, StretchKind.Rapid) && Aside(-1)
            && ways.Along(middle, StretchKind.Line) && ways.Along(bottom, StretchKind.Line)
            && Aside(1) && ways.Along(clear, StretchKind.Rapid) && Aside(-1);
    }

    // Moves of a cycle: across to where Tip says, or along the axis of the hole.
    private sealed class Ways(double[] tip, int normal, PathDraft draft, Block block)
    {
        public double[] Tip => tip;

        public int Normal => normal;

        public bool Across() => draft.LineTo(tip[0], tip[1], tip[2], StretchKind.Rapid, block);

        public bool Along(double to, StretchKind kind)
        {
            // Where the hole is may not be known yet: then the tip only rises or sinks there.
            tip[normal] = to;
            return draft.LineTo(tip[0], tip[1], tip[2], kind, block);
        }
    }
}
