using System.Text;
using System.Xml;
using PodLayout.Geometry;

namespace PodLayout.Handover.Picture;

/// <summary>A sheet as SVG 1.1: X is the board's X, Y the board's Y with the sign turned, in millimetres.</summary>
public static class SvgWriter
{
    // Half the height of a capital in the usual sans-serif types.
    private const double HalfCapital = 0.36;

    private const string Fonts = "system-ui, 'Segoe UI', 'Helvetica Neue', Arial, 'DejaVu Sans', sans-serif";

    /// <summary>The SVG text, LF at line ends.</summary>
    public static string Write(Sheet sheet)
    {
        var text = new StringBuilder();
        var settings = new XmlWriterSettings { Indent = true, IndentChars = "  ", NewLineChars = "\n", OmitXmlDeclaration = true };
        using (var xml = XmlWriter.Create(text, settings))
        {
            WriteSheet(xml, sheet);
        }

        return text.Append('\n').ToString();
    }

    private static void WriteSheet(XmlWriter xml, Sheet sheet)
    {
        var e = sheet.Extent;
        xml.WriteStartElement("svg", "http://www.w3.org/2000/svg");
        xml.WriteAttributeString("width", Number(e.Width / sheet.Scale) + "mm");
        xml.WriteAttributeString("height", Number(e.Height / sheet.Scale) + "mm");
        xml.WriteAttributeString("viewBox", $"{Number(e.MinX)} {Number(-e.MaxY)} {Number(e.Width)} {Number(e.Height)}");
        xml.WriteAttributeString("role", "img");
        xml.WriteAttributeString("aria-labelledby", "podlayout-title podlayout-desc");
        xml.WriteStartElement("title");
        xml.WriteAttributeString("id", "podlayout-title");
        xml.WriteString(XmlText(sheet.Title));
        xml.WriteEndElement();
        xml.WriteStartElement("desc");
        xml.WriteAttributeString("id", "podlayout-desc");
        xml.WriteString(XmlText(sheet.Description));
        xml.WriteEndElement();
        xml.WriteElementString("style", Css(sheet));
        foreach (var layer in sheet.Layers.Where(l => !l.Primitives.IsEmpty))
        {
            xml.WriteStartElement("g");
            xml.WriteAttributeString("id", "podlayout-" + layer.Name);
            foreach (var primitive in layer.Primitives)
            {
                WritePrimitive(xml, primitive);
            }

            xml.WriteEndElement();
        }

        xml.WriteEndElement();
    }

    private static string Css(Sheet sheet)
    {
        var used = sheet.Layers.SelectMany(l => l.Primitives).Select(p => p.Style).ToHashSet(StringComparer.Ordinal);
        var css = new StringBuilder("\n    .pl-text { font-family: ").Append(Fonts).Append("; white-space: pre; }\n");
        foreach (var style in PictureStyles.All.Where(s => used.Contains(s.Name)))
        {
            css.Append("    .pl-").Append(style.Name).Append(" { fill: ").Append(style.Fill ?? "none").Append(';');
            if (style.Stroke is not null)
            {
                css.Append(" stroke: ").Append(style.Stroke).Append("; stroke-width: ")
                    .Append(Number(style.WidthMm * sheet.Scale)).Append("; stroke-linejoin: round;");
            }

            if (!style.DashMm.IsEmpty)
            {
                css.Append(" stroke-dasharray: ").AppendJoin(' ', style.DashMm.Select(d => Number(d * sheet.Scale))).Append(';');
            }

            css.Append(style.IsBold ? " font-weight: bold; }\n" : " }\n");
        }

        return css.Append("  ").ToString();
    }

