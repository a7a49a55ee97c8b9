using PodLayout.Reading.Curves;

namespace PodLayout.Reading.Dxf;

/// <summary>Turns one entity into chords.</summary>
internal sealed class DxfCurves(double toleranceMm, DrawingFindings findings)
{
    /// <summary>A side shorter than this may be taken as straight whatever arc it was, mm: a tenth of what chords are off.</summary>
    private const double LongestUnbentMm = 0.001;

    private readonly NumberReader _numbers = new(findings);

    public NumberReader Numbers => _numbers;

    /// <summary>Whether the kind is a line or curve that can be the edge of a part.</summary>
    public static bool Draws(string kind) =>
        kind is "LINE" or "ARC" or "CIRCLE" or "ELLIPSE" or "LWPOLYLINE" or "POLYLINE" or "SPLINE";

    /// <summary>The entity's chords after the map to millimetres; null when it was left out, with a finding.</summary>
    public Chain? Read(DxfEntity entity, Affine3 toMm) => entity.Kind switch
    {
        "LINE" => new([toMm.Apply(_numbers.Point(entity, 10)), toMm.Apply(_numbers.Point(entity, 11))], false),
        "ARC" or "CIRCLE" => ReadCircular(entity, toMm),
        "ELLIPSE" => ReadEllipse(entity, toMm),
        "LWPOLYLINE" => ReadLightPolyline(entity, toMm),
        "POLYLINE" => ReadPolyline(entity, toMm),
        _ => ReadSpline(entity, toMm),
    };

    private Chain Chords(EllipticArc arc, Affine3 map)
    {
        var mapped = arc.Mapped(map);
        var excess = new CurveExcess();
        mapped.AddExcess(toleranceMm, excess);
        return new([.. mapped.Chords(toleranceMm)], mapped.IsWhole) { RadiusMm = mapped.LargestRadius(), Excess = excess };
    }

    private Chain? ReadCircular(DxfEntity entity, Affine3 toMm)
    {
        var radius = _numbers.Number(entity, 40, 0);
        if (!(radius > 0))
        {
            findings.Warn("dxf-radius", $"{entity.Name} has a radius of {Text(radius)}; it was left out.", "Delete it, or give it a radius.", entity.Line);
            return null;
        }

        var map = toMm.After(Affine3.FromExtrusion(_numbers.Extrusion(entity)));
        var circle = EllipticArc.Circle(_numbers.Point(entity, 10), radius);
        if (entity.Kind == "CIRCLE")
            return Chords(circle, map);
        double from = _numbers.Number(entity, 50, 0), to = _numbers.Number(entity, 51, 360);
        if (Math.Abs(from) > 1e6 || Math.Abs(to) > 1e6)
        {
            findings.Refuse("dxf-angle", $"{entity.Name} runs from {Text(from)} to {Text(to)} degrees.", "Mend the arc in the drawing program.", entity.Line);
            return null;
        }

        const double degree = Math.PI / 180;
        var start = from % 360 * degree;
        return Span(entity, start, start + (to - from) * degree, radius * toMm.X.Length) is { } span
            ? Chords(circle with { From = start, To = start + span }, map) : null;
    }

    /// <summary>How far an arc runs, with what is to be said about it; null with a refusal where it may mean two things.</summary>
    private double? Span(DxfEntity entity, double from, double to, double radiusMm)
    {
        var span = Turns.Between(from, to, radiusMm);
        var inDegrees = entity.Kind == "ARC";
        var unit = inDegrees ? 180 / Math.PI : 1;
        var ends = string.Create(
            System.Globalization.CultureInfo.InvariantCulture, $"{entity.Name} runs from {from * unit:0.#########} to {to * unit:0.#########} {(inDegrees ? "degrees" : "radians")}");
        switch (span.Reading)
        {
            case AngleReading.Doubtful:
                findings.Refuse("dxf-angle", $"{ends}, a whole turn and a little more: either may be meant.", "Draw it as a whole circle or ellipse, or as the short arc.", entity.Line);
                return null;
            case AngleReading.EqualEnds:
                findings.Warn("dxf-arc-whole", $"{ends}; it was taken for the whole {(inDegrees ? "circle" : "ellipse")}.", "Delete it if it is not meant, or draw it as a circle.", entity.Line);
                break;
            case AngleReading.NearlyWhole:
                findings.Mended("dxf-arc-whole", $"{ends}, nearly a whole turn; it was taken for the whole {(inDegrees ? "circle" : "ellipse")}.", entity.Line);
                break;
        }

        return span.Radians;
    }

