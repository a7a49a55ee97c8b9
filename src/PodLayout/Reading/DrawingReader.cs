using PodLayout.Findings;
using PodLayout.Reading.Dxf;
using PodLayout.Reading.Rings;

namespace PodLayout.Reading;

/// <summary>Reads a drawing: DXF (ASCII or binary) or SVG.</summary>
public static class DrawingReader
{
    /// <summary>Characters of a layer's name, which stands in findings, results and pictures: DXF itself allows 255.</summary>
    private const int LongestLayerName = 1000;

    /// <summary>
    /// Reads a drawing from its bytes and joins its lines into rings. What cannot become a part (open contours,
    /// crossings, several parts) is still a drawing; <see cref="Parts.PartShaping"/> refuses it.
    /// </summary>
    public static Outcome<Drawing> Read(string fileName, byte[] content, ReadingOptions options)
    {
        var findings = new DrawingFindings(fileName);
        var drawn = FileKinds.Of(content) switch
        {
            FileKind.Dxf => DxfReader.Read(content, options, findings),
            FileKind.Svg => Svg.SvgReader.Read(content, options, findings),
            var other => FileKinds.Refuse(other, content, findings),
        };
        if (drawn is null)
            return Outcome<Drawing>.Refuse(findings.All);
        if (drawn.Paths.IsEmpty)
        {
            findings.Refuse("drawing-empty", "The drawing holds no line or curve that is shown.", "Check that the part's lines are in model space, on layers that are on, and not of a kind that was left out.");
            return Outcome<Drawing>.Refuse(findings.All);
        }

        if (drawn.Paths.FirstOrDefault(p => p.Layer.Length > LongestLayerName) is { } named)
        {
            findings.Refuse("layer-name-too-long", $"A layer's name has {named.Layer.Length} characters; at most {LongestLayerName} are read.", "Give the layer a shorter name in the drawing program.");
            return Outcome<Drawing>.Refuse(findings.All);
        }

        var drawing = RingMaking.Make(drawn, options, findings);
        return findings.HasRefusal ? Outcome<Drawing>.Refuse(findings.All) : Outcome<Drawing>.Of(drawing, findings.All);
    }
}
