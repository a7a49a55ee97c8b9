using System.Globalization;
using PodLayout.Geometry;

namespace PodLayout.Reading;

/// <summary>Lengths and places in words, in the unit that whoever made the drawing thinks in: inches where it is drawn in inches, else millimetres.</summary>
/// <param name="InInches">Whether lengths are told in inches.</param>
public sealed record DrawnLengths(bool InInches)
{
    /// <summary>Millimetres.</summary>
    public static DrawnLengths Mm { get; } = new(false);

    /// <summary>The unit's sign.</summary>
    public string Unit => InInches ? "in" : "mm";

    private double Per => InInches ? 25.4 : 1;

    /// <summary>A length with its unit; small ones keep their digits.</summary>
    public string Length(double mm) => $"{Number(mm)} {Unit}";

    /// <summary>A length without its unit.</summary>
    public string Number(double mm)
    {
        var length = mm / Per;
        var form = Math.Abs(length) >= 0.1 ? (InInches ? "0.####" : "0.###") : "0.######";
        return length.ToString(form, CultureInfo.InvariantCulture);
    }

    /// <summary>A point without the unit.</summary>
    public string At(Point2 p) => $"({Number(p.X)}, {Number(p.Y)})";

    /// <summary>A point for finding something, without the unit and without digits that nobody looks for.</summary>
    public string Near(Point2 p) => string.Create(CultureInfo.InvariantCulture, $"({Rounded(p.X) + 0.0}, {Rounded(p.Y) + 0.0})");

    /// <summary>The size of a ring with its unit.</summary>
    public string Size(Box2 box) => string.Create(CultureInfo.InvariantCulture, $"{Math.Round(box.Width / Per, InInches ? 3 : 2)} x {Math.Round(box.Height / Per, InInches ? 3 : 2)} {Unit}");

    /// <summary>An area with its unit, with three digits at least, however small.</summary>
    public string Area(double mm2)
    {
        var area = mm2 / (Per * Per);
        var form = Math.Abs(area) >= 100 ? "0.0" : Math.Abs(area) >= 1 ? "0.00" : "G3";
        return $"{area.ToString(form, CultureInfo.InvariantCulture)} {(InInches ? "sq in" : "mm2")}";
    }

    private double Rounded(double mm) => Math.Round(mm / Per, InInches ? 3 : 1);
}
