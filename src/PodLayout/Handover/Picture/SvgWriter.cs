using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using System.Xml;
using PodLayout.Findings;
using PodLayout.Geometry;

namespace PodLayout.Handover.Picture;

/// <summary>A sheet as SVG 1.1: X is the board's X, Y the board's Y with the sign turned, in millimetres.</summary>
public static class SvgWriter
{
    // Half the height of a capital in the usual sans-serif types.
    private const double HalfCapital = 0.36;

    // All text has it beside the class of its style; no style may be called so, or its colour would be everyone's.
    private const string TypeClass = "pl-type";

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

    /// <summary>
    /// The same as a part of a page: no size of its own, no looks (the page brings those of <see cref="Css"/>), and each thing that
    /// belongs to something says to what, as <c>data-of</c>.
    /// </summary>
    /// <param name="sheet">The sheet.</param>
    /// <param name="id">Word that the page's identifiers begin with, so that several pictures can stand on it.</param>
    public static string WriteInPage(Sheet sheet, string id)
    {
        var text = new StringBuilder();
        var settings = new XmlWriterSettings { NewLineChars = "\n", OmitXmlDeclaration = true, ConformanceLevel = ConformanceLevel.Fragment };
        using (var xml = XmlWriter.Create(text, settings))
        {
            Begin(xml, sheet, id);
            Layers(xml, sheet, id, isInPage: true);
            xml.WriteEndElement();
        }

        return text.ToString();
    }

    /// <summary>The looks of the styles that a sheet uses.</summary>
    /// <param name="sheet">The sheet.</param>
    /// <param name="scope">What the rules are limited to, as CSS selects it, with a blank after it; empty for the whole page.</param>
    /// <param name="colour">What stands for a colour; null for the colour itself.</param>
    public static string CssInPage(Sheet sheet, string scope, Func<string, string> colour) => Css(sheet, scope, colour);

    private static void WriteSheet(XmlWriter xml, Sheet sheet)
    {
        var e = sheet.Extent;
        const string id = "podlayout-";
        Begin(xml, sheet, id, () =>
        {
            xml.WriteAttributeString("width", Number(e.Width / sheet.Scale) + "mm");
            xml.WriteAttributeString("height", Number(e.Height / sheet.Scale) + "mm");
        });
        if (sheet.Mark.Length > 0)
        {
            xml.WriteElementString("metadata", sheet.Mark);
        }

        xml.WriteElementString("style", Css(sheet, "", c => c));
        Layers(xml, sheet, id, isInPage: false);
        xml.WriteEndElement();
    }

    private static void Begin(XmlWriter xml, Sheet sheet, string id, Action? size = null)
    {
        var e = sheet.Extent;
        xml.WriteStartElement("svg", "http://www.w3.org/2000/svg");
        size?.Invoke();
        xml.WriteAttributeString("viewBox", $"{Number(e.MinX)} {Number(-e.MaxY)} {Number(e.Width)} {Number(e.Height)}");
        xml.WriteAttributeString("fill-rule", "evenodd");
        xml.WriteAttributeString("role", "img");
        xml.WriteAttributeString("aria-labelledby", $"{id}title {id}desc");
        xml.WriteStartElement("title");
        xml.WriteAttributeString("id", id + "title");
        xml.WriteString(XmlText(sheet.Title));
        xml.WriteEndElement();
        xml.WriteStartElement("desc");
        xml.WriteAttributeString("id", id + "desc");
        xml.WriteString(XmlText(sheet.Description));
        xml.WriteEndElement();
    }

    private static void Layers(XmlWriter xml, Sheet sheet, string id, bool isInPage)
    {
        foreach (var layer in sheet.Layers.Where(l => !l.Primitives.IsEmpty))
        {
            xml.WriteStartElement("g");
            xml.WriteAttributeString("id", id + layer.Name);
            WritePrimitives(xml, layer.Primitives, isInPage ? id + layer.Name : null);
            xml.WriteEndElement();
        }
    }

    // A board has thousands of ports: what discs of one style share is written once, and in a page the disc itself. Programs that cut
    // or engrave read circles, not every one markers.
    private static void WritePrimitives(XmlWriter xml, ImmutableArray<Primitive> primitives, string? markerId)
    {
        for (var first = 0; first < primitives.Length;)
        {
            var end = first;
            while (end < primitives.Length && primitives[end] is Primitive.Disc { Of: null } disc && disc.Style == primitives[first].Style)
            {
                end++;
            }

            if (end <= first + 1)
            {
                WritePrimitive(xml, primitives[first]);
                first++;
                continue;
            }

            ImmutableArray<Primitive.Disc> discs = [.. primitives[first..end].OfType<Primitive.Disc>()];
            if (markerId is not null && discs.All(d => d.RadiusMm == discs[0].RadiusMm))
            {
                Marked(xml, discs, string.Create(CultureInfo.InvariantCulture, $"{markerId}-{first}"));
            }
            else
            {
                xml.WriteStartElement("g");
                xml.WriteAttributeString("class", "pl-" + discs[0].Style);
                foreach (var one in discs)
                {
                    xml.WriteStartElement("circle");
                    Circle(xml, one);
                    xml.WriteEndElement();
                }

                xml.WriteEndElement();
            }

            first = end;
        }
    }

