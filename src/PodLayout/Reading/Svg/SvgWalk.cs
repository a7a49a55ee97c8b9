using System.Collections.Immutable;
using System.Globalization;
using System.Xml;
using System.Xml.Linq;
using PodLayout.Geometry;
using PodLayout.Reading.Curves;

namespace PodLayout.Reading.Svg;

/// <summary>Goes through the elements of an SVG file and collects what is drawn.</summary>
internal sealed class SvgWalk
{
    private const int MostElements = 1_000_000;

    private readonly XElement _root;
    private readonly double _toleranceMm;
    private readonly SvgShapes _shapes;
    private readonly DrawingFindings _findings;
    private readonly Dictionary<string, XElement> _byId = new(StringComparer.Ordinal);
    private readonly ImmutableArray<DrawnPath>.Builder _paths = ImmutableArray.CreateBuilder<DrawnPath>();
    private readonly SortedDictionary<string, int> _leftOut = new(StringComparer.Ordinal);
    private long _visited;

    public SvgWalk(XElement root, double toleranceMm, double? width, double? height, DrawingFindings findings)
    {
        _root = root;
        _toleranceMm = toleranceMm;
        _findings = findings;
        _shapes = new(width, height, findings);
        foreach (var element in root.DescendantsAndSelf())
        {
            if (element.Attribute("id") is { } id)
                _byId.TryAdd(id.Value, element);
        }
    }

    private sealed record Context(Affine3 ToMm, string Layer, bool Visible, ImmutableList<XElement> Used);

    public ImmutableArray<DrawnPath> Read(Affine3 toMm)
    {
        if (_root.Descendants().Any(e => e.Name.LocalName == "style" && (e.Value.Contains("display", StringComparison.Ordinal) || e.Value.Contains("visibility", StringComparison.Ordinal))))
            _findings.Warn("svg-style-sheet", "The SVG hides elements by a style sheet, which is not read.", "Check what was read, or delete hidden elements.");
        var context = new Context(toMm, "0", true, []);
        Children(_root, Styled(_root, context) ?? context);
        foreach (var (what, count) in _leftOut)
            _findings.Note("svg-left-out", $"Left out: {count} {what}.");
        return _paths.ToImmutable();
    }

    private void LeaveOut(string what) => _leftOut[what] = _leftOut.GetValueOrDefault(what) + 1;

    private static int? LineOf(XElement element) => element is IXmlLineInfo info && info.HasLineInfo() ? info.LineNumber : null;

    private void Children(XElement parent, Context context)
    {
        foreach (var child in parent.Elements())
            Visit(child, context);
    }

    private void Visit(XElement element, Context outer)
    {
        if (_findings.HasRefusal)
            return;
        if (++_visited > MostElements)
        {
            _findings.Refuse("drawing-too-large", $"The drawing draws more than {MostElements} elements.", "Delete what is not the part.", LineOf(element));
            return;
        }

        var name = element.Name.LocalName;
        if (name is "defs" or "symbol" or "clipPath" or "mask" or "pattern" or "marker" or "metadata" or "title" or "desc"
            or "style" or "script" or "linearGradient" or "radialGradient" or "filter" or "namedview" or "view")
            return;
        if (Styled(element, outer) is not { } context)
            return;
        switch (name)
        {
            case "g" or "a" or "switch":
                Children(element, context with { Layer = LayerOf(element) ?? context.Layer });
                break;
            case "svg":
                Children(element, context with { ToMm = context.ToMm.After(_shapes.Nested(element, element)) });
                break;
            case "use":
                Use(element, context);
                break;
            case "path" or "rect" or "circle" or "ellipse" or "line" or "polyline" or "polygon":
                Draw(element, context);
                break;
            default:
                LeaveOut($"{name}, no edge of a part");
                break;
        }
    }

    private static string? LayerOf(XElement group) => group.Name.LocalName != "g" ? null
        : group.Attribute("id")?.Value ?? group.Attribute("class")?.Value.Split(' ', StringSplitOptions.RemoveEmptyEntries).FirstOrDefault();

