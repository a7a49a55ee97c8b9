using System.Collections.Immutable;
using PodLayout.Geometry;

namespace PodLayout.BoardMaking;

/// <summary>Digits as single strokes, for a pointed tool: no type on the machine is needed, and what is drawn is what is cut.</summary>
internal static class StrokeDigits
{
    /// <summary>Width of a digit for a height of 1.</summary>
    private const double Width = 0.6;

    /// <summary>From digit to digit.</summary>
    private const double Advance = 0.85;

    private static readonly ImmutableArray<string> Strokes =
    [
        "1,0 5,0 6,2 6,8 5,10 1,10 0,8 0,2 1,0",
        "1,8 3,10 3,0|1,0 5,0",
        "0,8 1,10 5,10 6,8 6,6 0,0 6,0",
        "0,10 6,10 3,6 5,6 6,4 6,2 5,0 1,0 0,2",
        "4,0 4,10 0,3 6,3",
        "6,10 0,10 0,6 5,6 6,4 6,2 5,0 1,0 0,1",
        "5,10 2,10 0,6 0,2 1,0 5,0 6,2 6,4 5,6 0,6",
        "0,10 6,10 2,0",
        "1,5 0,7 0,9 1,10 5,10 6,9 6,7 5,5 1,5 0,3 0,1 1,0 5,0 6,1 6,3 5,5",
        "6,4 1,4 0,6 0,8 1,10 5,10 6,8 6,4 4,0 1,0",
    ];

    /// <summary>Width of a number for a height of 1.</summary>
    public static double WidthOf(string digits) => Width + (digits.Length - 1) * Advance;

    /// <summary>The strokes of a number with its middle at a place.</summary>
    public static ImmutableArray<ImmutableArray<Point2>> Of(string digits, Point2 middle, double heightMm)
    {
        var left = middle - new Point2(WidthOf(digits) / 2, 0.5) * heightMm;
        return
        [
            .. from i in Enumerable.Range(0, digits.Length)
               from stroke in Strokes[digits[i] - '0'].Split('|')
               select stroke.Split(' ')
                   .Select(p => p.Split(','))
                   .Select(p => left + new Point2(i * Advance + int.Parse(p[0], System.Globalization.CultureInfo.InvariantCulture) / 10.0,
                       int.Parse(p[1], System.Globalization.CultureInfo.InvariantCulture) / 10.0) * heightMm)
                   .ToImmutableArray(),
        ];
    }
}
