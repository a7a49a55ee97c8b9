using System.Xml.Linq;
using PodLayout.Reading.Curves;

namespace PodLayout.Reading.Svg;

/// <summary>Turns an element into subpaths (SVG 2, section 10: each basic shape is a path).</summary>
internal sealed class SvgShapes(double? width, double? height, DrawingFindings findings)
{
    public List<SvgSubpath> Read(XElement element, int? line) => element.Name.LocalName switch
    {
        "path" => Path(element, line),
        "rect" => Rectangle(element),
        "circle" => Ellipse(element, Length(element, "r", 0), Length(element, "r", 0)),
        "ellipse" => Ellipse(element, Length(element, "rx", 0), Length(element, "ry", 0)),
        "line" => [Polyline([new(Length(element, "x1", 0), Length(element, "y1", 0), 0), new(Length(element, "x2", 0), Length(element, "y2", 0), 0)], false)],
        var name => Points(element, name == "polygon", line),
    };

    /// <summary>A length of the element in user units; a length that cannot be read refuses the drawing.</summary>
    public double Length(XElement element, string name, double otherwise)
    {
        if (element.Attribute(name) is not { } attribute || attribute.Value.Trim() is "auto" or "")
            return otherwise;
        var whole = name switch
        {
            "x" or "x1" or "x2" or "cx" or "width" or "rx" => width,
            "y" or "y1" or "y2" or "cy" or "height" or "ry" => height,
            _ => width is { } w && height is { } h ? Math.Sqrt((w * w + h * h) / 2) : null,
        };
        if (SvgLength.InPx(attribute.Value, whole) is { } length)
            return length;
        findings.Refuse(
            "svg-number", $"Found {name}=\"{attribute.Value}\" in {element.Name.LocalName}, where a finite number or length was expected.",
            "Mend the element in the drawing program.", ((System.Xml.IXmlLineInfo)element).LineNumber);
        return 0;
    }

    /// <summary>The map inside a nested svg or a symbol: its place, and its viewBox if it has one.</summary>
    public Affine3 Nested(XElement element, XElement sized, bool moved = false)
    {
        var place = moved ? Affine3.Identity : Affine3.Move(new(Length(element, "x", 0), Length(element, "y", 0), 0));
        if (SvgReader.ViewBox(element) is not { } box)
            return place;
        var w = Length(sized, "width", Length(element, "width", width ?? box[2]));
        var h = Length(sized, "height", Length(element, "height", height ?? box[3]));
        return place.After(SvgViewport.Fit(box, w, h, element.Attribute("preserveAspectRatio")?.Value ?? ""));
    }

    private List<SvgSubpath> Path(XElement element, int? line)
    {
        var (subpaths, error) = SvgPathData.Read(element.Attribute("d")?.Value ?? "");
        if (error is not null)
            findings.Refuse("svg-path", $"The path's data are damaged: {error}.", "Draw or export the path again.", line);
        return subpaths;
    }

    private static SvgSubpath Polyline(IReadOnlyList<Point3> points, bool closed)
    {
        var subpath = new SvgSubpath(points[0]);
        foreach (var p in points.Skip(1))
            subpath.AddLine(p);
        if (closed)
            subpath.Close();
        return subpath;
    }

    private List<SvgSubpath> Points(XElement element, bool closed, int? line)
    {
        var text = element.Attribute("points")?.Value ?? "";
        if (SvgTransform.Numbers(text) is not { } n || n.Length % 2 != 0)
        {
            findings.Refuse("svg-number", $"The points of a {element.Name.LocalName} are no even list of numbers.", "Mend the element in the drawing program.", line);
            return [];
        }

        return n.Length == 0 ? [] : [Polyline([.. n.Chunk(2).Select(p => new Point3(p[0], p[1], 0))], closed)];
    }

    private List<SvgSubpath> Ellipse(XElement element, double rx, double ry)
    {
        if (!(rx > 0) || !(ry > 0))
            return [];
        double cx = Length(element, "cx", 0), cy = Length(element, "cy", 0);
        var arc = new EllipticArc(new(cx, cy, 0), new(rx, 0, 0), new(0, ry, 0), 0, Math.PI);
        var subpath = new SvgSubpath(new(cx + rx, cy, 0));
        subpath.Add(arc, new(cx - rx, cy, 0));
        subpath.Add(arc with { From = Math.PI, To = Math.Tau }, new(cx + rx, cy, 0));
        subpath.Close();
        return [subpath];
    }

    private List<SvgSubpath> Rectangle(XElement element)
    {
        double x = Length(element, "x", 0), y = Length(element, "y", 0), w = Length(element, "width", 0), h = Length(element, "height", 0);
        if (!(w > 0) || !(h > 0))
            return [];
        double rx = Length(element, "rx", -1), ry = Length(element, "ry", -1);
        rx = Math.Min(rx < 0 ? Math.Max(ry, 0) : rx, w / 2);
        ry = Math.Min(ry < 0 ? Math.Max(Length(element, "rx", 0), 0) : ry, h / 2);
        if (rx == 0 || ry == 0)
            return [Polyline([new(x, y, 0), new(x + w, y, 0), new(x + w, y + h, 0), new(x, y + h, 0)], true)];
        var subpath = new SvgSubpath(new(x + rx, y, 0));
        void Corner(double cx, double cy, double quarter, Point3 to) => subpath.Add(
            new EllipticArc(new(cx, cy, 0), new(rx, 0, 0), new(0, ry, 0), quarter * Math.PI / 2, (quarter + 1) * Math.PI / 2), to);
        subpath.AddLine(new(x + w - rx, y, 0));
        Corner(x + w - rx, y + ry, -1, new(x + w, y + ry, 0));
        subpath.AddLine(new(x + w, y + h - ry, 0));
        Corner(x + w - rx, y + h - ry, 0, new(x + w - rx, y + h, 0));
        subpath.AddLine(new(x + rx, y + h, 0));
        Corner(x + rx, y + h - ry, 1, new(x, y + h - ry, 0));
        subpath.AddLine(new(x, y + ry, 0));
        Corner(x + rx, y + ry, 2, new(x + rx, y, 0));
        subpath.Close();
        return [subpath];
    }
}
