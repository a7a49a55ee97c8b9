using System.Globalization;
using PodLayout.Programs.Words;

namespace PodLayout.Programs.Motion;

/// <summary>Straight moves and arcs (NISTIR 6556, sections 3.5.1 to 3.5.3).</summary>
internal sealed class Mover(MachineState state, PathDraft draft, ProgramOptions options, ProgramFindings findings)
{
    // Ends nearer than this are one point, mm: sums of increments carry rounding.
    private const double SamePointMm = 1e-6;

    // RS274/NGC, section 3.5.3: 0.0002 inch or 0.002 mm.
    private const double ToleranceInches = 0.0002;
    private const double ToleranceMm = 0.002;

    // Posts that round to a thousandth of an inch, and spirals, differ by more. Up to here the path is followed as a spiral and told;
    // a wrong centre is off by more than that, and on a small arc a hundredth of the radius shows it.
    private const double SpiralMm = 0.05;
    private const double SpiralShare = 0.01;

    private double AllowedMm => options.ArcToleranceMm ?? (state.UnitMm > 1 ? ToleranceInches * state.UnitMm : ToleranceMm);

    /// <summary>G0 to G3.</summary>
    public bool Go(Block block, int motion)
    {
        Span<double> target = [state.Target(block, 0), state.Target(block, 1), state.Target(block, 2)];
        for (var axis = 0; axis < 3; axis++)
        {
            if (block.Has(Block.Axes[axis]) && double.IsNaN(target[axis]))
            {
                return findings.Refuse(
                    block.Line, "place-unknown", $"found an incremental move along {Block.Axes[axis]}, but the program has not said where {Block.Axes[axis]} is.", "Let a move in G90 come first.");
            }

            if (Math.Abs(target[axis]) > Tolerances.LargestCoordinateMm)
            {
                return findings.Refuse(
                    block.Line, "coordinate-too-large", Text($"found a move to {Block.Axes[axis]} = {target[axis]:0} mm."), "Check the number and the unit.");
            }
        }

        return motion switch
        {
            0 => draft.LineTo(target[0], target[1], target[2], StretchKind.Rapid, block),
            10 => draft.LineTo(target[0], target[1], target[2], StretchKind.Line, block),
            _ => Arc(block, target, motion == 20),
        };
    }

    private static (int A, int B, int Normal, char CentreA, char CentreB) AxesOf(ArcPlane plane) => plane switch
    {
        ArcPlane.Xy => (0, 1, 2, 'I', 'J'),
        ArcPlane.Zx => (2, 0, 1, 'K', 'I'),
        _ => (1, 2, 0, 'J', 'K'),
    };

    private bool Arc(Block block, ReadOnlySpan<double> target, bool clockwise)
    {
        if (!state.TipIsKnown)
        {
            return findings.Refuse(
                block.Line, "place-unknown", "found an arc from a place of which the program has not said X, Y and Z.", "Let a rapid move to X, Y and Z come first.");
        }

        if (block.Has('P') && block['P'] != 1)
        {
            return findings.Refuse(block.Line, "word-not-read", "found P on an arc (more than one turn), which is not read.", "Post each turn on a line of its own.");
        }

        var axes = AxesOf(state.Plane);
        var (fromA, fromB, _) = Stretch.InPlane(state.Plane, state.Point);
        double toA = target[axes.A], toB = target[axes.B];
        var hasCentre = block.Has('I') || block.Has('J') || block.Has('K');
        if (hasCentre == block.Has('R'))
        {
            return findings.Refuse(
                block.Line, "arc-unclear", hasCentre ? "found an arc with R and with I, J or K." : "found an arc without R and without I, J or K.", "Give either the radius or the centre.");
        }

        if (hasCentre && !block.Has(axes.CentreA) && !block.Has(axes.CentreB))
        {
            return findings.Refuse(
                block.Line, "arc-unclear", $"found an arc whose centre is not given in its plane; expected {axes.CentreA} or {axes.CentreB}.", "Check G17, G18, G19.");
        }

        double centreA, centreB;
        if (hasCentre)
        {
            if (!Centre(block, axes, fromA, fromB, out centreA, out centreB) || !RadiiAgree(block, fromA - centreA, fromB - centreB, toA - centreA, toB - centreB))
            {
                return false;
            }
        }
        else if (!CentreOfRadius(block, clockwise, (fromA, fromB), (toA, toB), out centreA, out centreB))
        {
            return false;
        }

        var to = new TipPoint(target[0], target[1], target[2]);
        var arc = new Stretch(state.Point, to, StretchKind.Arc, state.Tool, block.Line)
        {
            Plane = state.Plane,
            CentreA = centreA,
            CentreB = centreB,
            TurnRad = TurnOf(fromA - centreA, fromB - centreB, toA - centreA, toB - centreB, clockwise),
        };
        return draft.ArcTo(arc, block);
    }

