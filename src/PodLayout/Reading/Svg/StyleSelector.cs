using System.Xml.Linq;

namespace PodLayout.Reading.Svg;

/// <summary>
/// One selector of a style sheet (Selectors Level 3): types, classes, ids, attributes, and the four combinators. Others are told as
/// not read, and a rule that they stand before is then refused where it might hide or move lines.
/// </summary>
internal sealed record StyleSelector(string Text, IReadOnlyList<StyleSelector.Compound> Parts, string? Unread)
{
    private static readonly string[] NeverTrue = ["hover", "focus", "active", "visited", "target", "focus-within", "focus-visible"];

    /// <summary>Simple selectors that hold of one element, and how it stands to the one before: blank, &gt;, + or ~.</summary>
    public sealed record Compound(char Combinator, string Type, IReadOnlyList<(char Kind, string Name, string? Value)> Simple);

    /// <summary>Specificity: ids, then classes and attributes, then types (Selectors 3, section 9).</summary>
    public (int Ids, int Classes, int Types) Specificity => (
        Parts.Sum(p => p.Simple.Count(s => s.Kind == '#')), Parts.Sum(p => p.Simple.Count(s => s.Kind != '#')), Parts.Count(p => p.Type != "*"));

    /// <summary>By what the last element is found: its id, class or type; * for any.</summary>
    public string Key => Parts.Count == 0 ? "*"
        : Parts[^1].Simple.Where(s => s.Kind is '#' or '.').Select(s => s.Kind + s.Name).FirstOrDefault() ?? Parts[^1].Type;

    public static StyleSelector Read(string text)
    {
        text = text.Trim();
        var parts = new List<Compound>();
        var at = 0;
        var combinator = ' ';
        while (at < text.Length)
        {
            var (compound, unread) = ReadCompound(text, ref at, combinator);
            if (compound is null)
                return new(text, [], unread);
            parts.Add(compound);
            combinator = '\0';
            while (at < text.Length && (char.IsWhiteSpace(text[at]) || text[at] is '>' or '+' or '~'))
            {
                if (text[at] is '>' or '+' or '~')
                    combinator = text[at];
                else if (combinator == '\0')
                    combinator = ' ';
                at++;
            }
        }

        return new(text, parts, parts.Count == 0 ? "an empty selector" : null);
    }

    private static (Compound? Compound, string? Unread) ReadCompound(string text, ref int at, char combinator)
    {
        var type = "*";
        var simple = new List<(char, string, string?)>();
        var begin = at;
        if (text[at] == '*')
            at++;
        else if (IsName(text[at]))
            type = Name(text, ref at);
        while (at < text.Length && text[at] is '.' or '#' or '[' or ':' or '|')
        {
            var kind = text[at++];
            if (kind == '[')
            {
                var end = text.IndexOf(']', at);
                if (end < 0)
                    return (null, "[");
                var inner = text[at..end].Split('=', 2);
                at = end + 1;
                if (inner[0].TrimEnd().EndsWith('~') || inner[0].TrimEnd().EndsWith('|') || inner[0].TrimEnd().EndsWith('^') || inner[0].TrimEnd().EndsWith('$') || inner[0].TrimEnd().EndsWith('*'))
                    return (null, $"[{string.Join('=', inner)}]");
                simple.Add(('[', inner[0].Trim(), inner.Length > 1 ? inner[1].Trim().Trim('"', '\'') : null));
                continue;
            }

            var name = at < text.Length && IsName(text[at]) ? Name(text, ref at) : "";
            if (kind == ':' && (NeverTrue.Contains(name) || name is "root" or "first-child" or "last-child") && !(at < text.Length && text[at] == '('))
                simple.Add((':', name, null));
            else if (kind is '.' or '#' && name.Length > 0)
                simple.Add((kind, name, null));
            else
                return (null, $"{kind}{name}");
        }

        return at == begin ? (null, text[at..]) : (new(combinator, type, simple), null);
    }

    private static bool IsName(char c) => char.IsLetterOrDigit(c) || c is '-' or '_' || c > 127;

    private static string Name(string text, ref int at)
    {
        var begin = at;
        while (at < text.Length && IsName(text[at]))
            at++;
        return text[begin..at];
    }

    /// <summary>Whether the selector holds of the element.</summary>
    public bool Matches(XElement element) => Parts.Count > 0 && Matches(element, Parts.Count - 1);

    private bool Matches(XElement element, int part)
    {
        if (!Holds(Parts[part], element))
            return false;
        if (part == 0)
            return true;
        switch (Parts[part].Combinator)
        {
            case '>':
                return element.Parent is { } parent && Matches(parent, part - 1);
            case '+':
                return element.ElementsBeforeSelf().LastOrDefault() is { } before && Matches(before, part - 1);
            case '~':
                return element.ElementsBeforeSelf().Any(e => Matches(e, part - 1));
            default:
                return element.Ancestors().Any(e => Matches(e, part - 1));
        }
    }

    private static bool Holds(Compound compound, XElement element) =>
        (compound.Type == "*" || compound.Type == element.Name.LocalName)
        && compound.Simple.All(s => s.Kind switch
        {
            '#' => element.Attribute("id")?.Value == s.Name,
            '.' => Classes(element).Contains(s.Name),
            '[' => element.Attribute(s.Name) is { } a && (s.Value is null || a.Value == s.Value),
            _ => s.Name switch
            {
                "root" => element.Parent is null,
                "first-child" => element.Parent is not null && !element.ElementsBeforeSelf().Any(),
                "last-child" => element.Parent is not null && !element.ElementsAfterSelf().Any(),
                _ => false,
            },
        });

    /// <summary>The classes of an element.</summary>
    public static string[] Classes(XElement element) =>
        element.Attribute("class")?.Value.Split([' ', '\t', '\r', '\n'], StringSplitOptions.RemoveEmptyEntries) ?? [];
}
