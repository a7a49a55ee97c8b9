using System.Collections.Immutable;
using System.Xml.Linq;
using PodLayout.Reading.Curves;

namespace PodLayout.Reading.Svg;

/// <summary>Finds what a clip-path property stands for (SVG 1.1, section 14.3.5; CSS Masking 1, section 5).</summary>
internal sealed class SvgClipPaths(IReadOnlyDictionary<string, XElement> byId, StyleSheets styles, double toleranceMm)
{
    /// <summary>The regions to which is clipped; or the name of what is not resolved.</summary>
    public (ImmutableArray<SvgClip> Clips, string? Unread) Of(string value, SvgContext context)
    {
        var id = Reference(value);
        if (id is null)
            return ([], $"the clip-path {value}");
        // A reference to nothing clips nothing (CSS Masking 1, section 5.1).
        if (!byId.TryGetValue(id, out var clipPath) || clipPath.Name.LocalName != "clipPath")
            return ([], null);
        var name = $"the clip path \"{id}\"";
        var isPlain = clipPath.Attribute("clipPathUnits")?.Value.Trim() is null or "userSpaceOnUse" && !Says(clipPath, "clip-path");
        var shapes = clipPath.Elements().Where(e => e.Name.LocalName is not ("title" or "desc" or "metadata")).ToList();
        if (!isPlain || shapes is not [var shape])
            return ([], name);
        var used = Affine3.Identity;
        if (shape.Name.LocalName == "use")
        {
            // Some programs keep the shape apart and clip to a use of it.
            if (Transform(shape) is not { } moved || Says(shape, "clip-path") || Target(shape) is not { } target)
                return ([], name);
            used = moved.After(Affine3.Move(new(context.Shapes.Length(shape, "x", 0), context.Shapes.Length(shape, "y", 0), 0)));
            shape = target;
        }

        if (shape.Name.LocalName is not ("path" or "rect" or "circle" or "ellipse" or "polygon")
            || Says(shape, "clip-path") || Says(shape, "display") || Says(shape, "visibility"))
            return ([], name);
        if (Transform(clipPath) is not { } outer || Transform(shape) is not { } inner)
            return ([], name);
        var map = context.ToMm.After(outer).After(used).After(inner);
        var outlines = context.Shapes.Read(shape, null).Where(s => !s.IsEmpty).ToList();
        return outlines is [var outline] && SvgClip.Of(name, outline.Chords(map, toleranceMm).Points) is { } clip ? ([clip], null) : ([], name);
    }

    private XElement? Target(XElement use)
    {
        var reference = (use.Attribute("href") ?? use.Attribute(XName.Get("href", "http://www.w3.org/1999/xlink")))?.Value.Trim() ?? "";
        return reference.StartsWith('#') ? byId.GetValueOrDefault(reference[1..]) : null;
    }

    private static string? Reference(string value)
    {
        var text = value.Trim();
        if (!text.StartsWith("url(", StringComparison.OrdinalIgnoreCase) || !text.EndsWith(')'))
            return null;
        var inner = text[4..^1].Trim().Trim('"', '\'').Trim();
        return inner.StartsWith('#') ? inner[1..] : null;
    }

    private bool Says(XElement element, string property) => Property(element, property) is not (null or "none" or "inline" or "visible");

    private string? Property(XElement element, string property) =>
        (styles.Of(element).TryGetValue(property, out var declared) ? declared.Value : null) ?? element.Attribute(property)?.Value.Trim();

    private Affine3? Transform(XElement element) =>
        Property(element, "transform-origin") is not null ? null : Property(element, "transform") is { Length: > 0 } text ? SvgTransform.Read(text) : Affine3.Identity;
}
