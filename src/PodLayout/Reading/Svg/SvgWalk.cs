using System.Collections.Immutable;
using System.Globalization;
using System.Xml;
using System.Xml.Linq;
using PodLayout.Findings;
using PodLayout.Geometry;
using PodLayout.Reading.Curves;

namespace PodLayout.Reading.Svg;

/// <summary>Goes through the elements of an SVG file and collects what is seen.</summary>
internal sealed class SvgWalk
{
    private const int MostElements = 1_000_000;

    /// <summary>Elements nested deeper than any drawing program does.</summary>
    private const int DeepestElement = 500;

    private const string SvgNamespace = "http://www.w3.org/2000/svg";

    /// <summary>Geometry that style sheets may set since SVG 2 (section 7.1), and transforms by other names (CSS Transforms 2).</summary>
    private static readonly string[] PlacedByStyle = ["d", "x", "y", "cx", "cy", "r", "rx", "ry", "width", "height", "rotate", "scale", "translate", "offset-path", "all", "content-visibility"];

    private readonly XElement _root;
    private readonly double _toleranceMm;
    private readonly DrawingFindings _findings;
    private readonly StyleSheets _styles;
    private readonly SvgClipPaths _clipPaths;
    private readonly SvgContext _outermost;
    private readonly Dictionary<string, XElement> _byId = new(StringComparer.Ordinal);
    private readonly ImmutableArray<DrawnPath>.Builder _paths = ImmutableArray.CreateBuilder<DrawnPath>();
    private readonly SortedDictionary<string, int> _leftOut = new(StringComparer.Ordinal);
    private readonly SvgPage? _page;
    private long _visited;
    private int _closedByFill;

    public SvgWalk(XElement root, Affine3 toMm, double toleranceMm, double? width, double? height, DrawingFindings findings)
    {
        _root = root;
        _toleranceMm = toleranceMm;
        _findings = findings;
        _styles = StyleSheets.Read(root, findings);
        foreach (var element in root.DescendantsAndSelf())
        {
            if (element.Attribute("id") is { } id)
                _byId.TryAdd(id.Value, element);
        }

        _page = SvgPage.Of(root, toMm, width, height);
        _clipPaths = new(_byId, _styles, toleranceMm);
        _outermost = new(toMm, SvgLayerName.None, SvgPaint.Initial, new(width, height, findings), [], null, [], 0);
    }

    public ImmutableArray<DrawnPath> Read()
    {
        if (!_findings.HasRefusal && Styled(_root, _outermost, isRoot: true) is { } context)
            Children(_root, context);
        foreach (var (what, count) in _leftOut)
            _findings.Note("svg-left-out", $"Left out: {count} {what}.");
        if (_closedByFill > 0)
            _findings.Note("svg-closed-by-fill", $"{Counted.Of(_closedByFill, "open line")} filled without a stroke {(_closedByFill == 1 ? "was" : "were")} closed, as SVG shows {(_closedByFill == 1 ? "it" : "them")} (SVG 2, section 13.4).");
        return _paths.ToImmutable();
    }

    private void LeaveOut(string what) => _leftOut[what] = _leftOut.GetValueOrDefault(what) + 1;

    private static int? LineOf(XElement element) => element is IXmlLineInfo info && info.HasLineInfo() ? info.LineNumber : null;

    private void Children(XElement parent, SvgContext context)
    {
        foreach (var child in parent.Elements())
            Visit(child, context with { Depth = context.Depth + 1 });
    }

