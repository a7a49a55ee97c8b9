using PodLayout.Programs.Words;

namespace PodLayout.Programs;

/// <summary>What the control remembers from line to line.</summary>
internal sealed class MachineState
{
    // Nine work coordinate systems, each an offset from the drawing's zero.
    private readonly double[,] _work = new double[10, 3];
    private readonly double[] _shift = new double[3];
    private readonly double[] _set = new double[3];
    private readonly double[] _setAside = new double[3];

    /// <summary>Tip, mm, in X, Y, Z; NaN where the program has not said yet.</summary>
    public double[] Tip { get; } = [double.NaN, double.NaN, double.NaN];

    /// <summary>The motion word in force, in tenths; null after G80.</summary>
    public int? Motion { get; set; }

    public ArcPlane Plane { get; set; } = ArcPlane.Xy;

    public bool IsIncremental { get; set; }

    public bool CentresAreAbsolute { get; set; }

    /// <summary>93: inverse time; 94: units a minute; 95: units a turn of the spindle.</summary>
    public int FeedMode { get; set; } = 94;

    public double Feed { get; set; }

    public double SpindleRpm { get; set; }

    public bool SpindleTurns { get; set; }

    /// <summary>Millimetres in a unit of the program.</summary>
    public double UnitMm { get; set; } = 1;

    public bool UnitIsSaid { get; set; }

    /// <summary>Whether a cycle goes back to the height at which it began (G98) and not only to R (G99).</summary>
    public bool ReturnsToStart { get; set; } = true;

    public int SelectedTool { get; set; }

    public int Tool { get; set; }

    public bool HasToolChange { get; set; }

    public int WorkSystem { get; set; } = 1;

    /// <summary>Left or right of the path: 1 or -1; 0 when off.</summary>
    public int CompensationSide { get; set; }

    public double CompensationRadiusMm { get; set; }

    public bool LengthIsCompensated { get; set; }

    /// <summary>Whether all three coordinates of the tip are known.</summary>
    public bool TipIsKnown => !double.IsNaN(Tip[0]) && !double.IsNaN(Tip[1]) && !double.IsNaN(Tip[2]);

    public TipPoint Point => new(Tip[0], Tip[1], Tip[2]);

    /// <summary>Where the program's zero lies along an axis, mm.</summary>
    public double ZeroOf(int axis) => _work[WorkSystem, axis] + _shift[axis] + _set[axis];

    /// <summary>Where a coordinate of this line is, mm.</summary>
    public double Absolute(int axis, double written) => ZeroOf(axis) + written * UnitMm;

    /// <summary>The end of this line's move along one axis, mm; NaN when that is not known.</summary>
    public double Target(Block block, int axis)
    {
        var letter = Block.Axes[axis];
        if (!block.Has(letter))
        {
            return Tip[axis];
        }

        return IsIncremental ? Tip[axis] + block[letter] * UnitMm : Absolute(axis, block[letter]);
    }

    public void SetWork(int system, int axis, double mm) => _work[system, axis] = mm;

    /// <summary>G52: a further shift of all work systems.</summary>
    public void SetShift(int axis, double mm) => _shift[axis] = mm;

    /// <summary>Whether a G92 offset is in force.</summary>
    public bool IsSet => _set.Any(mm => mm != 0);

    /// <summary>G92: the tip gets a coordinate, and the zero moves accordingly.</summary>
    public void SetHere(int axis, double mm)
    {
        if (double.IsNaN(Tip[axis]))
        {
            // The operator drove there by hand: the place is known only by the name that it gets here.
            Tip[axis] = ZeroOf(axis) + mm;
            return;
        }

        _set[axis] = Tip[axis] - mm - _work[WorkSystem, axis] - _shift[axis];
        _setAside[axis] = _set[axis];
    }

    /// <summary>G92.1 and G92.2: without the G92 offset; the first forgets it.</summary>
    public void DropSet(bool forget)
    {
        for (var axis = 0; axis < 3; axis++)
        {
            _set[axis] = 0;
            _setAside[axis] = forget ? 0 : _setAside[axis];
        }
    }

    /// <summary>G92.3: the G92 offset again.</summary>
    public void RestoreSet() => _setAside.CopyTo(_set, 0);
}
