using System.Globalization;
using System.Text.RegularExpressions;
using PodLayout.Reading.Curves;

namespace PodLayout.Reading.Svg;

/// <summary>Reads a transform attribute (CSS Transforms 1, section 8).</summary>
internal static partial class SvgTransform
{
    /// <summary>The map; null when the text is not a list of transforms.</summary>
    public static Affine3? Read(string text)
    {
        var map = Affine3.Identity;
        var rest = Call().Replace(text, "");
        if (rest.Any(c => !char.IsWhiteSpace(c) && c != ',') && !rest.Trim().Equals("none", StringComparison.OrdinalIgnoreCase))
            return null;
        foreach (Match call in Call().Matches(text))
        {
            if (One(call.Groups[1].Value, Numbers(call.Groups[2].Value)) is not { } one)
                return null;
            map = map.After(one);
        }

        return map;
    }

    private static Affine3? One(string name, double[]? n) => (name, n?.Length) switch
    {
        ("matrix", 6) => Matrix(n![0], n[1], n[2], n[3], n[4], n[5]),
        ("translate", 1) => Affine3.Move(new(n![0], 0, 0)),
        ("translate", 2) => Affine3.Move(new(n![0], n[1], 0)),
        ("scale", 1) => Affine3.Scale(n![0], n[0], 1),
        ("scale", 2) => Affine3.Scale(n![0], n[1], 1),
        ("rotate", 1) => Affine3.TurnAboutZ(n![0]),
        ("rotate", 3) => Affine3.Move(new(n![1], n[2], 0)).After(Affine3.TurnAboutZ(n[0])).After(Affine3.Move(new(-n[1], -n[2], 0))),
        ("skewX", 1) => Matrix(1, 0, Math.Tan(n![0] * Math.PI / 180), 1, 0, 0),
        ("skewY", 1) => Matrix(1, Math.Tan(n![0] * Math.PI / 180), 0, 1, 0, 0),
        _ => null,
    };

    public static Affine3 Matrix(double a, double b, double c, double d, double e, double f) =>
        new(new(a, b, 0), new(c, d, 0), new(0, 0, 1), new(e, f, 0));

    /// <summary>Numbers separated by blanks, commas or nothing but a sign; null when one is damaged.</summary>
    public static double[]? Numbers(string text)
    {
        var numbers = new List<double>();
        if (Number().Replace(text, "").Any(c => !char.IsWhiteSpace(c) && c != ','))
            return null;
        foreach (Match m in Number().Matches(text))
        {
            var value = m.Value.EndsWith("px", StringComparison.Ordinal) ? m.Value[..^2] : m.Value.EndsWith("deg", StringComparison.Ordinal) ? m.Value[..^3] : m.Value;
            if (!double.TryParse(value, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) || !double.IsFinite(number))
                return null;
            numbers.Add(number);
        }

        return [.. numbers];
    }

    [GeneratedRegex(@"([A-Za-z]+)\s*\(([^)]*)\)", RegexOptions.CultureInvariant)]
    private static partial Regex Call();

    [GeneratedRegex(@"[+-]?(\d+\.?\d*|\.\d+)([eE][+-]?\d+)?(px|deg)?", RegexOptions.CultureInvariant)]
    private static partial Regex Number();
}
