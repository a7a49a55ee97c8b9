using PodLayout.Reading.Curves;

namespace PodLayout.Reading.Svg;

/// <summary>How a viewBox fills its viewport (SVG 2, section 8.2).</summary>
internal static class SvgViewport
{
    /// <summary>From the units inside the viewBox to those of the viewport.</summary>
    public static Affine3 Fit(double[] box, double width, double height, string preserve)
    {
        double sx = width / box[2], sy = height / box[3];
        var words = preserve.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        var align = words.Length > 0 ? words[0] : "xMidYMid";
        double dx = 0, dy = 0;
        if (align != "none")
        {
            sx = sy = words.Contains("slice") ? Math.Max(sx, sy) : Math.Min(sx, sy);
            dx = Share(align, "xMid", "xMax") * (width - sx * box[2]);
            dy = Share(align, "YMid", "YMax") * (height - sy * box[3]);
        }

        return SvgTransform.Matrix(sx, 0, 0, sy, dx - box[0] * sx, dy - box[1] * sy);
    }

    private static double Share(string align, string middle, string end) =>
        align.Contains(middle, StringComparison.Ordinal) ? 0.5 : align.Contains(end, StringComparison.Ordinal) ? 1 : 0;
}
