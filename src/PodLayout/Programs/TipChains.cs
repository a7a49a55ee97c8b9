using PodLayout.Geometry;

namespace PodLayout.Programs;

/// <summary>Cuts a path at a height and joins what lies below into lines in X and Y.</summary>
internal sealed class TipChains(ProgramSetting setting)
{
    // Chords of arcs leave them by at most this, mm, and turn by at most this, radians: between chords that turn little the
    // polygon engine makes no arc, and what that misses grows with the square of the turn.
    private const double ArcMm = 0.0002;
    private const double ArcTurnRad = 0.0125;

    // Tools that narrow towards the tip sweep less where they are less deep; their radius is rounded up to this share.
    private const double RadiusSteps = 32;

    private const double SamePointMm = 1e-9;

    private readonly double _limitZ = setting.UndersideZMm + setting.LowestTipMm;
    private TipChain? _open;

    public List<TipChain> Chains { get; } = [];

    /// <summary>What comes next begins a line of its own.</summary>
    public void Break() => _open = null;

    /// <summary>Adds one move; whether any of it lies below the height.</summary>
    public bool Add(in Stretch stretch, Tool tool)
    {
        if (stretch.TurnRad == 0 || stretch.Plane == ArcPlane.Xy)
        {
            return AddPiece(stretch, tool);
        }

        // An upright arc: chords, lowered by what the arc may hang below them.
        var steps = Steps(stretch.TurnRad, stretch.RadiusMm, out var sag);
        var any = false;
        for (var i = 0; i < steps; i++)
        {
            TipPoint a = stretch.At((double)i / steps), b = stretch.At((double)(i + 1) / steps);
            any |= AddPiece(
                new Stretch(a with { ZMm = a.ZMm - sag }, b with { ZMm = b.ZMm - sag }, StretchKind.Line, stretch.ToolNumber, stretch.Line), tool);
        }

        return any;
    }

    private static int Steps(double turnRad, double radius, out double sag)
    {
        var mostTurn = radius <= ArcMm ? ArcTurnRad : Math.Min(ArcTurnRad, 2 * Math.Acos(1 - ArcMm / radius));
        var steps = Math.Max(1, (int)Math.Ceiling(Math.Abs(turnRad) / mostTurn));
        sag = radius * (1 - Math.Cos(turnRad / steps / 2));
        return steps;
    }

    // Height runs evenly along a line, and along a helix about Z.
    private bool AddPiece(in Stretch stretch, Tool tool)
    {
        double from = stretch.From.ZMm - _limitZ, to = stretch.To.ZMm - _limitZ;
        if (from >= 0 && to >= 0)
        {
            _open = null;
            return false;
        }

        var first = from < 0 ? 0 : from / (from - to);
        var last = to < 0 ? 1 : from / (from - to);
        var depth = -Math.Min(from, to);
        var radius = RadiusAt(tool, depth);
        if (radius <= 0)
        {
            _open = null;
            return false;
        }

        if (first == 0 && last == 1 && Math.Abs(stretch.TurnRad) > 2 * Math.PI - 1e-9)
        {
            return AddCircle(stretch, radius);
        }

        var start = stretch.At(first);
        var at = InDrawing(start);
        if (first > 0 || _open is null || _open.ToolNumber != tool.Number || _open.RadiusMm != radius || (_open.Points[^1] - at).Length > SamePointMm)
        {
            _open = new(tool.Number, radius);
            _open.Points.Add(at);
            Chains.Add(_open);
        }

        Follow(stretch, first, last);
        _open = last < 1 ? null : _open;
        return true;
    }

    private bool AddCircle(in Stretch stretch, double radius)
    {
        var centre = new Point2(stretch.CentreA, stretch.CentreB) + setting.Offset;
        TipPoint from = stretch.From, to = stretch.To;
        var drift = Math.Abs((centre - InDrawing(from)).Length - (centre - InDrawing(to)).Length);
        TipChain circle = new(stretch.ToolNumber, radius) { CircleMm = stretch.RadiusMm, DeviationMm = drift };
        circle.Points.Add(centre);
        Chains.Add(circle);
        _open = null;
        return true;
    }

    private void Follow(in Stretch stretch, double first, double last)
    {
        var steps = 1;
        if (stretch.TurnRad != 0)
        {
            steps = Steps(stretch.TurnRad * (last - first), stretch.RadiusMm, out var sag);
            // The radius may drift by the reader's tolerance; a hundredth more covers what that adds to a chord's sagitta.
            _open!.DeviationMm = Math.Max(_open.DeviationMm, sag * 1.01);
        }

        for (var i = 1; i <= steps; i++)
        {
            var at = InDrawing(stretch.At(first + (last - first) * i / steps));
            if ((_open!.Points[^1] - at).Length > SamePointMm)
            {
                _open.Points.Add(at);
            }
        }
    }

    private static double RadiusAt(Tool tool, double depth)
    {
        var full = tool.DiameterMm / 2;
        return tool.Form is CutterForm.Flat
            ? full : Math.Min(full, Math.Ceiling(tool.RadiusUpTo(depth) / full * RadiusSteps) / RadiusSteps * full);
    }

    private Point2 InDrawing(TipPoint p) => new Point2(p.XMm, p.YMm) + setting.Offset;
}