    private Chain? ReadEllipse(DxfEntity entity, Affine3 toMm)
    {
        var major = _numbers.Point(entity, 11);
        var extrusion = _numbers.Extrusion(entity);
        var ratio = _numbers.Number(entity, 40, 1);
        if (!(major.Length > 0) || ratio == 0 || !(extrusion.Length > 0))
        {
            findings.Warn("dxf-radius", $"{entity.Name} has an axis of length 0; it was left out.", "Delete it, or give it a size.", entity.Line);
            return null;
        }

        var minor = (extrusion * (1 / extrusion.Length)).Cross(major) * ratio;
        double from = _numbers.Number(entity, 41, 0), to = _numbers.Number(entity, 42, Math.Tau);
        if (Math.Abs(from) > 1e4 || Math.Abs(to) > 1e4)
        {
            findings.Refuse("dxf-angle", $"{entity.Name} runs from {Text(from)} to {Text(to)} radians.", "Mend the ellipse in the drawing program.", entity.Line);
            return null;
        }

        return Span(entity, from, to, Math.Max(major.Length, minor.Length) * toMm.X.Length) is { } span
            ? Chords(new(_numbers.Point(entity, 10), major, minor, from, from + span), toMm) : null;
    }

    private Chain? ReadLightPolyline(DxfEntity entity, Affine3 toMm)
    {
        var elevation = _numbers.Number(entity, 38, 0);
        var vertices = new List<(Point3 P, double Bulge)>();
        foreach (var tag in entity.Tags)
        {
            if (tag.Code == 10)
                vertices.Add((new(_numbers.Number(tag, entity), 0, elevation), 0));
            else if (vertices.Count > 0 && tag.Code == 20)
                vertices[^1] = (vertices[^1].P with { Y = _numbers.Number(tag, entity) }, vertices[^1].Bulge);
            else if (vertices.Count > 0 && tag.Code == 42)
                vertices[^1] = (vertices[^1].P, _numbers.Bulge(tag, entity));
        }

        return Polyline(entity, vertices, (entity.Integer(70, 0) & 1) != 0, toMm.After(Affine3.FromExtrusion(_numbers.Extrusion(entity))));
    }

    private Chain? ReadPolyline(DxfEntity entity, Affine3 toMm)
    {
        var flags = entity.Integer(70, 0);
        if ((flags & (16 | 64)) != 0)
        {
            findings.Note("dxf-mesh", $"{entity.Name} is a mesh, not a line; it was left out.", entity.Line);
            return null;
        }

        var inSpace = (flags & 8) != 0;
        var elevation = _numbers.Number(entity, 30, 0);
        var all = entity.Parts.Where(v => v.Kind == "VERTEX").ToList();
        var frame = all.Count(v => (v.Integer(70, 0) & 16) != 0);
        if (frame > 0 && frame < all.Count)
        {
            findings.Note("dxf-frame-vertex", $"{entity.Name}: {frame} vertices of the spline's frame are not on the curve and were left out.", entity.Line);
            all.RemoveAll(v => (v.Integer(70, 0) & 16) != 0);
        }

        var vertices = all.ConvertAll(v =>
        {
            var p = _numbers.Point(v, 10);
            return (inSpace ? p : p with { Z = elevation }, inSpace ? 0 : v.Tags.Where(t => t.Code == 42).Select(t => _numbers.Bulge(t, v)).FirstOrDefault());
        });
        var map = inSpace ? toMm : toMm.After(Affine3.FromExtrusion(_numbers.Extrusion(entity)));
        return Polyline(entity, vertices, (flags & 1) != 0, map);
    }