    private bool Centre(Block block, (int A, int B, int Normal, char CentreA, char CentreB) axes, double fromA, double fromB, out double a, out double b)
    {
        if (!state.CentresAreAbsolute)
        {
            (a, b) = (fromA + block[axes.CentreA] * state.UnitMm, fromB + block[axes.CentreB] * state.UnitMm);
            return true;
        }

        (a, b) = (state.Absolute(axes.A, block[axes.CentreA]), state.Absolute(axes.B, block[axes.CentreB]));
        return (block.Has(axes.CentreA) && block.Has(axes.CentreB)) || findings.Refuse(
            block.Line, "arc-unclear", $"found an arc in G90.1 without both {axes.CentreA} and {axes.CentreB}.", "Give both, or post with incremental centres (G91.1).");
    }

    private bool RadiiAgree(Block block, double fromA, double fromB, double toA, double toB)
    {
        double first = Math.Sqrt(fromA * fromA + fromB * fromB), last = Math.Sqrt(toA * toA + toB * toB);
        if (first < SamePointMm)
        {
            return findings.Refuse(block.Line, "arc-radius", "found an arc of radius 0.", "Check the centre (I, J, K).");
        }

        return Agree(block, first, last) || findings.Refuse(
            block.Line, "arc-radius",
            Text($"found an arc whose radius is {first:0.####} mm at its start and {last:0.####} mm at its end; they may differ by {AllowedMm:0.####} mm."),
            state.CentresAreAbsolute ? "Check that I, J, K are meant as absolute (G90.1)." : "Check that I, J, K are meant from the start of the arc (G91.1), or raise arcToleranceMm if the post rounds coarsely.");
    }

    // A hair of room, for differences of decimals that equal the tolerance.
    private bool Agree(Block block, double first, double last)
    {
        var off = Math.Abs(first - last);
        if (off <= AllowedMm + 1e-9)
        {
            return true;
        }

        if (options.ArcToleranceMm is not null || off > Math.Min(SpiralMm, SpiralShare * Math.Min(first, last)))
        {
            return false;
        }

        findings.Warn(
            block.Line, "arc-spiral", Text($"found an arc whose radius differs by up to {SpiralMm} mm between its start and its end; it is followed as a spiral."),
            "Nothing, where the post rounds coarsely; arcToleranceMm says what is allowed.");
        return true;
    }

    // The centre on that side of the chord on which an arc of at most half a turn (R > 0), or of more (R < 0), bends around it.
    private bool CentreOfRadius(Block block, bool clockwise, (double A, double B) from, (double A, double B) to, out double a, out double b)
    {
        var radius = block['R'] * state.UnitMm;
        double chordA = to.A - from.A, chordB = to.B - from.B;
        var chord = Math.Sqrt(chordA * chordA + chordB * chordB);
        (a, b) = ((from.A + to.A) / 2, (from.B + to.B) / 2);
        if (chord < SamePointMm)
        {
            return findings.Refuse(block.Line, "arc-unclear", "found an arc with R that ends where it begins; its centre could be anywhere.", "Give the centre with I, J, K for a full circle.");
        }

        var half = chord / 2;
        if (half > Math.Abs(radius) && !Agree(block, Math.Abs(radius), half))
        {
            return findings.Refuse(
                block.Line, "arc-radius", Text($"found an arc of radius {Math.Abs(radius):0.####} mm between points {chord:0.####} mm apart; it cannot reach."), "Check R and the end of the arc.");
        }

        var height = Math.Sqrt(Math.Max(0, radius * radius - half * half));
        var side = (radius > 0) == clockwise ? -1 : 1;
        a -= side * height * chordB / chord;
        b += side * height * chordA / chord;
        return true;
    }

    private static double TurnOf(double fromA, double fromB, double toA, double toB, bool clockwise)
    {
        const double Whole = 2 * Math.PI;
        if (Math.Abs(fromA - toA) < SamePointMm && Math.Abs(fromB - toB) < SamePointMm)
        {
            return clockwise ? -Whole : Whole;
        }

        var turn = Math.Atan2(fromA * toB - fromB * toA, fromA * toA + fromB * toB);
        return clockwise
            ? turn < 0 ? turn : turn - Whole
            : turn > 0 ? turn : turn + Whole;
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