    /// <summary>The context inside the element; null when it is not shown at all.</summary>
    private Context? Styled(XElement element, Context outer)
    {
        var style = Declarations(element.Attribute("style")?.Value ?? "");
        string? Property(string name) => style.GetValueOrDefault(name) ?? element.Attribute(name)?.Value.Trim();
        if (Property("display") == "none")
        {
            LeaveOut("hidden by display:none");
            return null;
        }

        var visible = Property("visibility") switch
        {
            "hidden" or "collapse" => false,
            "visible" => true,
            _ => outer.Visible,
        };
        var map = outer.ToMm;
        if (Property("transform") is { } text)
        {
            if (SvgTransform.Read(text) is { } transform)
                map = map.After(transform);
            else
                _findings.Refuse("svg-transform", $"The transform \"{text}\" cannot be read.", "Write it as matrix(a b c d e f), or apply it in the drawing program.", LineOf(element));
        }

        return outer with { ToMm = map, Visible = visible };
    }

    private static Dictionary<string, string> Declarations(string style)
    {
        var result = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var declaration in style.Split(';'))
        {
            var colon = declaration.IndexOf(':', StringComparison.Ordinal);
            if (colon > 0)
                result[declaration[..colon].Trim()] = declaration[(colon + 1)..].Replace("!important", "", StringComparison.Ordinal).Trim();
        }

        return result;
    }

    private void Use(XElement use, Context context)
    {
        var reference = (use.Attribute("href") ?? use.Attribute(XName.Get("href", "http://www.w3.org/1999/xlink")))?.Value.Trim() ?? "";
        if (!reference.StartsWith('#') || !_byId.TryGetValue(reference[1..], out var target))
        {
            _findings.Warn("svg-reference", $"The use of \"{reference}\" points to nothing in this file; nothing was drawn for it.", "If it is an edge of the part, unlink it in the drawing program.", LineOf(use));
            return;
        }

        if (context.Used.Contains(target) || use.Ancestors().Contains(target))
        {
            _findings.Refuse("svg-cycle", $"The use of \"{reference}\" draws itself.", "Delete it.", LineOf(use));
            return;
        }

        var inner = context with
        {
            ToMm = context.ToMm.After(Affine3.Move(new(_shapes.Length(use, "x", 0), _shapes.Length(use, "y", 0), 0))),
            Used = context.Used.Add(target),
        };
        if (target.Name.LocalName == "symbol")
        {
            if (Styled(target, inner) is { } styled)
                Children(target, styled with { ToMm = styled.ToMm.After(_shapes.Nested(target, use, moved: true)) });
            return;
        }

        Visit(target, inner);
    }

    private void Draw(XElement element, Context context)
    {
        if (!context.Visible)
        {
            LeaveOut("hidden by visibility");
            return;
        }

        var name = element.Name.LocalName;
        var origin = LineOf(element) is { } line ? string.Create(CultureInfo.InvariantCulture, $"{name} on layer {context.Layer}, line {line}") : name;
        foreach (var subpath in _shapes.Read(element, LineOf(element)).Where(s => !s.IsEmpty))
        {
            var chain = subpath.Chords(context.ToMm, _toleranceMm);
            if (chain.Points.Exists(p => !(Math.Abs(p.X) <= Tolerances.LargestCoordinateMm && Math.Abs(p.Y) <= Tolerances.LargestCoordinateMm)))
            {
                _findings.Refuse(
                    "coordinate-too-large", string.Create(CultureInfo.InvariantCulture, $"{origin} reaches farther from zero than {Tolerances.LargestCoordinateMm:G} mm."),
                    "Delete the element, or check the unit.", LineOf(element));
                return;
            }

            _paths.Add(new(context.Layer, [.. chain.Points.Select(p => new Point2(p.X, p.Y))], chain.Closed, origin));
        }
    }
}
