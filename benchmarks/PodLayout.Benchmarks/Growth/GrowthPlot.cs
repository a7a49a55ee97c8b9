using System.Collections.Immutable;
using System.Globalization;
using PodLayout.Geometry;
using PodLayout.Handover.Picture;

namespace PodLayout.Benchmarks.Growth;

/// <summary>The series as a picture: one panel each, both axes logarithmic, a mark for each run and a legend of marks.</summary>
internal static class GrowthPlot
{
    private const double PanelMm = 78, GapMm = 30, TopMm = 16, LowMm = 30, TypeMm = 3.2;

    private static readonly ImmutableArray<(string Name, string Style, double RadiusMm, Func<GrowthPoint, double?> Figure)> Figures =
    [
        ("pods", "pod-turned", 1.1, p => p.Pods),
        ("seats", "port-plugged", 1.1, p => p.Seats),
        ("processor time, ms", "worst-label", 1.1, p => p.ProcessorMs),
    ];

    private static readonly ImmutableArray<string> Lines = ["part-edge", "usable", "limit"];

    /// <summary>The picture.</summary>
    public static Sheet Of(ImmutableArray<GrowthSeries> series)
    {
        var shapes = ImmutableArray.CreateBuilder<Primitive>();
        var (low, high) = Decades(series.SelectMany(s => s.Points.Where(p => p.IsProven).SelectMany(p => Figures.Select(f => f.Figure(p)))));
        for (var i = 0; i < series.Length; i++)
        {
            Panel(shapes, series[i], new(GapMm + i * (PanelMm + GapMm), LowMm), low, high);
        }

        for (var f = 0; f < Figures.Length; f++)
        {
            var at = new Point2(GapMm + f * 60, 7);
            shapes.Add(new Primitive.Line(Lines[f], [at, at + new Point2(12, 0)]));
            shapes.Add(new Primitive.Disc(Figures[f].Style, at + new Point2(6, 0), Figures[f].RadiusMm));
            shapes.Add(new Primitive.Text("text", at + new Point2(15, 0), Figures[f].Name, TypeMm, TextAnchor.Start));
        }

        shapes.Add(new Primitive.Text("text", new(GapMm + Figures.Length * 60, 7), "^n  fitted exponent", TypeMm, TextAnchor.Start));
        var page = new Box2(0, 0, GapMm / 2 + series.Length * (PanelMm + GapMm), LowMm + PanelMm + TopMm);
        shapes.Insert(0, new Primitive.Area("paper", [new([new(0, 0), new(page.MaxX, 0), new(page.MaxX, page.MaxY), new(0, page.MaxY)])]));
        return new(
            "How it grows", "Pods, seats and processor time against the area of the part, the pitch and the number of edge points, on logarithmic axes.",
            page, 1, [new("growth", shapes.ToImmutable())]);
    }

    private static void Panel(ImmutableArray<Primitive>.Builder shapes, GrowthSeries series, Point2 corner, int low, int high)
    {
        var proven = series.Points.Where(p => p.IsProven).OrderBy(p => p.X).ToArray();
        if (proven.Length == 0)
        {
            return;
        }

        double from = Math.Log10(proven[0].X) - 0.08, to = Math.Log10(proven[^1].X) + 0.08;
        Point2 At(double x, double y) => corner + new Point2(
            (Math.Log10(x) - from) / (to - from) * PanelMm, (Math.Log10(y) - low) / (high - low) * PanelMm);
        for (var decade = low; decade <= high; decade++)
        {
            var y = corner.Y + (double)(decade - low) / (high - low) * PanelMm;
            shapes.Add(new Primitive.Line("groove-fifth", [new(corner.X, y), new(corner.X + PanelMm, y)]));
            shapes.Add(new Primitive.Text("text", new(corner.X - 2, y), Math.Pow(10, decade).ToString("0.###", CultureInfo.InvariantCulture), TypeMm, TextAnchor.End));
        }

        foreach (var p in proven)
        {
            var foot = new Point2(At(p.X, 1).X, corner.Y);
            shapes.Add(new Primitive.Line("rule", [foot, foot - new Point2(0, 1.5)]));
            shapes.Add(new Primitive.Text("text", foot - new Point2(0, 3), p.X.ToString("0.##", CultureInfo.InvariantCulture), TypeMm, TextAnchor.End, 60));
        }

        shapes.Add(new Primitive.Line("rule", [corner + new Point2(0, PanelMm), corner, corner + new Point2(PanelMm, 0)]));
        shapes.Add(new Primitive.Text("text-bold", corner + new Point2(PanelMm / 2, PanelMm + 8), series.Against, TypeMm, TextAnchor.Middle));
        List<(double Y, string Words)> exponents = [];
        for (var f = 0; f < Figures.Length; f++)
        {
            var figure = Figures[f];
            ImmutableArray<Point2> marks = [.. proven.Where(p => figure.Figure(p) > 0).Select(p => At(p.X, figure.Figure(p)!.Value))];
            if (marks.Length > 1)
            {
                shapes.Add(new Primitive.Line(Lines[f], marks));
            }

            shapes.AddRange(marks.Select(m => new Primitive.Disc(figure.Style, m, figure.RadiusMm)));
            if (series.Exponent(figure.Figure) is { } exponent && marks.Length > 1)
            {
                exponents.Add((marks[^1].Y, "^" + (Math.Round(exponent, 1) + 0.0).ToString("0.0", CultureInfo.InvariantCulture)));
            }
        }

        Exponents(shapes, corner.X + PanelMm + 1.5, exponents);
    }

    // Beyond the lines of the grid, each at the height of its last mark or as near to it as the others allow.
    private static void Exponents(ImmutableArray<Primitive>.Builder shapes, double x, List<(double Y, string Words)> exponents)
    {
        var below = double.NegativeInfinity;
        foreach (var (y, words) in exponents.OrderBy(e => e.Y))
        {
            below = Math.Max(y, below + 1.25 * TypeMm);
            shapes.Add(new Primitive.Text("text", new(x, below), words, TypeMm, TextAnchor.Start));
        }
    }

    private static (int Low, int High) Decades(IEnumerable<double?> values)
    {
        var known = values.Where(v => v > 0).Select(v => Math.Log10(v!.Value)).DefaultIfEmpty(0).ToArray();
        return ((int)Math.Floor(known.Min()), Math.Max((int)Math.Floor(known.Min()) + 1, (int)Math.Ceiling(known.Max())));
    }
}