    private static void WritePrimitive(XmlWriter xml, Primitive primitive)
    {
        switch (primitive)
        {
            case Primitive.Line line:
                Path(xml, line.Style, "M" + string.Join('L', line.Points.Select(Pair)));
                break;
            case Primitive.Strokes strokes:
                Path(xml, strokes.Style, StrokesData(strokes.Ends));
                break;
            case Primitive.Hatch hatch:
                Path(xml, hatch.Style, StrokesData(HatchLines.Of(hatch)));
                break;
            case Primitive.Area area:
                Path(xml, area.Style, string.Concat(area.Rings.Select(r => "M" + string.Join('L', r.Points.Select(Pair)) + "Z")));
                break;
            case Primitive.Disc disc:
                xml.WriteStartElement("circle");
                xml.WriteAttributeString("class", "pl-" + disc.Style);
                Centre(xml, disc.Centre);
                xml.WriteAttributeString("r", Number(disc.RadiusMm));
                xml.WriteEndElement();
                break;
            case Primitive.Ellipse ellipse:
                xml.WriteStartElement("ellipse");
                xml.WriteAttributeString("class", "pl-" + ellipse.Style);
                Centre(xml, ellipse.Centre);
                xml.WriteAttributeString("rx", Number(ellipse.HalfAxisMm));
                xml.WriteAttributeString("ry", Number(ellipse.OtherHalfAxisMm));
                Turned(xml, ellipse.AngleDeg, ellipse.Centre);
                xml.WriteEndElement();
                break;
            case Primitive.Text text:
                WriteText(xml, text);
                break;
            default:
                throw new ArgumentOutOfRangeException(nameof(primitive), primitive, "Unknown primitive.");
        }
    }

    private static void WriteText(XmlWriter xml, Primitive.Text text)
    {
        var baseline = text.At - Turn.FromDegrees(text.AngleDeg).Apply(new(0, HalfCapital * text.SizeMm));
        xml.WriteStartElement("text");
        xml.WriteAttributeString("class", "pl-text pl-" + text.Style);
        xml.WriteAttributeString("x", Number(baseline.X));
        xml.WriteAttributeString("y", Number(-baseline.Y));
        xml.WriteAttributeString("font-size", Number(text.SizeMm));
        if (text.Anchor != TextAnchor.Start)
        {
            xml.WriteAttributeString("text-anchor", text.Anchor == TextAnchor.Middle ? "middle" : "end");
        }

        Turned(xml, text.AngleDeg, baseline);
        xml.WriteString(XmlText(text.Words));
        xml.WriteEndElement();
    }

    private static void Path(XmlWriter xml, string style, string data)
    {
        if (data.Length == 0)
        {
            return;
        }

        xml.WriteStartElement("path");
        xml.WriteAttributeString("class", "pl-" + style);
        xml.WriteAttributeString("fill-rule", "evenodd");
        xml.WriteAttributeString("d", data);
        xml.WriteEndElement();
    }

    private static string StrokesData(IReadOnlyList<Point2> ends) => string.Concat(
        Enumerable.Range(0, ends.Count / 2).Select(i => $"M{Pair(ends[2 * i])}L{Pair(ends[2 * i + 1])}"));

    private static void Centre(XmlWriter xml, Point2 centre)
    {
        xml.WriteAttributeString("cx", Number(centre.X));
        xml.WriteAttributeString("cy", Number(-centre.Y));
    }

    private static void Turned(XmlWriter xml, double angleDeg, Point2 about)
    {
        if (angleDeg != 0)
        {
            xml.WriteAttributeString("transform", $"rotate({Number(-angleDeg)} {Number(about.X)} {Number(-about.Y)})");
        }
    }

    // Characters that XML cannot hold, and controls that would break the line, become a blank.
    private static string XmlText(string text)
    {
        var clean = new StringBuilder(text.Length);
        foreach (var rune in text.EnumerateRunes())
        {
            var allowed = !Rune.IsControl(rune) && rune.Value is not (0xFFFE or 0xFFFF);
            clean.Append(allowed ? rune.ToString() : " ");
        }

        return clean.ToString();
    }

    private static string Pair(Point2 p) => $"{Number(p.X)} {Number(-p.Y)}";

    private static string Number(double value) => CsvText.Mm(value);
}