    // One disc, at each corner of a line that is not drawn.
    private static void Marked(XmlWriter xml, ImmutableArray<Primitive.Disc> discs, string id)
    {
        xml.WriteStartElement("marker");
        xml.WriteAttributeString("id", id);
        xml.WriteAttributeString("markerUnits", "userSpaceOnUse");
        xml.WriteAttributeString("overflow", "visible");
        xml.WriteStartElement("circle");
        xml.WriteAttributeString("class", "pl-" + discs[0].Style);
        xml.WriteAttributeString("r", Number(discs[0].RadiusMm));
        xml.WriteEndElement();
        xml.WriteEndElement();
        xml.WriteStartElement("path");
        xml.WriteAttributeString("fill", "none");
        foreach (var place in new[] { "start", "mid", "end" })
        {
            xml.WriteAttributeString("marker-" + place, $"url(#{id})");
        }

        xml.WriteAttributeString("d", string.Concat(discs.Select((disc, i) => i == 0 ? "M" + Pair(disc.Centre)
            : disc.Centre.Y == discs[i - 1].Centre.Y ? "H" + Number(disc.Centre.X) : "L" + Pair(disc.Centre))));
        xml.WriteEndElement();
    }

    private static string Css(Sheet sheet, string scope, Func<string, string> colour)
    {
        var used = sheet.Layers.SelectMany(l => l.Primitives).Select(p => p.Style).ToHashSet(StringComparer.Ordinal);
        var css = new StringBuilder("\n    ").Append(scope).Append($".{TypeClass} {{ font-family: ").Append(Fonts).Append("; white-space: pre; }\n");
        foreach (var style in PictureStyles.All.Where(s => used.Contains(s.Name)))
        {
            css.Append("    ").Append(scope).Append(".pl-").Append(style.Name).Append(" { fill: ")
                .Append(style.Fill is { } fill ? colour(fill) : "none").Append(';');
            if (style.Stroke is not null)
            {
                css.Append(" stroke: ").Append(colour(style.Stroke)).Append("; stroke-width: ")
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
                Path(xml, line, "M" + string.Join('L', line.Points.Select(Pair)));
                break;
            case Primitive.Strokes strokes:
                Path(xml, strokes, StrokesData(strokes.Ends));
                break;
            case Primitive.Hatch hatch:
                Path(xml, hatch, StrokesData(HatchLines.Of(hatch)));
                break;
            case Primitive.Area area:
                Path(xml, area, string.Concat(area.Rings.Select(r => "M" + string.Join('L', r.Points.Select(Pair)) + "Z")));
                break;
            case Primitive.Disc disc:
                xml.WriteStartElement("circle");
                xml.WriteAttributeString("class", "pl-" + disc.Style);
                Of(xml, disc);
                Circle(xml, disc);
                xml.WriteEndElement();
                break;
            case Primitive.Ellipse ellipse:
                xml.WriteStartElement("ellipse");
                xml.WriteAttributeString("class", "pl-" + ellipse.Style);
                Of(xml, ellipse);
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

    private static void Of(XmlWriter xml, Primitive primitive)
    {
        if (primitive.Of is { } owner)
        {
            xml.WriteAttributeString("data-of", owner);
        }
    }

    private static void WriteText(XmlWriter xml, Primitive.Text text)
    {
        var baseline = text.At - Turn.FromDegrees(text.AngleDeg).Apply(new(0, HalfCapital * text.SizeMm));
        xml.WriteStartElement("text");
        xml.WriteAttributeString("class", $"{TypeClass} pl-{text.Style}");
        Of(xml, text);
        xml.WriteAttributeString("x", Number(baseline.X));
        xml.WriteAttributeString("y", Number(-baseline.Y));
        xml.WriteAttributeString("font-size", Number(text.SizeMm));
        if (text.Anchor != TextAnchor.Start)
        {
            xml.WriteAttributeString("text-anchor", text.Anchor == TextAnchor.Middle ? "middle" : "end");
        }

        if (text.WidthMm is { } width)
        {
            xml.WriteAttributeString("textLength", Number(width));
            xml.WriteAttributeString("lengthAdjust", "spacingAndGlyphs");
        }

        Turned(xml, text.AngleDeg, baseline);
        xml.WriteString(XmlText(text.Words));
        xml.WriteEndElement();
    }

    private static void Path(XmlWriter xml, Primitive primitive, string data)
    {
        if (data.Length == 0)
        {
            return;
        }

        xml.WriteStartElement("path");
        xml.WriteAttributeString("class", "pl-" + primitive.Style);
        Of(xml, primitive);
        xml.WriteAttributeString("d", data);
        xml.WriteEndElement();
    }

    private static string StrokesData(IReadOnlyList<Point2> ends) => string.Concat(
        Enumerable.Range(0, ends.Count / 2).Select(i => $"M{Pair(ends[2 * i])}L{Pair(ends[2 * i + 1])}"));

    private static void Circle(XmlWriter xml, Primitive.Disc disc)
    {
        Centre(xml, disc.Centre);
        xml.WriteAttributeString("r", Number(disc.RadiusMm));
    }

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

    /// <summary>Text without characters that XML cannot hold, and controls that would break the line: they become a blank.</summary>
    internal static string XmlText(string text)
    {
        var clean = new StringBuilder(text.Length);
        foreach (var rune in text.EnumerateRunes())
        {
            // Marks that turn the direction of what follows are dropped: letters bring their own direction.
            if (rune.IsBmp && rune.Value > 0x9F && Plain.Steers((char)rune.Value))
            {
                continue;
            }

            var allowed = !Rune.IsControl(rune) && rune.Value is not (0xFFFE or 0xFFFF);
            clean.Append(allowed ? rune.ToString() : " ");
        }

        return clean.ToString();
    }

    private static string Pair(Point2 p) => $"{Number(p.X)} {Number(-p.Y)}";

    private static string Number(double value) => CsvText.Mm(value);
}
