using System.Globalization;
using System.Text;
using PodLayout.Reading;

namespace PodLayout.Cli;

/// <summary>What was read from a drawing, for a person.</summary>
internal static class DrawingSummary
{
    public static string Of(Drawing drawing)
    {
        StringBuilder text = new();
        Line($"{drawing.FileName}: {drawing.Format}");
        Line($"Unit: {drawing.UnitName} (1 drawing unit = {drawing.MmPerUnit:0.#########} mm); ends joined up to {drawing.JoinGapMm:0.####} mm");
        Line($"Closed rings: {drawing.Rings.Length}");
        for (var i = 0; i < drawing.Rings.Length; i++)
        {
            var (layer, ring) = drawing.Rings[i];
            var box = ring.Bounds;
            Line($"  {i + 1,3}  area {ring.AreaMm2:0.0} mm2, perimeter {ring.PerimeterMm:0.00} mm, {ring.Points.Length} points, layer {layer}");
            Line($"       from ({box.MinX:0.###}, {box.MinY:0.###}) to ({box.MaxX:0.###}, {box.MaxY:0.###}) mm: {box.Width:0.###} x {box.Height:0.###} mm");
        }

        Line($"Open contours: {drawing.OpenContours.Length}");
        foreach (var open in drawing.OpenContours)
        {
            var (from, to) = (open.Points[0], open.Points[^1]);
            Line($"       from ({from.X:0.###}, {from.Y:0.###}) to ({to.X:0.###}, {to.Y:0.###}) mm, ends {(to - from).Length:0.###} mm apart, layer {open.Layer}");
        }

        foreach (var branch in drawing.Branches)
        {
            Line($"{branch.Ends} line ends meet at ({branch.Point.X:0.###}, {branch.Point.Y:0.###}) mm, layer {branch.Layer}");
        }

        Line($"Layers: {drawing.Layers.Length}");
        foreach (var layer in drawing.Layers)
        {
            Line($"       {layer.Name}: {layer.Pieces} pieces, {layer.Rings} rings, {layer.OpenContours} open{(layer.LeftOut ? ", left out (frozen or off)" : "")}");
        }

        return text.ToString();

        void Line(FormattableString line) => text.Append(line.ToString(CultureInfo.InvariantCulture)).Append('\n');
    }
}
