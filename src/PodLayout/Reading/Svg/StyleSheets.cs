using System.Text.RegularExpressions;
using System.Xml;
using System.Xml.Linq;

namespace PodLayout.Reading.Svg;

/// <summary>
/// The style sheets inside an SVG file (SVG 2, section 6; CSS 2.2, sections 4 and 6): which declarations hold of an element, in the
/// order of the cascade. What might hide, show or move a line and is not resolved is refused by its name, never guessed.
/// </summary>
internal sealed partial class StyleSheets
{
    /// <summary>Properties that decide what is seen of a line, or where.</summary>
    private static readonly HashSet<string> Telling = new(StringComparer.OrdinalIgnoreCase)
    {
        "display", "visibility", "opacity", "fill", "fill-opacity", "stroke", "stroke-opacity", "stroke-width", "color", "overflow", "all",
        "clip-path", "clip", "mask", "mask-image", "transform", "transform-origin", "transform-box", "rotate", "scale", "translate", "offset-path",
        "d", "x", "y", "cx", "cy", "r", "rx", "ry", "width", "height", "content-visibility",
    };

    private readonly DrawingFindings _findings;
    private readonly Dictionary<string, List<Rule>> _rules = new(StringComparer.Ordinal);
    private int _order;

    private StyleSheets(DrawingFindings findings) => _findings = findings;

    private sealed record Rule(StyleSelector Selector, Dictionary<string, Declared> Declarations, int Order);

    /// <summary>A value, and whether it goes before all that are not marked so.</summary>
    public readonly record struct Declared(string Value, bool IsImportant);

    /// <summary>All style sheets of the document; what cannot be resolved is refused.</summary>
    public static StyleSheets Read(XElement root, DrawingFindings findings)
    {
        var sheets = new StyleSheets(findings);
        foreach (var instruction in (root.Document?.Nodes() ?? []).OfType<XProcessingInstruction>().Where(i => i.Target == "xml-stylesheet"))
            sheets.Refuse("a style sheet in another file (xml-stylesheet)", Line(instruction));
        foreach (var style in root.DescendantsAndSelf().Where(e => e.Name.LocalName == "style"))
        {
            var type = style.Attribute("type")?.Value.Trim() ?? "";
            var media = style.Attribute("media")?.Value.Trim().ToLowerInvariant() ?? "";
            if (type.Length > 0 && !type.StartsWith("text/css", StringComparison.OrdinalIgnoreCase))
                continue;
            if (media is "print" or "speech")
                continue;
            if (media is "" or "all" or "screen")
                sheets.ReadSheet(style.Value, Line(style));
            else if (HasTelling(style.Value))
                sheets.Refuse($"a style sheet for the medium \"{media}\"", Line(style));
        }

        return sheets;
    }

    private static int? Line(XObject node) => node is IXmlLineInfo info && info.HasLineInfo() ? info.LineNumber : null;

    private void Refuse(string what, int? line) => _findings.Refuse(
        "svg-style", $"The SVG uses {what}, which is not read: it may hide or move lines.",
        "Save it as plain SVG with presentation attributes (no style sheet), or delete the rule.", line);

    [GeneratedRegex(@"/\*.*?\*/", RegexOptions.Singleline | RegexOptions.CultureInvariant)]
    private static partial Regex Comment();

    private static bool HasTelling(string body) =>
        body.Split(['{', '}', ';']).Any(d => d.IndexOf(':', StringComparison.Ordinal) is > 0 and var colon && Telling.Contains(d[..colon].Trim()));

    private void ReadSheet(string text, int? line)
    {
        text = Comment().Replace(text, " ").Replace("<!--", " ", StringComparison.Ordinal).Replace("-->", " ", StringComparison.Ordinal);
        var at = 0;
        while (at < text.Length)
        {
            var open = text.IndexOf('{', at);
            var end = text.IndexOf(';', at);
            var head = text[at..(open < 0 ? text.Length : open)].Trim();
            if (head.StartsWith('@') && end >= 0 && (open < 0 || end < open))
            {
                var statement = text[at..end].Trim();
                if (statement.StartsWith("@import", StringComparison.OrdinalIgnoreCase))
                    Refuse($"a style sheet in another file ({Shorten(statement)})", line);
                at = end + 1;
                continue;
            }

            if (open < 0)
                return;
            var close = Closing(text, open);
            var body = text[(open + 1)..close];
            if (!head.StartsWith('@'))
                AddRule(head, body, line);
            else if (IsOfNoAccount(head))
                at = close;
            else if (head.Replace(" ", "", StringComparison.Ordinal).ToLowerInvariant() is "@mediascreen" or "@mediaall")
                ReadSheet(body, line);
            else if (HasTelling(body))
                Refuse($"the rule \"{Shorten(head)}\"", line);
            at = close + 1;
        }
    }

