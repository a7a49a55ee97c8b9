using System.Globalization;
using System.Text;
using PodLayout.Geometry;
using PodLayout.Handover.Lettering;

namespace PodLayout.Handover.Picture;

/// <summary>What is drawn on one page: a sheet's primitives as operators of a content stream (ISO 32000-1, 8 and 9).</summary>
internal sealed class PdfPage(Sheet sheet, PdfFont regular, PdfFont bold)
{
    private const double PointsPerMm = 72 / 25.4;

    // Half the height of a capital of the type.
    private const double HalfCapital = 0.3645;

    // A quarter of a circle as one Bezier curve.
    private const double Kappa = 0.5522847498;

    private readonly StringBuilder text = new();
    private string? style;

    public double WidthPt => sheet.Extent.Width / sheet.Scale * PointsPerMm;

    public double HeightPt => sheet.Extent.Height / sheet.Scale * PointsPerMm;

    public byte[] Content()
    {
        text.Append("1 j\n");
        foreach (var primitive in sheet.Layers.SelectMany(l => l.Primitives))
        {
            Draw(primitive);
        }

        return Encoding.ASCII.GetBytes(text.ToString());
    }

    private void Draw(Primitive primitive)
    {
        var look = PictureStyles.Of(primitive.Style);
        if (primitive is Primitive.Text words)
        {
            Write(words, look);
            return;
        }

        if (style != look.Name)
        {
            style = look.Name;
            Use(look);
        }

        if (!Path(primitive))
        {
            return;
        }

        var isArea = primitive is Primitive.Area or Primitive.Disc or Primitive.Ellipse;
        text.Append((look.Fill is not null && isArea, look.Stroke is not null) switch
        {
            (true, true) => "B*\n",
            (true, false) => "f*\n",
            (false, true) => isArea ? "s\n" : "S\n",
            _ => "n\n",
        });
    }

    private void Use(PictureStyle look)
    {
        if (look.Fill is { } fill)
        {
            text.Append(Number(Grey(fill))).Append(" g\n");
        }

        if (look.Stroke is { } stroke)
        {
            text.Append(Number(Grey(stroke))).Append(" G ").Append(Number(look.WidthMm * PointsPerMm)).Append(" w [")
                .AppendJoin(' ', look.DashMm.Select(d => Number(d * PointsPerMm))).Append("] 0 d\n");
        }
    }

    private bool Path(Primitive primitive)
    {
        switch (primitive)
        {
            case Primitive.Line line:
                Run([.. line.Points], close: false);
                return true;
            case Primitive.Strokes strokes:
                return Strokes([.. strokes.Ends]);
            case Primitive.Hatch hatch:
                return Strokes([.. HatchLines.Of(hatch)]);
            case Primitive.Area area:
                foreach (var ring in area.Rings)
                {
                    Run([.. ring.Points], close: true);
                }

                return true;
            case Primitive.Disc disc:
                Oval(disc.Centre, new(disc.RadiusMm, 0), new(0, disc.RadiusMm));
                return true;
            case Primitive.Ellipse e:
                var turn = Turn.FromDegrees(e.AngleDeg);
                Oval(e.Centre, turn.Apply(new(e.HalfAxisMm, 0)), turn.Apply(new(0, e.OtherHalfAxisMm)));
                return true;
            default:
                throw new ArgumentOutOfRangeException(nameof(primitive), primitive, "Unknown primitive.");
        }
    }

    private bool Strokes(IReadOnlyList<Point2> ends)
    {
        for (var i = 0; i + 1 < ends.Count; i += 2)
        {
            Run([ends[i], ends[i + 1]], close: false);
        }

        return ends.Count > 1;
    }

    private void Run(IReadOnlyList<Point2> points, bool close)
    {
        for (var i = 0; i < points.Count; i++)
        {
            text.Append(Pair(points[i])).Append(i == 0 ? " m\n" : " l\n");
        }

        if (close)
        {
            text.Append("h\n");
        }
    }

    private void Oval(Point2 centre, Point2 a, Point2 b)
    {
        text.Append(Pair(centre + a)).Append(" m\n");
        foreach (var (from, to) in new[] { (a, b), (b, a * -1), (a * -1, b * -1), (b * -1, a) })
        {
            text.Append(Pair(centre + from + to * Kappa)).Append(' ').Append(Pair(centre + to + from * Kappa)).Append(' ')
                .Append(Pair(centre + to)).Append(" c\n");
        }

        text.Append("h\n");
    }

    private void Write(Primitive.Text words, PictureStyle look)
    {
        var font = look.IsBold ? bold : regular;
        var line = VisualOrder.Of(words.Words);
        if (line.Count == 0)
        {
            return;
        }

        style = null;
        var own = font.Face.Width(words.Words, words.SizeMm);
        var width = words.WidthMm ?? own;
        var across = own > 0 ? width / own : 1;
        var turn = Turn.FromDegrees(words.AngleDeg);
        var left = words.Anchor switch { TextAnchor.Start => 0, TextAnchor.Middle => width / 2, _ => width };
        var at = words.At + turn.Apply(new(-left, -HalfCapital * words.SizeMm));

        // Whoever reads the file aloud or copies from it gets the text in its own order.
        var isTurned = VisualOrder.IsTurned(words.Words);
        if (isTurned)
        {
            text.Append("/Span << /ActualText ").Append(PdfObjects.TextString(words.Words)).Append(" >> BDC\n");
        }

        text.Append(Number(Grey(look.Fill ?? "#000000"))).Append(" g BT /").Append(font.Resource).Append(' ')
            .Append(Number(words.SizeMm / sheet.Scale * PointsPerMm)).Append(" Tf ")
            .Append(string.Join(' ', Fine(turn.Cos * across), Fine(turn.Sin * across), Fine(-turn.Sin), Fine(turn.Cos))).Append(' ').Append(Pair(at))
            .Append(" Tm <").Append(font.Encode(line)).Append("> Tj ET\n");
        if (isTurned)
        {
            text.Append("EMC\n");
        }
    }

    /// <summary>Printed in black and white: the lightness of a colour, 0 to 1 (weights of ITU-R BT.709).</summary>
    public static double Grey(string colour)
    {
        double Part(int at) => int.Parse(colour.AsSpan(at, 2), NumberStyles.HexNumber, CultureInfo.InvariantCulture) / 255.0;
        return 0.2126 * Part(1) + 0.7152 * Part(3) + 0.0722 * Part(5);
    }

    private string Pair(Point2 p) => Number((p.X - sheet.Extent.MinX) / sheet.Scale * PointsPerMm) + " "
        + Number((p.Y - sheet.Extent.MinY) / sheet.Scale * PointsPerMm);

    private static string Number(double value) => (Math.Round(value, 3) + 0.0).ToString("0.###", CultureInfo.InvariantCulture);

    private static string Fine(double value) => (Math.Round(value, 6) + 0.0).ToString("0.######", CultureInfo.InvariantCulture);
}
