using System.Collections.Immutable;
using PodLayout.Geometry;

namespace PodLayout.Handover.Picture;

/// <summary>
/// A sheet as an ASCII DXF drawing of version AC1015 (release 2000), in millimetres, at full size. Layers keep their names;
/// looks are left to the program that reads it.
/// </summary>
public static class DxfWriter
{
    // Half the height of a capital in the usual sans-serif types is 0.36 of the type's size, and DXF gives the capital's height.
    private const double CapitalShare = 0.72;

    /// <summary>The DXF text, LF at line ends.</summary>
    public static string Write(Sheet sheet)
    {
        var names = DxfLayerNames.Of(sheet.Layers.Select(l => l.Name));
        DxfTags body = new();
        var frame = DxfFrame.Begin(body, sheet, names);
        Entities(body, sheet, names, frame.ModelSpace);
        DxfFrame.End(body, frame);
        DxfTags whole = new();
        if (sheet.Mark.Length > 0)
        {
            // A remark.
            whole.Put(999, DxfTags.Plain(sheet.Mark));
        }

        DxfFrame.Header(whole, sheet, body.NextHandle);
        whole.Append(body);
        return whole.Text;
    }

    private static void Entities(DxfTags tags, Sheet sheet, ImmutableArray<string> names, string modelSpace)
    {
        tags.Put(0, "SECTION").Put(2, "ENTITIES");
        for (var i = 0; i < names.Length; i++)
        {
            foreach (var primitive in sheet.Layers[i].Primitives)
            {
                Entity(new(tags, modelSpace, names[i]), primitive);
            }
        }

        tags.Put(0, "ENDSEC");
    }

    private static void Entity(Pen pen, Primitive primitive)
    {
        switch (primitive)
        {
            case Primitive.Line { Points.Length: 2 } line:
                pen.Line(line.Points[0], line.Points[1]);
                break;
            case Primitive.Line line:
                pen.Polyline(line.Points, closed: false);
                break;
            case Primitive.Strokes strokes:
                pen.Strokes(strokes.Ends);
                break;
            case Primitive.Hatch hatch:
                pen.Strokes(HatchLines.Of(hatch));
                break;
            case Primitive.Area area:
                foreach (var ring in area.Rings)
                {
                    pen.Polyline(ring.Points, closed: true);
                }

                break;
            case Primitive.Disc disc:
                pen.Begin("CIRCLE", "AcDbCircle").Put(10, disc.Centre).Put(40, disc.RadiusMm);
                break;
            case Primitive.Ellipse ellipse:
                pen.Ellipse(ellipse);
                break;
            case Primitive.Text text:
                pen.Text(text);
                break;
            default:
                throw new ArgumentOutOfRangeException(nameof(primitive), primitive, "Unknown primitive.");
        }
    }

    /// <summary>Writes entities on one layer.</summary>
    private sealed record Pen(DxfTags Tags, string ModelSpace, string Layer)
    {
        public DxfTags Begin(string type, string subclass) => Tags.Put(0, type).Put(5, Tags.NewHandle()).Put(330, ModelSpace)
            .Put(100, "AcDbEntity").Put(8, Layer).Put(100, subclass);

        public void Line(Point2 from, Point2 to) => Begin("LINE", "AcDbLine").Put(10, from).Put(11, to);

        public void Strokes(ImmutableArray<Point2> ends)
        {
            for (var i = 0; i + 1 < ends.Length; i += 2)
            {
                Line(ends[i], ends[i + 1]);
            }
        }

        public void Polyline(ImmutableArray<Point2> points, bool closed)
        {
            Begin("LWPOLYLINE", "AcDbPolyline").Put(90, points.Length).Put(70, closed ? 1 : 0);
            foreach (var p in points)
            {
                Tags.Put(10, p, withZ: false);
            }
        }

        public void Ellipse(Primitive.Ellipse ellipse)
        {
            // The major axis is the longer one, and the ratio at most 1.
            var isLong = ellipse.HalfAxisMm >= ellipse.OtherHalfAxisMm;
            var (major, minor) = isLong ? (ellipse.HalfAxisMm, ellipse.OtherHalfAxisMm) : (ellipse.OtherHalfAxisMm, ellipse.HalfAxisMm);
            var axis = Turn.FromDegrees(ellipse.AngleDeg + (isLong ? 0 : 90)).Apply(new(major, 0));
            Begin("ELLIPSE", "AcDbEllipse").Put(10, ellipse.Centre).Put(11, axis).Put(40, minor / major).Put(41, 0.0).Put(42, 2 * Math.PI);
        }

        public void Text(Primitive.Text text)
        {
            var anchor = text.Anchor switch
            {
                TextAnchor.Start => 0,
                TextAnchor.Middle => 1,
                _ => 2,
            };
            Begin("TEXT", "AcDbText").Put(10, text.At).Put(40, CapitalShare * text.SizeMm).Put(1, DxfTags.Plain(text.Words))
                .Put(50, text.AngleDeg).Put(72, anchor).Put(11, text.At).Put(100, "AcDbText").Put(73, 2);
        }
    }
}
