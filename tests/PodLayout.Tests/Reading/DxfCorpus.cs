using System.Globalization;

namespace PodLayout.Tests.Reading;

/// <summary>Drawings of our own, in five versions of DXF, whose areas are known in closed form, with the oddities of real files.</summary>
internal static class DxfCorpus
{
    /// <summary>Versions by their $ACADVER (DXF reference, HEADER section).</summary>
    public static readonly (string Name, string Code)[] Versions =
        [("R12", "AC1009"), ("R2000", "AC1015"), ("R2004", "AC1018"), ("R2010", "AC1024"), ("R2018", "AC1032")];

    /// <summary>A drawing and what is known of it.</summary>
    /// <param name="Name">Its name.</param>
    /// <param name="Text">Its DXF text.</param>
    /// <param name="OutlineMm2">Area of the part's outline; null where it must be refused.</param>
    /// <param name="HolesMm2">Areas of its holes.</param>
    /// <param name="Refusal">Code of the refusal.</param>
    /// <param name="ByLayer">Whether all lines of a layer make one ring, so that another reader can add them up.</param>
    public sealed record Entry(string Name, string Text, double? OutlineMm2, double[] HolesMm2, string? Refusal, bool ByLayer);

    public static IEnumerable<Entry> All => Versions.SelectMany(v => Of(v.Name, v.Code));

