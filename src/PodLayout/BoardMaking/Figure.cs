using System.Globalization;
using PodLayout.Geometry;

namespace PodLayout.BoardMaking;

/// <summary>How figures are written in findings and on the sheet for the shop.</summary>
internal static class Figure
{
    /// <summary>A length in mm, to a ten-thousandth: sixteenths of an inch come out whole.</summary>
    public static string Mm(double value) => (Math.Round(value, 4, MidpointRounding.AwayFromZero) + 0.0).ToString("0.####", CultureInfo.InvariantCulture);

    /// <summary>A number with at most one decimal.</summary>
    public static string Tenth(double value) => (Math.Round(value, 1, MidpointRounding.AwayFromZero) + 0.0).ToString("0.#", CultureInfo.InvariantCulture);

    /// <summary>A count.</summary>
    public static string Count(int value) => value.ToString(CultureInfo.InvariantCulture);

    /// <summary>A place on the board.</summary>
    public static string At(Point2 p) => $"({Mm(p.X)}, {Mm(p.Y)}) mm";

    /// <summary>An extent on the board.</summary>
    public static string Box(Box2 b) => $"({Mm(b.MinX)}, {Mm(b.MinY)}) to ({Mm(b.MaxX)}, {Mm(b.MaxY)}) mm";
}