    private void Visit(XElement element, SvgContext outer)
    {
        if (_findings.HasRefusal)
            return;
        if (++_visited > MostElements || outer.Depth > DeepestElement)
        {
            _findings.Refuse(
                "drawing-too-large", _visited > MostElements ? $"The drawing draws more than {MostElements} elements." : $"Elements are nested deeper than {DeepestElement}.",
                "Delete what is not the part.", LineOf(element));
            return;
        }

        // Elements of other namespaces are other programs' data and are not shown (SVG 2, section 5.1).
        var name = element.Name.LocalName;
        if (element.Name.NamespaceName is not ("" or SvgNamespace) || name is "defs" or "symbol" or "clipPath" or "mask" or "pattern" or "marker" or "metadata"
            or "title" or "desc" or "style" or "script" or "linearGradient" or "radialGradient" or "filter" or "namedview" or "view" or "hatch" or "cursor"
            or "animate" or "animateTransform" or "animateMotion" or "set" or "font" or "font-face" or "color-profile" or "solidColor" or "link")
            return;
        if (!Applies(element) || Styled(element, outer, isRoot: false) is not { } context)
            return;
        switch (name)
        {
            case "g" or "a":
                Children(element, context with { Layer = context.Layer.Inside(element) });
                break;
            case "switch":
                if (element.Elements().FirstOrDefault(e => e.Name.NamespaceName is "" or SvgNamespace && Applies(e, isQuiet: true)) is { } first)
                    Visit(first, context with { Depth = context.Depth + 1 });
                break;
            case "svg":
                if (context.Shapes.Nested(context, element, null, IsOpen(element)) is { } inside)
                    Children(element, inside);
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

    /// <summary>Conditional processing (SVG 2, section 5.9): extensions are not known here; whether a language fits cannot be said.</summary>
    private bool Applies(XElement element, bool isQuiet = false)
    {
        if (element.Attribute("requiredExtensions") is { } extensions)
        {
            if (!isQuiet)
                LeaveOut($"{element.Name.LocalName} for a program with {(extensions.Value.Length > 40 ? "certain" : extensions.Value)} extensions");
            return false;
        }

        if (element.Attribute("systemLanguage") is { } language && element.DescendantsAndSelf().Any(e => e.Name.LocalName is "path" or "rect" or "circle" or "ellipse" or "line" or "polyline" or "polygon" or "use"))
            _findings.Refuse("svg-language", $"{element.Name.LocalName} is drawn for readers of \"{language.Value}\" only; whether it is meant cannot be told.", "Delete the attribute systemLanguage, or the element.", LineOf(element));
        return true;
    }

    /// <summary>The context inside the element; null when it is not shown at all.</summary>
    private SvgContext? Styled(XElement element, SvgContext outer, bool isRoot)
    {
        var declared = _styles.Of(element);
        string? Property(string name) => declared.TryGetValue(name, out var value) ? value.Value : element.Attribute(name)?.Value.Trim();
        if (Property("display")?.Equals("none", StringComparison.OrdinalIgnoreCase) == true)
        {
            LeaveOut("hidden by display:none");
            return null;
        }

        if (declared.Values.Any(v => v.Value.Contains("var(", StringComparison.OrdinalIgnoreCase)))
            RefuseStyle(element, declared.First(d => d.Value.Value.Contains("var(", StringComparison.OrdinalIgnoreCase)));
        foreach (var placed in isRoot ? [] : declared.Where(d => PlacedByStyle.Contains(d.Key, StringComparer.OrdinalIgnoreCase) && d.Value.Value is not ("auto" or "none" or "initial")))
            RefuseStyle(element, placed);
        return outer with
        {
            ToMm = outer.ToMm.After(TransformOf(element, Property)),
            Paint = outer.Paint.With(Property),
        } is var inner ? Clipped(element, inner, Property) : null;
    }

    private void RefuseStyle(XElement element, KeyValuePair<string, StyleSheets.Declared> declaration) => _findings.Refuse(
        "svg-style", $"{Described(element)} is styled by \"{declaration.Key}: {declaration.Value.Value}\", which is not read: it may hide or move lines.",
        "Save it as plain SVG with presentation attributes (no style sheet).", LineOf(element));

    private static string Described(XElement element) =>
        element.Attribute("id") is { } id ? $"{element.Name.LocalName} \"{id.Value}\"" : $"A {element.Name.LocalName}";

    private Affine3 TransformOf(XElement element, Func<string, string?> property)
    {
        if (property("transform") is not { } text || text.Length == 0)
            return Affine3.Identity;
        if (SvgTransform.Read(text) is not { } transform)
        {
            _findings.Refuse("svg-transform", $"The transform \"{text}\" cannot be read.", "Write it as matrix(a b c d e f), or apply it in the drawing program.", LineOf(element));
            return Affine3.Identity;
        }

        if (property("transform-box") is { } box && box is not "view-box")
            _findings.Refuse("svg-transform", $"{Described(element)} is transformed about its {box}, which is not read.", "Apply the transform in the drawing program.", LineOf(element));
        if (property("transform-origin") is not { } origin || origin.Length == 0)
            return transform;
        // Two lengths (CSS Transforms 1, section 6); words and percentages depend on boxes that are not built here.
        if (SvgTransform.Numbers(origin) is not { Length: 2 or 3 } at)
        {
            _findings.Refuse("svg-transform", $"The transform-origin \"{origin}\" cannot be read.", "Apply the transform in the drawing program.", LineOf(element));
            return transform;
        }

        return Affine3.Move(new(at[0], at[1], 0)).After(transform).After(Affine3.Move(new(-at[0], -at[1], 0)));
    }

    private SvgContext Clipped(XElement element, SvgContext context, Func<string, string?> property)
    {
        if ((property("mask") ?? property("mask-image")) is { } mask && mask is not ("none" or "" or "initial" or "inherit" or "unset"))
            return context with { Veil = $"the mask {mask}" };
        if (property("clip-path") is not { } clip || clip is "none" or "" or "initial" or "inherit" or "unset")
            return context;
        var (clips, unread) = _clipPaths.Of(clip, context);
        return context with { Clips = context.Clips.AddRange(clips), Veil = context.Veil ?? unread };
    }

    private bool IsOpen(XElement element) =>
        ((_styles.Of(element).TryGetValue("overflow", out var declared) ? declared.Value : null) ?? element.Attribute("overflow")?.Value)?.Trim() is "visible" or "auto";

    private void Use(XElement use, SvgContext context)
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
            ToMm = context.ToMm.After(Affine3.Move(new(context.Shapes.Length(use, "x", 0), context.Shapes.Length(use, "y", 0), 0))),
            Used = context.Used.Add(target),
            Depth = context.Depth + 1,
        };
        if (target.Name.LocalName is not ("symbol" or "svg"))
        {
            Visit(target, inner);
        }
        else if (Styled(target, inner, isRoot: false) is { } styled && styled.Shapes.Nested(styled, target, use, IsOpen(target)) is { } inside)
        {
            Children(target, inside);
        }
    }

