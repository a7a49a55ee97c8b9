using System.Globalization;
using PodLayout.Reading.Curves;

namespace PodLayout.Reading.Dxf;

/// <summary>Reads numbers of entities and says what is wrong with them; a number that cannot be read refuses the drawing.</summary>
internal sealed class NumberReader(DrawingFindings findings)
{
    private bool _saidComma;

    public double Number(DxfEntity entity, int code, double otherwise)
    {
        foreach (var tag in entity.Tags)
        {
            if (tag.Code == code)
                return Number(tag, entity);
        }

        return otherwise;
    }

    /// <summary>The point whose X has the given code; missing coordinates are zero.</summary>
    public Point3 Point(DxfEntity entity, int code) =>
        new(Number(entity, code, 0), Number(entity, code + 10, 0), Number(entity, code + 20, 0));

    /// <summary>All points whose X has the given code, in the order of their groups.</summary>
    public List<Point3> Points(DxfEntity entity, int code)
    {
        var points = new List<Point3>();
        foreach (var tag in entity.Tags)
        {
            if (tag.Code == code)
                points.Add(new(Number(tag, entity), 0, 0));
            else if (points.Count > 0 && tag.Code == code + 10)
                points[^1] = points[^1] with { Y = Number(tag, entity) };
            else if (points.Count > 0 && tag.Code == code + 20)
                points[^1] = points[^1] with { Z = Number(tag, entity) };
        }

        return points;
    }

    public List<double> Numbers(DxfEntity entity, int code) =>
        [.. entity.Tags.Where(t => t.Code == code).Select(t => Number(t, entity))];

    public Point3 Extrusion(DxfEntity entity) => entity.Has(210) || entity.Has(220) || entity.Has(230)
        ? Point(entity, 210) : new(0, 0, 1);

    public double Number(Tag tag, DxfEntity entity)
    {
        var value = tag.Value;
        if (TryParse(value, out var number))
            return Checked(number, tag, entity);
        if (TryParse(value.Replace(',', '.'), out number))
        {
            if (!_saidComma)
                findings.Mended("dxf-decimal-comma", $"\"{value}\" is written with a decimal comma; read as {number.ToString(CultureInfo.InvariantCulture)}, and likewise elsewhere.", tag.Line + 1);
            _saidComma = true;
            return Checked(number, tag, entity);
        }

        findings.Refuse(
            "dxf-number", $"Found \"{value}\" where {entity.Kind} needs a number (group {tag.Code}).",
            "The file is damaged: export it again.", tag.Line + 1);
        return 0;
    }

    /// <summary>A bulge; what is not finite is told by whoever knows the side that it bends.</summary>
    public double Bulge(Tag tag, DxfEntity entity) =>
        TryParse(tag.Value, out var number) && !double.IsFinite(number) ? double.NaN : Number(tag, entity);

    private static bool TryParse(string text, out double number) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out number);

    private double Checked(double number, Tag tag, DxfEntity entity)
    {
        if (double.IsFinite(number))
            return number;
        findings.Refuse(
            "dxf-not-finite", $"{entity.Kind} on layer {entity.Layer} holds \"{tag.Value}\" (group {tag.Code}), which is no finite number.",
            "Mend or delete the entity in the drawing program.", tag.Line + 1);
        return 0;
    }
}
