using System.Globalization;

namespace PodLayout.Findings;

/// <summary>Numbers of things in words of a message: 1 line, 2 lines, no lines.</summary>
public static class Counted
{
    /// <summary>A number and its noun, in the plural where it is not one.</summary>
    /// <param name="count">How many.</param>
    /// <param name="noun">The noun for one, in front of which words may stand; its plural ends with s.</param>
    public static string Of(int count, string noun) =>
        string.Create(CultureInfo.InvariantCulture, $"{(count == 0 ? "no" : count.ToString(CultureInfo.InvariantCulture))} {noun}{(count == 1 ? "" : noun.EndsWith('x') || noun.EndsWith("ch", StringComparison.Ordinal) ? "es" : "s")}");
}
