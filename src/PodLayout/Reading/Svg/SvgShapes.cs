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

    /// <summary>
    /// The inside of a nested svg or a symbol (SVG 2, sections 5.5 and 8.2): its place and viewBox, what is cut off at its edge, and
    /// what percentages inside refer to; null when it has no size and is not drawn.
    /// </summary>
    /// <param name="context">What holds around it.</param>
    /// <param name="element">The svg or symbol.</param>
    /// <param name="use">The use that draws it; null when it stands where it is.</param>
    /// <param name="isOpen">Whether what reaches beyond its edge is seen.</param>
    public SvgContext? Nested(SvgContext context, XElement element, XElement? use, bool isOpen)
    {
        double? w = Size("width", width), h = Size("height", height);
        if (w is <= 0 || h is <= 0)
            return null;
        var isSymbol = element.Name.LocalName == "symbol";
        var map = context.ToMm.After(Affine3.Move(isSymbol && use is not null ? default : new(Length(element, "x", 0), Length(element, "y", 0), 0)));
        var clips = context.Clips;
        if (!isOpen && w is { } cw && h is { } ch && SvgClip.Of($"the edge of a nested {element.Name.LocalName}", map, 0, 0, cw, ch) is { } clip)
            clips = clips.Add(clip);
        var box = SvgReader.ViewBox(element);
        if (box is not null && (w ?? box[2]) is var fitW && (h ?? box[3]) is var fitH)
            map = map.After(SvgViewport.Fit(box, fitW, fitH, element.Attribute("preserveAspectRatio")?.Value ?? ""));
        return context with { ToMm = map, Clips = clips, Shapes = new(box?[2] ?? w, box?[3] ?? h, findings) };

        double? Size(string name, double? whole)
        {
            var sized = use?.Attribute(name) is not null ? use : element;
            return sized.Attribute(name) is null || sized.Attribute(name)!.Value.Trim() == "auto" ? whole : Length(sized, name, 0);
        }
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
