using System.Globalization;
using System.Text;
using PodLayout.Findings;
using PodLayout.Geometry;
using PodLayout.Parts;
using PodLayout.Reading;

namespace PodLayout.Cli;

/// <summary>What was read from a drawing and what would be planned of it, for a person; in inches where it is drawn in inches.</summary>
internal static class DrawingSummary
{
    public static string Of(Drawing drawing, DrawnPart part)
    {
        StringBuilder text = new();
        var l = drawing.Lengths;
        Line($"{drawing.FileName}: {drawing.Format}");
        Line($"Unit: {drawing.UnitName} (1 drawing unit = {drawing.MmPerUnit:0.#########} mm); ends joined up to {drawing.JoinGapMm:0.####} mm");
        Line($"Closed rings: {drawing.Rings.Length}");
        for (var i = 0; i < drawing.Rings.Length; i++)
        {
            var ring = drawing.Rings[i];
            Line($"  {i + 1,3}  {Meaning(part, i)}: area {l.Area(ring.TrueAreaMm2)}, perimeter {l.Length(ring.TrueLengthMm)}, {Counted.Of(ring.Ring.Points.Length, "point")}, layer {ring.Layer}");
            Line($"       {Extent(ring.Ring.Bounds)}");
        }

        Line($"Open contours: {drawing.OpenContours.Length}");
        foreach (var open in drawing.OpenContours)
        {
            var (from, to) = (open.Points[0], open.Points[^1]);
            Line($"       from {l.At(from)} to {l.At(to)} {l.Unit}, ends {l.Length((to - from).Length)} apart, layer {open.Layer}");
        }

        foreach (var branch in drawing.Branches)
        {
            Line($"{branch.Ends} line ends meet at {l.At(branch.Point)} {l.Unit}, layer {branch.Layer}");
        }

        Line($"Layers: {drawing.Layers.Length}");
        foreach (var layer in drawing.Layers)
        {
            Line($"       {layer.Name}: {Counted.Of(layer.Pieces, "piece")}, {Counted.Of(layer.Rings, "ring")}, {layer.OpenContours} open{(layer.LeftOut ? ", left out (frozen or off)" : "")}");
        }

        Parts();
        return text.ToString();

        void Parts()
        {
            if (part.Candidates.Length > 1)
            {
                Line($"Parts to choose from with --part: {part.Candidates.Length}");
                foreach (var candidate in part.Candidates)
                {
                    Line($"  {candidate.Number,3}  {Extent(candidate.Outline.Bounds)}, layer {candidate.Layer}, {Counted.Of(candidate.Holes.Length, "hole")}");
                }
            }

            if (part.Shape.Value is { } shape)
            {
                // The curves' own areas, where a ring of the drawing is an edge of the part.
                double Area(RingMeaning meaning) => drawing.Rings.Where((_, i) => part.Meanings[i] == meaning).Sum(r => r.TrueAreaMm2);
                Line($"Part: {l.Size(shape.Outline.Bounds)}, area {l.Area(Area(RingMeaning.Outline) - Area(RingMeaning.Hole))}, {Counted.Of(shape.Holes.Length, "hole")}{(shape.Defects.IsEmpty ? "" : ", " + Counted.Of(shape.Defects.Length, "defect"))}");
            }
            else
            {
                Line($"Part: none; plan refuses this drawing");
            }
        }

        string Extent(Box2 box) => $"from {l.At(new(box.MinX, box.MinY))} to {l.At(new(box.MaxX, box.MaxY))} {l.Unit}: {l.Number(box.Width)} x {l.Number(box.Height)} {l.Unit}";

        void Line(FormattableString line) => text.Append(line.ToString(CultureInfo.InvariantCulture)).Append('\n');
    }

    private static string Meaning(DrawnPart part, int ring) => part.Meanings[ring] switch
    {
        RingMeaning.Outline => "outline",
        RingMeaning.Hole => "hole",
        RingMeaning.Defect => "defect",
        RingMeaning.Cut => "cut",
        _ => part.Shape.Succeeded ? "left out" : "ring",
    };
}
