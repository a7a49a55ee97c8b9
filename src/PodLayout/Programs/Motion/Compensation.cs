using System.Globalization;
using PodLayout.Geometry;
using PodLayout.Programs.Words;

namespace PodLayout.Programs.Motion;

/// <summary>
/// Cutter radius compensation (NISTIR 6556, section 3.5.10 and appendix B): the tool's path beside the programmed one. Outer
/// corners are rounded by an arc about the corner, as the report has it; inner corners, which the report's interpreter refuses,
/// are cut at the crossing of the two offsets, as controls commonly do.
/// </summary>
internal sealed class Compensation(MachineState state, PathDraft draft, ProgramFindings findings)
{
    private const double Small = 1e-7;

    private readonly List<Stretch> _plunges = [];
    private Offset? _pending;
    private bool _isEntry;
    private Point2 _at;
    private double _radius;
    private int _side;

    /// <summary>G41 or G42.</summary>
    /// <param name="block">Its line.</param>
    /// <param name="side">1 for left of the path, -1 for right.</param>
    /// <param name="options">Where the tools are.</param>
    public bool TurnOn(Block block, int side, ProgramOptions options)
    {
        var name = side > 0 ? "G41" : "G42";
        var number = block.Has('D') ? (int)block['D'] : state.Tool;
        if (state.CompensationSide != 0 || state.Plane != ArcPlane.Xy || double.IsNaN(state.Tip[0]) || double.IsNaN(state.Tip[1]))
        {
            return findings.Refuse(
                block.Line, "compensation-unclear", $"found {name} {(state.CompensationSide != 0 ? "while compensation is on" : state.Plane != ArcPlane.Xy ? "outside G17" : "before the program has said where X and Y are")}.", "Put G40, G17 and a move to X and Y before it.");
        }

        if (!options.Tools.TryGetValue(number, out var tool) && number != 0)
        {
            return findings.Refuse(
                block.Line, "tool-missing", Text($"found {name} with the radius of tool {number}, which is not in the tool table."), "Add the tool to the job's table.");
        }

        findings.Note(block.Line, "compensation", Text($"{name}: the path is taken as that of the finished edge, {(tool?.DiameterMm ?? 0) / 2:0.####} mm (radius of tool {number}) from the tool's centre; a radius in the control's own table that differs changes it"));
        (_side, _radius, _pending) = (side, (tool?.DiameterMm ?? 0) / 2, null);
        state.CompensationSide = _radius > 0 ? side : 0;
        state.CompensationRadiusMm = _radius;
        _at = new(state.Tip[0], state.Tip[1]);
        return true;
    }

    /// <summary>A programmed move.</summary>
    public bool Add(Stretch move)
    {
        if (move.TurnRad == 0 && Length(move) < Small)
        {
            if (_pending is null)
            {
                Emit(Offset.Plunge(move, _at));
            }
            else
            {
                _plunges.Add(move);
            }

            return true;
        }

        if (move.TurnRad != 0 && (move.Plane != ArcPlane.Xy || (_pending is null && !_isEntry && IsFirst)))
        {
            return findings.Refuse(move.Line, "compensation-unclear", "found an arc as the first move under cutter radius compensation, or outside G17.", "Let a straight move in X and Y come first.");
        }

        var next = new Offset(move, _side * _radius);
        if (next.RadiusMm is <= Small)
        {
            return DoesNotFit(move.Line);
        }

        if (_pending is not { } before)
        {
            (_pending, _isEntry, IsFirst) = (next with { Start = _at }, IsFirst, false);
            return true;
        }

        return (_isEntry ? Enter(before, ref next) : Corner(before, ref next)) && Keep(next);
    }

    private bool IsFirst { get; set; } = true;

    /// <summary>Ends the compensation: the last move ends square to its end.</summary>
    public bool Flush()
    {
        if (state.CompensationSide == 0)
        {
            return true;
        }

        if (_pending is { } last)
        {
            Emit(last.Piece(last.End));
            Plunge(last.End);
            // The tool stays where it is: the next move starts from there.
            (state.Tip[0], state.Tip[1]) = (last.End.X, last.End.Y);
        }

        (_pending, _isEntry, IsFirst) = (null, false, true);
        return true;
    }

    private static double Length(Stretch move) => new Point2(move.To.XMm - move.From.XMm, move.To.YMm - move.From.YMm).Length;

    private bool Keep(Offset next)
    {
        (_pending, _isEntry) = (next, false);
        return true;
    }

    // The first move: to the circle about its end, touching it, and around it to where the next begins.
    private bool Enter(Offset entry, ref Offset next)
    {
        var corner = entry.Corner;
        var way = corner - _at;
        if (way.Length <= _radius)
        {
            return findings.Refuse(
                entry.Move.Line, "compensation-unclear", Text($"found a first move under cutter radius compensation of {way.Length:0.###} mm, not longer than the radius of {_radius:0.###} mm."), "Lengthen the lead-in.");
        }

        var angle = Math.Atan2(-way.Y, -way.X) - _side * Math.Acos(_radius / way.Length);
        var touch = corner + new Point2(Math.Cos(angle), Math.Sin(angle)) * _radius;
        var arriving = (touch - _at) * (1 / (touch - _at).Length);
        var turn = Math.Atan2(arriving.Cross(next.StartDirection), arriving.Dot(next.StartDirection));
        if (_side * turn < 0)
        {
            Emit(entry.Straight(touch));
            Plunge(touch);
            Emit(Offset.Around(entry.Move, corner, touch, next.Start, turn));
        }
        else
        {
            Emit(entry.Straight(next.Start));
            Plunge(next.Start);
        }

        return true;
    }

    private bool Corner(Offset before, ref Offset next)
    {
        Point2 arriving = before.EndDirection, leaving = next.StartDirection;
        var turn = Math.Atan2(arriving.Cross(leaving), arriving.Dot(leaving));
        // A way straight back is an outer corner on either side.
        if (Math.Abs(turn) > Math.PI - Small)
        {
            turn = -_side * Math.PI;
        }

        if (Math.Abs(turn) * _radius < Small || _side * turn < 0)
        {
            Emit(before.Piece(before.End));
            Plunge(before.End);
            if ((next.Start - before.End).Length > Small)
            {
                Emit(Offset.Around(before.Move, before.Corner, before.End, next.Start, turn));
            }

            return true;
        }

        if (before.Crossing(next) is not { } crossing)
        {
            return DoesNotFit(next.Move.Line);
        }

        Emit(before.Piece(crossing));
        Plunge(crossing);
        next = next with { Start = crossing };
        return true;
    }

    private bool DoesNotFit(int line) => findings.Refuse(
        line, "compensation-too-tight", Text($"the tool of radius {_radius:0.###} mm does not fit into the programmed contour here."), "Use a smaller tool or open the corner.");

    private void Plunge(Point2 at)
    {
        foreach (var plunge in _plunges)
        {
            Emit(Offset.Plunge(plunge, at));
        }

        _plunges.Clear();
    }

    private void Emit(Stretch stretch)
    {
        _at = new(stretch.To.XMm, stretch.To.YMm);
        draft.Add(stretch);
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
