using System.Globalization;
using System.Text;

namespace PodLayout.Findings;

/// <summary>
/// Text from files as it may be shown: characters that steer a terminal or turn the direction of what stands after them are shown by
/// their number and do nothing.
/// </summary>
public static class Plain
{
    /// <summary>The text, with <c>&lt;U+001B&gt;</c> in place of the character of that number.</summary>
    /// <param name="text">What is to be shown.</param>
    /// <param name="keepsLines">Whether ends of lines and tabs stay.</param>
    public static string Text(string text, bool keepsLines = false)
    {
        if (!text.Any(c => Steers(c) && !(keepsLines && c is '\n' or '\r' or '\t')))
        {
            return text;
        }

        StringBuilder shown = new(text.Length + 16);
        foreach (var c in text)
        {
            if (keepsLines && c is '\n' or '\r' or '\t' || !Steers(c))
            {
                shown.Append(c);
            }
            else
            {
                shown.Append(CultureInfo.InvariantCulture, $"<U+{(int)c:X4}>");
            }
        }

        return shown.ToString();
    }

    /// <summary>
    /// JSON in which such characters stand as escapes: the serializer escapes controls but not marks of direction. They stand in
    /// texts only, where an escape means the same.
    /// </summary>
    public static string Json(string json) => !json.Any(c => c > '\u009F' && Steers(c)) ? json
        : string.Concat(json.Select(c => c > '\u009F' && Steers(c) ? string.Create(CultureInfo.InvariantCulture, $"\\u{(int)c:x4}") : c.ToString()));

    /// <summary>Words of a finding at most this long: names in drawings may have any length.</summary>
    public static string Cut(string words) => words.Length <= Longest ? words : words[..(char.IsHighSurrogate(words[Longest - 1]) ? Longest - 1 : Longest)] + "...";

    private const int Longest = 2000;

    /// <summary>
    /// Whether a character is one of the controls (C0, DEL, C1), a mark of direction (Unicode Standard Annex 9, section 2), a
    /// separator of lines or paragraphs, or a byte order mark.
    /// </summary>
    public static bool Steers(char c) => char.IsControl(c)
        || c is '\u061C' or '\u200E' or '\u200F' or (>= '\u2028' and <= '\u202E') or (>= '\u2066' and <= '\u2069') or '\uFEFF';
}
