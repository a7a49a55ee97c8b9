using PodLayout.Findings;
using PodLayout.Reading.Dxf;
using PodLayout.Reading.Rings;

namespace PodLayout.Reading;

/// <summary>Reads a drawing: DXF (ASCII or binary) or SVG.</summary>
public static class DrawingReader
{
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

        var drawing = RingMaking.Make(drawn, options, findings);
        return findings.HasRefusal ? Outcome<Drawing>.Refuse(findings.All) : Outcome<Drawing>.Of(drawing, findings.All);
    }
}