    /// <summary>Fonts, names and pages draw nothing; what an animation does later is not what is drawn.</summary>
    private static bool IsOfNoAccount(string head) => head.Split(' ', '\t', '\n', '(')[0].ToLowerInvariant() is "@font-face" or "@page"
        or "@keyframes" or "@-webkit-keyframes" or "@counter-style" or "@property"
        || head.Replace(" ", "", StringComparison.Ordinal).Equals("@mediaprint", StringComparison.OrdinalIgnoreCase);

    private static int Closing(string text, int open)
    {
        var depth = 0;
        for (var i = open; i < text.Length; i++)
        {
            depth += text[i] == '{' ? 1 : text[i] == '}' ? -1 : 0;
            if (depth == 0)
                return i;
        }

        // What is not closed ends with the sheet (CSS Syntax 3, section 5.4.8).
        return text.Length;
    }

    private void AddRule(string selectors, string body, int? line)
    {
        var declarations = Declarations(body).Where(d => Telling.Contains(d.Key)).ToDictionary(StringComparer.OrdinalIgnoreCase);
        if (declarations.Count == 0)
            return;
        foreach (var text in selectors.Split(','))
        {
            var selector = StyleSelector.Read(text);
            if (selector.Unread is { } unread)
            {
                Refuse($"the selector \"{Shorten(selector.Text)}\" ({Shorten(unread)})", line);
                return;
            }

            if (!_rules.TryGetValue(selector.Key, out var list))
                _rules[selector.Key] = list = [];
            list.Add(new(selector, declarations, _order++));
        }
    }

    private static string Shorten(string text) => text.Length > 60 ? text[..60] + "..." : text;

    /// <summary>The declarations of a style attribute or of a rule's body.</summary>
    public static Dictionary<string, Declared> Declarations(string style)
    {
        var result = new Dictionary<string, Declared>(StringComparer.OrdinalIgnoreCase);
        foreach (var declaration in style.Split(';'))
        {
            var colon = declaration.IndexOf(':', StringComparison.Ordinal);
            if (colon <= 0)
                continue;
            var (name, value) = (declaration[..colon].Trim(), declaration[(colon + 1)..].Trim());
            var bang = value.LastIndexOf('!');
            var isImportant = bang >= 0 && value[(bang + 1)..].Trim().Equals("important", StringComparison.OrdinalIgnoreCase);
            value = isImportant ? value[..bang].Trim() : value;
            if (!result.TryGetValue(name, out var before) || isImportant || !before.IsImportant)
                result[name] = new(value, isImportant);
        }

        return result;
    }

    /// <summary>What the style sheets and the style attribute say of an element; presentation attributes come after all of it.</summary>
    public Dictionary<string, Declared> Of(XElement element)
    {
        var inline = element.Attribute("style") is { } style ? Declarations(style.Value) : [];
        if (_rules.Count == 0)
            return inline;
        var keys = StyleSelector.Classes(element).Select(c => "." + c).Append("#" + element.Attribute("id")?.Value).Append(element.Name.LocalName).Append("*");
        var matching = keys.SelectMany(k => _rules.GetValueOrDefault(k) ?? []).Where(r => r.Selector.Matches(element))
            .OrderBy(r => r.Selector.Specificity).ThenBy(r => r.Order);
        var result = new Dictionary<string, Declared>(StringComparer.OrdinalIgnoreCase);
        foreach (var (name, value) in matching.SelectMany(r => r.Declarations).Concat(inline))
        {
            if (value.IsImportant || !result.TryGetValue(name, out var before) || !before.IsImportant)
                result[name] = value;
        }

        return result;
    }
}
