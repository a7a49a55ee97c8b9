using System.Globalization;

namespace PodLayout.Reading.Svg;

/// <summary>A length with its unit (CSS Values 3, section 5.2: 96 px are one inch).</summary>
internal static class SvgLength
{
    public const double MmPerPx = 25.4 / 96;

    /// <summary>A length in px; percentages are of <paramref name="whole"/>; null when the text is no length.</summary>
    public static double? InPx(string text, double? whole)
    {
        var trimmed = text.Trim();
        var end = trimmed.Length;
        while (end > 0 && (char.IsAsciiLetter(trimmed[end - 1]) || trimmed[end - 1] == '%'))
            end--;
        if (!double.TryParse(trimmed[..end], NumberStyles.Float, CultureInfo.InvariantCulture, out var number) || !double.IsFinite(number))
            return null;
        return trimmed[end..].ToLowerInvariant() switch
        {
            "" or "px" => number,
            "mm" => number / MmPerPx,
            "cm" => number * 10 / MmPerPx,
            "in" => number * 96,
            "pt" => number * 96 / 72,
            "pc" => number * 16,
            "q" => number / 4 / MmPerPx,
            "%" => number / 100 * whole,
            _ => null,
        };
    }
}
