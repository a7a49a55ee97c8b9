using PodLayout.Reading.Curves;

namespace PodLayout.Reading.Svg;

/// <summary>Lines and curves drawn without lifting the pen.</summary>
internal sealed class SvgSubpath(Point3 start)
{
    private readonly List<(object? Curve, Point3 To)> _pieces = [];

    public bool IsClosed { get; private set; }

    /// <summary>A move with nothing drawn after it.</summary>
    public bool IsEmpty => _pieces.Count == 0;

    public void AddLine(Point3 to) => _pieces.Add((null, to));

    public void Add(EllipticArc arc, Point3 to) => _pieces.Add((arc, to));

    public void Add(SplineCurve curve, Point3 to) => _pieces.Add((curve, to));

    public void Close() => IsClosed = true;

    /// <summary>The subpath's chords after a map to millimetres; the ends of curves are exactly the points written.</summary>
    public Chain Chords(Affine3 toMm, double toleranceMm)
    {
        var points = new List<Point3> { toMm.Apply(start) };
        var excess = new CurveExcess();
        foreach (var (curve, to) in _pieces)
        {
            if (curve is EllipticArc arc)
            {
                points.AddRange(arc.Mapped(toMm).InnerChords(toleranceMm));
                arc.Mapped(toMm).AddExcess(toleranceMm, excess);
            }
            else if (curve is SplineCurve spline)
            {
                points.AddRange(spline.Mapped(toMm).Chords(toleranceMm, excess).Skip(1).SkipLast(1));
            }

            points.Add(toMm.Apply(to));
        }

        return new(points, IsClosed) { Excess = excess };
    }
}
