using PodLayout.Programs.Words;

namespace PodLayout.Programs.Motion;

/// <summary>
/// Coordinate settings (G10 L2, G52, G92 and its kin) and moves to places that the machine knows and the program does not
/// (G28, G30, G53). NISTIR 6556, sections 3.5.5, 3.5.6, 3.5.12 and 3.5.17.
/// </summary>
internal sealed class SpecialMoves(MachineState state, Mover mover, ProgramFindings findings)
{
    /// <summary>Does what the word says.</summary>
    public bool Do(Block block, int word)
    {
        if (state.CompensationSide != 0 && word is not 920)
        {
            return findings.Refuse(
                block.Line, "word-under-compensation", $"found {CodeGroups.NameOfG(word)} while cutter radius compensation is on.", "Put G40 before it.");
        }

        switch (word)
        {
            case 100:
                return SetWork(block);
            case 520:
                ForAxes(block, (axis, value) => state.SetShift(axis, value));
                return true;
            case 920:
                return SetHere(block);
            case 921 or 922:
                state.DropSet(forget: word == 921);
                return true;
            case 923:
                state.RestoreSet();
                return true;
            default:
                return ToReference(block, word);
        }
    }

    /// <summary>G53: a move in the machine's own coordinates, whose zero the program does not say.</summary>
    public bool ToMachine(Block block)
    {
        if (state.Motion is not (0 or 10) || state.IsIncremental || state.CompensationSide != 0)
        {
            return findings.Refuse(
                block.Line, "machine-move-unclear", "found G53 where G0 or G1, G90 and G40 are not all in force.", "Put them before it (NISTIR 6556, section 3.5.12).");
        }

        Leave(block, "G53");
        return true;
    }

    private static void ForAxes(Block block, Action<int, double> action, double unit)
    {
        for (var axis = 0; axis < 3; axis++)
        {
            if (block.Has(Block.Axes[axis]))
            {
                action(axis, block[Block.Axes[axis]] * unit);
            }
        }
    }

    private void ForAxes(Block block, Action<int, double> action) => ForAxes(block, action, state.UnitMm);

    private bool SetWork(Block block)
    {
        if (block['L'] != 2 || block.Has('R') || !block.Has('P') || block['P'] is not (>= 1 and <= 9))
        {
            return findings.Refuse(
                block.Line, "word-not-read", "found G10 that is not G10 L2 P1 to P9 without R; what it sets is not read.", "Post the program without it.");
        }

        if (state.IsIncremental)
        {
            return findings.Refuse(block.Line, "word-not-read", "found G10 L2 in G91; whether it adds or sets differs between machines.", "Put G90 before it.");
        }

        findings.Note(block.Line, "work-zero-set", "G10 L2 sets a work zero; it is taken as measured from the drawing's zero");
        ForAxes(block, (axis, value) => state.SetWork((int)block['P'], axis, value));
        return true;
    }

    private bool SetHere(Block block)
    {
        if (!block.HasAxis)
        {
            // Some controls take it for the spindle's highest speed (with S), some for the end of what an earlier G92 set.
            return state.IsSet
                ? findings.Refuse(
                    block.Line, "word-incomplete", "found G92 without X, Y or Z after one that set a coordinate; whether it ends that is not clear.", "Write G92.1 to end it, or say which coordinate it sets.")
                : Nothing(block);
        }

        ForAxes(block, state.SetHere);
        return true;
    }

    private bool Nothing(Block block)
    {
        if (!block.Has('S'))
        {
            findings.Warn(block.Line, "word-incomplete", "found G92 without X, Y or Z; no coordinate is set.");
        }

        return true;
    }

    private bool ToReference(Block block, int word)
    {
        if (block.HasAxis)
        {
            // By way of the point named on the line.
            double x = state.Target(block, 0), y = state.Target(block, 1), z = state.Target(block, 2);
            if (state.TipIsKnown && !(x == state.Tip[0] && y == state.Tip[1] && z == state.Tip[2]) && !mover.Go(block, 0))
            {
                return false;
            }
        }

        Leave(block, CodeGroups.NameOfG(word));
        return true;
    }

    private void Leave(Block block, string word)
    {
        var all = !block.HasAxis;
        var leavesZ = all || block.Has('Z');
        var travels = all || block.Has('X') || block.Has('Y');
        if (travels && !double.IsNaN(state.Tip[2]))
        {
            findings.Warn(
                block.Line, "travel-unchecked", $"{word} travels to a place of the machine that the program does not say; the travel is not checked.", "Raise Z first, on a line of its own.");
        }
        else if (leavesZ)
        {
            findings.Note(block.Line, "height-of-machine", $"{word} raises the tool to a height of the machine; it is taken to be above all that stands on the table");
        }

        for (var axis = 0; axis < 3; axis++)
        {
            state.Tip[axis] = all || block.Has(Block.Axes[axis]) ? double.NaN : state.Tip[axis];
        }

    }
}