    private static IEnumerable<Entry> Of(string version, string code)
    {
        var isOld = version == "R12";
        Entry Good(string name, string entities, double outline, double[]? holes = null, bool byLayer = true, string unit = "4", string blocks = "") => new(
            $"{name}-{version}", File(entities, unit, blocks), outline, holes ?? [], null, byLayer);
        Entry Bad(string name, string entities, string refusal, string unit = "4") => new($"{name}-{version}", File(entities, unit, ""), null, [], refusal, false);
        string File(string entities, string unit, string blocks) => Drawings.Dxf(entities, $"9 $ACADVER 1 {code} 9 $INSUNITS 70 {unit}", blocks);
        string Closed(string layer, params (double X, double Y, double Bulge)[] p) => Polyline(isOld, layer, p);
        string Box(double x, double y, double w, double h, string layer) => Closed(layer, (x, y, 0), (x + w, y, 0), (x + w, y + h, 0), (x, y + h, 0));
        string Sides(double w, double h) => Drawings.Line(0, 0, w, 0, "PART") + Drawings.Line(w, 0, w, h, "PART") + Drawings.Line(w, h, 0, h, "PART") + Drawings.Line(0, h, 0, 0, "PART");
        string Oval(string to) => $" 0 ELLIPSE 100 AcDbEntity 8 PART 100 AcDbEllipse 10 250 20 150 30 0 11 250 21 0 31 0 40 0.6 41 0 42 {to} ";
        var hole = Drawings.Circle(100, 60, 20, "HOLE");
        var holeArea = 400 * Math.PI;

        yield return Good("lines", Sides(300, 200) + hole, 60000, [holeArea]);
        yield return Good("polyline", Box(0, 0, 300, 200, "PART") + hole, 60000, [holeArea]);
        yield return Good("circle", Drawings.Circle(100, 60, 150, "PART") + hole, 22500 * Math.PI, [holeArea]);
        yield return Good("half-disc", " 0 ARC 8 PART 10 0 20 0 40 100 50 270 51 90 " + Drawings.Line(0, 100, 0, -100, "PART"), 5000 * Math.PI);
        yield return Good("slot", Closed("PART", (0, 0, 0), (400, 0, 1), (400, 200, 0), (0, 200, 1)) + hole, 80000 + 10000 * Math.PI, [holeArea]);
        yield return Good("whole-arc", " 0 ARC 8 PART 10 100 20 60 40 150 50 0 51 360.0000001 " + hole, 22500 * Math.PI, [holeArea], byLayer: false);
        yield return Good("inches", Box(0, 0, 20, 10, "PART"), 200 * 645.16, unit: "1");
        yield return Good("mirrored", " 0 INSERT 8 PART 2 B 10 500 20 0 41 -2 42 1 ", 60000, blocks: $"0 SECTION 2 BLOCKS 0 BLOCK 8 0 2 B 70 0 10 0 20 0 30 0 {Box(0, 0, 150, 200, "0")} 0 ENDBLK 8 0 0 ENDSEC");
        yield return Good("scaled-circle", " 0 INSERT 8 PART 2 B 10 500 20 0 41 300 42 100 ", 30000 * Math.PI, byLayer: false, blocks: $"0 SECTION 2 BLOCKS 0 BLOCK 8 0 2 B 70 0 10 0 20 0 30 0 {Drawings.Circle(0, 0, 1)} 0 ENDBLK 8 0 0 ENDSEC");
        yield return Good("engraved", Box(0, 0, 300, 200, "PART") + hole + Drawings.Line(-10, 100, 310, 100, "PART") + Drawings.Line(150, 20, 250, 180, "PART"), 60000, [holeArea], byLayer: false);
        yield return Good("tail", Sides(300, 200) + Drawings.Line(300, 200, 320, 215, "PART"), 60000, byLayer: false);
        yield return Good("sheet", Box(-60, -40, 420, 297, "BORDER") + Box(-50, -30, 400, 277, "BORDER") + " 0 TEXT 8 BORDER 10 0 20 -20 40 5 1 TITLE " + Box(0, 0, 300, 200, "PART") + hole, 60000, [holeArea], byLayer: false);
        yield return Good("step-back", Closed("PART", (0, 0, 0), (300.0002, 0, 0), (300, 0, 0), (300, 200, 0), (0, 200, 0)), 60000);
        yield return Good("overlap", Drawings.Line(0, 0, 180, 0, "PART") + Drawings.Line(150, 0, 300, 0, "PART") + Drawings.Line(300, 0, 300, 200, "PART") + Drawings.Line(300, 200, 0, 200, "PART") + Drawings.Line(0, 200, 0, 0, "PART"), 60000, byLayer: false);
        yield return Good("twice", Sides(300, 200) + Drawings.Line(0, 0, 300, 0, "PART") + Drawings.Line(300, 50, 300, 90, "PART"), 60000, byLayer: false);
        yield return Bad("two-parts", Box(0, 0, 300, 200, "PART") + Box(400, 0, 300, 200, "PART"), "parts-several");
        yield return Bad("no-unit", Box(0, 0, 300, 200, "PART"), "unit-missing", unit: "0");
        yield return Bad("open-outline", Drawings.Line(0, 0, 300, 0, "PART") + Drawings.Line(300, 0, 300, 200, "PART") + Drawings.Line(300, 200, 0, 200, "PART") + Drawings.Line(0, 200, 0, 0.7, "PART") + hole, "ring-open");
        yield return Bad("framed", Box(-60, -40, 500, 320, "0") + Box(0, 0, 300, 200, "1"), "outline-doubtful");
        yield return Bad("bow-tie", Closed("PART", (0, 0, 0), (200, 100, 0), (200, 0, 0), (0, 100, 0)) + Drawings.Circle(30, 50, 5, "HOLE"), "ring-crosses-itself");
        if (isOld)
            yield break;
        yield return Good("ellipse", Oval("6.283185307179586") + hole, 37500 * Math.PI, [holeArea]);
        yield return Good("rounded-ellipse", Oval("6.28318530718") + hole, 37500 * Math.PI, [holeArea], byLayer: false);
        // A parabola over a chord of 300 with its control point 200 above encloses 2/3 of the triangle of height 200.
        yield return Good("parabola", " 0 SPLINE 100 AcDbEntity 8 PART 100 AcDbSpline 70 8 71 2 72 6 73 3 40 0 40 0 40 0 40 1 40 1 40 1 10 300 20 0 30 0 10 150 20 200 30 0 10 0 20 0 30 0 " + Drawings.Line(0, 0, 300, 0, "PART"), 20000);
    }

    /// <summary>LWPOLYLINE, or POLYLINE with vertices where that did not exist yet (DXF reference, R12).</summary>
    private static string Polyline(bool isOld, string layer, (double X, double Y, double Bulge)[] points)
    {
        static string Number(double n) => n.ToString("R", CultureInfo.InvariantCulture);
        return isOld
            ? $" 0 POLYLINE 8 {layer} 66 1 70 1 10 0 20 0 30 0 {string.Concat(points.Select(p => $" 0 VERTEX 8 {layer} 10 {Number(p.X)} 20 {Number(p.Y)} 30 0 42 {Number(p.Bulge)} "))} 0 SEQEND 8 {layer} "
            : $" 0 LWPOLYLINE 100 AcDbEntity 8 {layer} 100 AcDbPolyline 90 {points.Length} 70 1 {string.Concat(points.Select(p => $" 10 {Number(p.X)} 20 {Number(p.Y)} 42 {Number(p.Bulge)} "))}";
    }
}