    private void Draw(XElement element, SvgContext context)
    {
        var name = element.Name.LocalName;
        if (!context.Paint.IsVisible || !context.Paint.IsOpaque)
        {
            LeaveOut(context.Paint.IsVisible ? "hidden by opacity 0" : "hidden by visibility");
            return;
        }

        if (!context.Paint.ShowsStroke && (!context.Paint.ShowsFill || name == "line"))
        {
            LeaveOut($"{name} without fill and stroke, which is not seen");
            return;
        }

        var origin = LineOf(element) is { } line ? string.Create(CultureInfo.InvariantCulture, $"{name} on layer {context.Layer.Text}, line {line}") : name;
        foreach (var subpath in context.Shapes.Read(element, LineOf(element)).Where(s => !s.IsEmpty))
        {
            if (_findings.HasRefusal)
                return;
            if (!context.Paint.ShowsStroke && !subpath.IsClosed)
            {
                // The fill closes what is open, and nothing else is seen of it.
                _closedByFill++;
                subpath.Close();
            }

            var chain = subpath.Chords(context.ToMm, _toleranceMm);
            if (chain.Points.Exists(p => !(Math.Abs(p.X) <= Tolerances.LargestCoordinateMm && Math.Abs(p.Y) <= Tolerances.LargestCoordinateMm)))
            {
                _findings.Refuse(
                    "coordinate-too-large", string.Create(CultureInfo.InvariantCulture, $"{origin} reaches farther from zero than {Tolerances.LargestCoordinateMm:G} mm."),
                    "Delete the element, or check the unit.", LineOf(element));
                return;
            }

            if (IsSeen(element, chain, context))
                _paths.Add(new(context.Layer.Text, [.. chain.Points.Select(p => new Point2(p.X, p.Y))], chain.Closed, origin)
                {
                    CoversPage = !context.Paint.ShowsStroke && _page?.IsCoveredBy(chain) == true,
                    CurveAreaMm2 = chain.Excess.AreaMm2,
                    CurveLengthMm = chain.Excess.LengthMm,
                });
        }
    }

    private bool IsSeen(XElement element, Chain chain, SvgContext context)
    {
        if (context.Clips.Exists(c => c.Shows(chain.Points) == false))
        {
            LeaveOut("outside what it is clipped to");
            return false;
        }

        if ((context.Veil ?? context.Clips.Find(c => c.Shows(chain.Points) is null)?.Name) is not { } veil)
            return true;
        _findings.Refuse(
            "svg-clip", $"{Described(element)} on layer {context.Layer.Text} is partly hidden by {veil}; what is left of it is not worked out.",
            "Cut the line there in the drawing program and release the clip or mask.", LineOf(element));
        return false;
    }
}
