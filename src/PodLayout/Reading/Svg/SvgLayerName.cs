using System.Globalization;
using System.Text.RegularExpressions;
using System.Xml.Linq;

namespace PodLayout.Reading.Svg;

/// <summary>
/// The layer of a line: the name of a group around it. SVG has no layers; programs write them as groups with a label for people,
/// beside an id that is often made up (g1234).
/// </summary>
/// <param name="Text">The name.</param>
/// <param name="IsLayer">Whether the group is marked as a layer, so that plain groups inside it are none.</param>
/// <param name="IsChosen">Whether a person chose the name, as far as can be told.</param>
internal sealed partial record SvgLayerName(string Text, bool IsLayer, bool IsChosen)
{
    private static readonly XNamespace Inkscape = "http://www.inkscape.org/namespaces/inkscape";
    private static readonly XNamespace Serif = "http://www.serif.com/";

    public static SvgLayerName None { get; } = new("0", false, false);

    /// <summary>The layer inside a group: its own label or name, unless it is a nameless group or a plain one inside a layer.</summary>
    public SvgLayerName Inside(XElement group)
    {
        if (group.Name.LocalName != "g")
            return this;
        var label = group.Attribute(Inkscape + "label")?.Value.Trim();
        var isLayer = group.Attribute(Inkscape + "groupmode")?.Value == "layer";
        if (IsLayer && !isLayer)
            return this;
        var id = group.Attribute("id")?.Value.Trim();
        var chosen = new[] { label, group.Attribute(Serif + "id")?.Value.Trim(), group.Attribute("data-name")?.Value.Trim(), id is { } i && !MadeUp().IsMatch(i) ? Decoded(i) : null }
            .FirstOrDefault(n => !string.IsNullOrEmpty(n));
        chosen ??= StyleSelector.Classes(group).FirstOrDefault();
        if (chosen is not null)
            return new(chosen, isLayer, true);
        if (isLayer && !string.IsNullOrEmpty(id))
            return new(id, true, false);
        return IsChosen || string.IsNullOrEmpty(id) ? this : new(id, false, false);
    }

    [GeneratedRegex(@"^(g|group|layer|path|rect|svg|use|surface|_|-)*[-_]?\d+([-_]\d+)*$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex MadeUp();

    [GeneratedRegex("_x([0-9A-Fa-f]{2,4})_", RegexOptions.CultureInvariant)]
    private static partial Regex Coded();

    /// <summary>Some programs write what an id cannot hold as _x0020_.</summary>
    private static string Decoded(string id) => Coded().Replace(
        id, m => ((char)int.Parse(m.Groups[1].ValueSpan, NumberStyles.HexNumber, CultureInfo.InvariantCulture)).ToString());
}
