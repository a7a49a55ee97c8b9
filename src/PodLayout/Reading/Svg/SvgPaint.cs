using System.Globalization;

namespace PodLayout.Reading.Svg;

/// <summary>What decides whether a line is seen, as it is handed down from an element to those inside it.</summary>
/// <param name="IsVisible">The property visibility (SVG 1.1, section 11.5).</param>
/// <param name="IsFilled">Whether there is a fill (11.3; black when nothing is said).</param>
/// <param name="IsStroked">Whether there is a stroke (11.4; none when nothing is said).</param>
/// <param name="FillOpacity">0 for unseen.</param>
/// <param name="StrokeOpacity">0 for unseen.</param>
/// <param name="StrokeWidth">0 for unseen.</param>
/// <param name="IsClear">Whether the colour that currentColor stands for cannot be seen.</param>
/// <param name="IsOpaque">Whether no opacity of 0 hides the group (14.5; it is not handed down, but hides all inside).</param>
internal sealed record SvgPaint(
    bool IsVisible, bool IsFilled, bool IsStroked, double FillOpacity, double StrokeOpacity, double StrokeWidth, bool IsClear, bool IsOpaque)
{
    public static SvgPaint Initial { get; } = new(true, true, false, 1, 1, 1, false, true);

    public bool ShowsFill => IsFilled && FillOpacity > 0;

    public bool ShowsStroke => IsStroked && StrokeOpacity > 0 && StrokeWidth > 0;

    /// <summary>The paint of an element within this one.</summary>
    public SvgPaint With(Func<string, string?> property)
    {
        var isClear = IsSeen(property("color"), !IsClear) is false;
        return new(
            property("visibility")?.ToLowerInvariant() switch { "hidden" or "collapse" => false, "visible" or "initial" => true, _ => IsVisible },
            Painted(property("fill"), IsFilled, isClear, true),
            Painted(property("stroke"), IsStroked, isClear, false),
            Number(property("fill-opacity"), FillOpacity, 1),
            Number(property("stroke-opacity"), StrokeOpacity, 1),
            Number(property("stroke-width"), StrokeWidth, 1),
            isClear,
            IsOpaque && Number(property("opacity"), 1, 1) > 0);
    }

    private static bool Painted(string? value, bool inherited, bool isClear, bool initial) => value?.Trim().ToLowerInvariant() switch
    {
        null or "" or "inherit" or "unset" => inherited,
        "initial" => initial,
        "currentcolor" => !isClear,
        // A paint server that is missing leaves the colour named after it, or none (SVG 2, section 13.2).
        var v when v.StartsWith("url(", StringComparison.Ordinal) => !v.EndsWith("none", StringComparison.Ordinal) || v.Contains('#', StringComparison.Ordinal),
        var v => IsSeen(v, inherited),
    };

    /// <summary>Whether a colour can be seen at all; white on white can.</summary>
    private static bool IsSeen(string? colour, bool inherited)
    {
        if (colour is null || colour.Trim() is "inherit" or "unset" or "")
            return inherited;
        var text = colour.Trim().ToLowerInvariant();
        if (text is "none" or "transparent")
            return false;
        if (text.StartsWith('#'))
            return !(text.Length == 9 && text.EndsWith("00", StringComparison.Ordinal)) && !(text.Length == 5 && text[4] == '0');
        if ((text.StartsWith("rgb", StringComparison.Ordinal) || text.StartsWith("hsl", StringComparison.Ordinal)) && text.EndsWith(')'))
        {
            var parts = text[(text.IndexOf('(', StringComparison.Ordinal) + 1)..^1].Split([',', '/', ' '], StringSplitOptions.RemoveEmptyEntries);
            return parts.Length < 4 || Number(parts[3], 1, 1) > 0;
        }

        return true;
    }

    private static double Number(string? text, double inherited, double initial)
    {
        var value = text?.Trim() ?? "inherit";
        if (value is "initial")
            return initial;
        var end = value.Length;
        while (end > 0 && (char.IsAsciiLetter(value[end - 1]) || value[end - 1] == '%'))
            end--;
        return double.TryParse(value[..end], NumberStyles.Float, CultureInfo.InvariantCulture, out var number) ? number : inherited;
    }
}
