using System.Text.RegularExpressions;
using System.Xml;
using System.Xml.Linq;

namespace PodLayout.Reading.Svg;

/// <summary>
/// Reads the XML of an SVG file. Entities that the file declares itself are expanded, since some programs write styles and
/// namespaces by them, within limits of size and depth; nothing outside the file is ever fetched (XML 1.0, section 4.4.3).
/// </summary>
internal static partial class SvgDocument
{
    /// <summary>Characters that entities may come to, in all: programs declare a few dozen short ones.</summary>
    private const long MostFromEntities = 1_000_000;

    /// <summary>Entities within entities within entities: more levels than this are no program's work.</summary>
    private const int DeepestEntity = 8;

    /// <summary>Prefixes that some programs use and forget to declare.</summary>
    private static readonly (string Prefix, string Name)[] KnownPrefixes =
    [
        ("xlink", "http://www.w3.org/1999/xlink"), ("inkscape", "http://www.inkscape.org/namespaces/inkscape"),
        ("sodipodi", "http://sodipodi.sourceforge.net/DTD/sodipodi-0.dtd"), ("serif", "http://www.serif.com/"),
        ("rdf", "http://www.w3.org/1999/02/22-rdf-syntax-ns#"), ("cc", "http://creativecommons.org/ns#"), ("dc", "http://purl.org/dc/elements/1.1/"),
        ("sketch", "http://www.bohemiancoding.com/sketch/ns"), ("i", "http://ns.adobe.com/AdobeIllustrator/10.0/"), ("x", "http://ns.adobe.com/Extensibility/1.0/"),
    ];

    /// <summary>The document; null with a refusal.</summary>
    public static XDocument? Load(byte[] content, DrawingFindings findings)
    {
        var settings = new XmlReaderSettings { DtdProcessing = DtdProcessing.Parse, XmlResolver = null, MaxCharactersFromEntities = MostFromEntities };
        var names = new NameTable();
        var prefixes = new XmlNamespaceManager(names);
        foreach (var (prefix, name) in KnownPrefixes)
            prefixes.AddNamespace(prefix, name);
        try
        {
            using var stream = new MemoryStream(content, writable: false);
            using var reader = XmlReader.Create(stream, settings, new XmlParserContext(names, prefixes, null, XmlSpace.None));
            var document = new XDocument();
            while (reader.Read())
            {
                switch (reader.NodeType)
                {
                    case XmlNodeType.DocumentType:
                        if (Refused(reader.Value, content, findings))
                            return null;
                        break;
                    case XmlNodeType.ProcessingInstruction:
                        document.Add(new XProcessingInstruction(reader.Name, reader.Value));
                        break;
                    case XmlNodeType.Element:
                        using (var inside = reader.ReadSubtree())
                            document.Add(XElement.Load(inside, LoadOptions.SetLineInfo));
                        break;
                }
            }

            return document;
        }
        catch (XmlException e)
        {
            findings.Refuse("svg-damaged", $"The file is not well-formed XML: {e.Message}", "Export the drawing again.", e.LineNumber > 0 ? e.LineNumber : null);
            return null;
        }
    }

    [GeneratedRegex(@"<!ENTITY\s+(?<parameter>%\s+)?(?<name>[^\s%&;]+)\s+(?<value>""[^""]*""|'[^']*'|SYSTEM\b|PUBLIC\b)", RegexOptions.CultureInvariant)]
    private static partial Regex Entity();

    [GeneratedRegex("&(?<name>[^#;&\\s]+);", RegexOptions.CultureInvariant)]
    private static partial Regex Used();

    /// <summary>Whether the document type declares what is not to be read.</summary>
    private static bool Refused(string subset, byte[] content, DrawingFindings findings)
    {
        var values = new Dictionary<string, string>(StringComparer.Ordinal);
        var text = new Lazy<string>(() => System.Text.Encoding.UTF8.GetString(content));
        foreach (Match entity in Entity().Matches(subset))
        {
            var (name, value) = (entity.Groups["name"].Value, entity.Groups["value"].Value);
            var isParameter = entity.Groups["parameter"].Success;
            if (value is "SYSTEM" or "PUBLIC" && (isParameter ? subset.Contains($"%{name};", StringComparison.Ordinal) : text.Value.Contains($"&{name};", StringComparison.Ordinal)))
            {
                findings.Refuse("svg-entity", $"The file uses the entity \"{name}\", which stands in another file; other files are not fetched.", "Export the drawing as one file, or write the text in place of the entity.");
                return true;
            }

            if (!isParameter)
                values.TryAdd(name, value);
        }

        var depths = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (var name in values.Keys)
        {
            if (Depth(name, values, depths, 0) <= DeepestEntity)
                continue;
            findings.Refuse("svg-entity", $"The entity \"{name}\" is made of entities more than {DeepestEntity} deep.", "Export the drawing without entities.");
            return true;
        }

        return false;
    }

    private static int Depth(string name, Dictionary<string, string> values, Dictionary<string, int> depths, int above)
    {
        if (above > DeepestEntity || !values.TryGetValue(name, out var value))
            return 0;
        if (depths.TryGetValue(name, out var known))
            return known;
        var depth = 1;
        foreach (Match used in Used().Matches(value))
            depth = Math.Max(depth, 1 + Depth(used.Groups["name"].Value, values, depths, above + 1));
        return depths[name] = depth;
    }
}
