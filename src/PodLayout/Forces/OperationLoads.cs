using PodLayout.Cuts;
using PodLayout.Geometry;
using PodLayout.Jobs;
using PodLayout.Parts;
using PodLayout.Reading;

namespace PodLayout.Forces;

/// <summary>The loads of cuts by operation.</summary>
internal static class OperationLoads
{
    /// <summary>Adds the loads of an operation; whether it cuts at all while the part lies on its pods.</summary>
    /// <param name="operation">The operation.</param>
    /// <param name="common">The cutter for all that say nothing else; null for nothing.</param>
    /// <param name="drawing">The drawing.</param>
    /// <param name="part">The part.</param>
    /// <param name="lowestTipMm">A tip lower than this above the underside goes through.</param>
    /// <param name="loads">Where they go.</param>
    public static bool Add(CutOperation operation, CutterSetup? common, Drawing drawing, Part part, double lowestTipMm, LoadGathering loads)
    {
        // What is in the underside, and defects, were there before the part was put down.
        if (operation.Kind is not (CutKind.ThroughProfile or CutKind.Drill or CutKind.PocketFromFace or CutKind.EdgeProfile))
        {
            return false;
        }

        var lines = CutPaths.Lines(operation.Lines, drawing, part.Shape);
        var setup = (operation.Cutter ?? new CutterSetup(operation.Path)).Over(common);
        var own = operation.ToolDiameterMm > 0 ? operation.ToolDiameterMm : operation.DiameterMm;
        CutterCut cut = new(setup, own ?? setup.DiameterMm ?? CutterCut.UsualDiameterMm, part);
        var name = operation.Name ?? CutPaths.NameOf(operation.Kind);
        var pass = loads.Begin(name, $"{operation.Path}: {cut.Words}", cut.IsWorkedOut);
        loads.Assume(cut.Assumed(fromProgram: false));

        // Deeper passes push lower down, where the same force tips less: what holds against the first holds against them.
        var depth = Math.Min(cut.PassDepthMm, part.ThicknessMm - Math.Max(0, operation.LowestTipMm));
        if (depth <= 0)
        {
            return true;
        }

        var height = part.ThicknessMm - depth / 2;
        if (operation.Kind == CutKind.Drill)
        {
            foreach (var line in lines)
            {
                loads.Add(pass, new Ring(line.Points).Bounds.Centre, height, Drilled(operation, own, setup, line, part), 0);
            }

            return true;
        }

        foreach (var (way, finished) in Ways(operation, lines, cut.DiameterMm / 2))
        {
            var frees = operation.Kind == CutKind.ThroughProfile && operation.LowestTipMm < lowestTipMm;
            Follow(way, finished, operation.Kind == CutKind.PocketFromFace, cut, depth, height, frees, pass, loads);
        }

        return true;
    }

    // A ring without a diameter is drilled as wide as it is drawn.
    private static CutForces Drilled(CutOperation operation, double? diameterMm, CutterSetup setup, CutLine line, Part part)
    {
        var box = new Ring(line.Points).Bounds;
        CutterCut drill = new(setup, diameterMm ?? Math.Max(box.Width, box.Height), part);
        return drill.Down(drill.ChipMm(drill.FeedMmPerMin, drill.SpindleRpm));
    }

    private static IEnumerable<(CutLine Line, int FinishedSide)> Ways(CutOperation operation, IReadOnlyList<CutLine> lines, double radius)
    {
        switch (operation.Kind)
        {
            case CutKind.PocketFromFace:
                // What is cleared within pushes no farther out than its rim does, and in the same directions: a force in the
                // middle is the mean of such forces on the rim, and what holds against these holds against it.
                return CutPaths.Centres(lines, CutSide.Inside, radius);
            case CutKind.EdgeProfile:
                // Beside holes the tool runs inside, about the outline outside; open lines are followed as drawn.
                var side = operation.Lines is CutLines.Holes ? CutSide.Inside : CutSide.Outside;
                return lines.SelectMany(line => CutPaths.Centres([line], line.IsClosed ? side : CutSide.On, radius));
            default:
                return CutPaths.Centres(lines, operation.Side, radius);
        }
    }

    private static void Follow(
        CutLine way, int finished, bool anyDirection, CutterCut cut, double depth, double height, bool frees, int pass, LoadGathering loads)
    {
        var chip = cut.ChipMm(cut.FeedMmPerMin, cut.SpindleRpm);
        var count = way.IsClosed ? way.Points.Length : way.Points.Length - 1;
        for (var i = 0; i < count; i++)
        {
            Point2 from = way.Points[i], to = way.Points[(i + 1) % way.Points.Length], step = to - from;
            if (step.Length == 0)
            {
                continue;
            }

            var forces = anyDirection ? cut.Along(null, 0, chip, depth) : cut.Profiled(step * (1 / step.Length), finished, chip, depth);
            var pieces = Math.Max(1, (int)Math.Ceiling(step.Length / LoadGathering.StepMm));
            for (var k = 0; k <= pieces; k++)
            {
                var at = from + step * ((double)k / pieces);
                loads.Add(pass, at, height, forces, depth);
                if (frees)
                {
                    // The last layer is at most as thick as a pass.
                    loads.AddFreeing(pass, at, cut.DiameterMm / 2, depth / 2, forces, depth);
                }
            }
        }
    }
}