    private Chain? Polyline(DxfEntity entity, List<(Point3 P, double Bulge)> vertices, bool closed, Affine3 map)
    {
        if (vertices.Count == 0)
        {
            findings.Warn("dxf-no-vertex", $"{entity.Name} has no vertices; it was left out.", null, entity.Line);
            return null;
        }

        var points = new List<Point3>();
        var excess = new CurveExcess();
        var sides = closed ? vertices.Count : vertices.Count - 1;
        for (var i = 0; i < vertices.Count; i++)
        {
            points.Add(map.Apply(vertices[i].P));
            var next = vertices[(i + 1) % vertices.Count].P;
            if (i >= sides || vertices[i].Bulge == 0 || !((next - vertices[i].P).Length > 0))
                continue;
            if (!double.IsFinite(vertices[i].Bulge))
            {
                TellBulge(entity, points[^1], map.Apply(next));
                continue;
            }

            // The ends are the vertices themselves, free of the arc's rounding.
            var arc = Bulge.Arc(vertices[i].P, next, vertices[i].Bulge).Mapped(map);
            points.AddRange(arc.InnerChords(toleranceMm));
            arc.AddExcess(toleranceMm, excess);
        }

        return new(points, closed) { Excess = excess };
    }

    private void TellBulge(DxfEntity entity, Point3 from, Point3 to)
    {
        var sideMm = (to - from).Length;
        var what = string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{entity.Name} has a bulge that is no number");
        if (sideMm <= LongestUnbentMm)
            findings.AddAt(Findings.Severity.Mended, "dxf-bulge", string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{what}, on a side of {sideMm:0.######} mm; the side was taken as straight."), new(from.X, from.Y));
        else
            findings.AddAt(Findings.Severity.Refused, "dxf-not-finite", string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{what}, on a side of {sideMm:0.###} mm."), new(from.X, from.Y), "Draw the side anew in the drawing program.");
    }

    private Chain? ReadSpline(DxfEntity entity, Affine3 toMm)
    {
        var controls = _numbers.Points(entity, 10);
        var fit = _numbers.Points(entity, 11);
        var flags = entity.Integer(70, 0);
        if (controls.Count == 0 && fit.Count > 1)
        {
            findings.Note("dxf-fit-points", $"{entity.Name} holds fit points only; a smooth cubic was laid through its {fit.Count} points.", entity.Line);
            var through = FitSpline.Through(
                [.. fit.Select(toMm.Apply)],
                entity.Has(12) ? toMm.Turn(_numbers.Point(entity, 12)) : null,
                entity.Has(13) ? toMm.Turn(_numbers.Point(entity, 13)) : null,
                (flags & 1) != 0);
            var beyond = new CurveExcess();
            return new(through.Chords(toleranceMm, beyond), false) { Excess = beyond };
        }

        var degree = entity.Integer(71, 3);
        var knots = _numbers.Numbers(entity, 40);
        var weights = _numbers.Numbers(entity, 41);
        if (Trouble(degree, knots, controls.Count, weights) is { } trouble)
        {
            findings.Refuse("dxf-spline", $"{entity.Name}: {trouble}.", "Draw the spline anew, or export it as polyline or arcs.", entity.Line);
            return null;
        }

        if (knots.Count == 0)
        {
            findings.Mended("dxf-spline-knots", $"{entity.Name} has no knots; even knots were put in.", entity.Line);
            knots = EvenKnots(degree, controls.Count);
        }

        var spline = new SplineCurve(degree, [.. knots], [.. controls], weights.Count == 0 ? [] : [.. weights]).Mapped(toMm);
        var excess = new CurveExcess();
        return new(spline.Chords(toleranceMm, excess), false) { Excess = excess };
    }

    private static string? Trouble(int degree, List<double> knots, int controls, List<double> weights)
    {
        if (degree is < 1 or > 25)
            return $"degree {degree}, expected 1 to 25";
        if (controls <= degree)
            return $"{controls} control points, expected at least {degree + 1} for degree {degree}";
        if (knots.Count > 0 && knots.Count != controls + degree + 1)
            return $"{knots.Count} knots, expected {controls + degree + 1} (control points + degree + 1)";
        for (var i = 1; i < knots.Count; i++)
        {
            if (knots[i] < knots[i - 1])
                return $"knot {i + 1} is smaller than the one before it";
        }

        if (knots.Count > 0 && !(knots[controls] > knots[degree]))
            return "all knots are equal";
        if (weights.Count > 0 && weights.Count != controls)
            return $"{weights.Count} weights for {controls} control points";
        return weights.Exists(w => !(w > 0)) ? "a weight is not greater than 0" : null;
    }

    private static List<double> EvenKnots(int degree, int controls) =>
        [.. Enumerable.Range(0, controls + degree + 1).Select(i => (double)Math.Clamp(i - degree, 0, controls - degree))];

    private static string Text(double number) => number.ToString(System.Globalization.CultureInfo.InvariantCulture);
}
