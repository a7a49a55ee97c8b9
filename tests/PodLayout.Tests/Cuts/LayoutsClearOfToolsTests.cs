using System.Globalization;
using System.Text;
using FsCheck;
using FsCheck.Fluent;
using PodLayout.Cuts;
using PodLayout.Jobs;
using PodLayout.Programs;
using PodLayout.Reading;
using PodLayout.Shops;
using PodLayout.Tests.Independent;
using PodLayout.Tests.Programs;

namespace PodLayout.Tests.Cuts;

public class LayoutsClearOfToolsTests
{
    private const double Thickness = 30;

    private static int _laid;

    // Parts, pods, angles and programs at random: lines, ramps, helices and drilled holes, some of them under the edge.
    [Fact]
    public void No_point_of_any_pod_comes_within_the_clearance_of_a_low_tool_in_any_layout()
    {
        _laid = 0;
        Prop.ForAll(Gen.Choose(0, 10_000_000).ToArbitrary(), Check).Check(
            Config.QuickThrowOnFailure.WithMaxTest(40).WithReplay(new Replay(new Rnd(43, 9), null)));
        Assert.True(_laid >= 25, $"{_laid} layouts");
    }

    private static void Check(int seed)
    {
        var random = new System.Random(seed);
        var outline = Shapes.Wavy(
            260, 0.7 + 0.3 * random.NextDouble(), [(3, 0.1 * random.NextDouble(), 6 * random.NextDouble())], 90);
        var tools = Posted.Tools(new Tool(1, 12, new CutterForm.Flat()), new Tool(2, 5, new CutterForm.Flat()));
        var path = Posted.Read(Moves(random)).Value!;
        PodType pod = random.Next(2) == 0 ? Shapes.Pod(60, 60) : Shapes.Pod(60, 60) with { Footprint = new PodFootprint.Round(60) };
        var angle = random.Next(4) * 17.0;
        var job = Shapes.JobFor(
            new(outline, [], []), Shapes.Board(720, 720, portSpacing: 60), [pod with { SealInsetAboveMm = 5 }, Shapes.Pod(30, 30)], 110,
            placement: new PlacementWish.Search([angle]));
        Drawing drawing = new("part.dxf", "DXF", "millimetre", 1, 0.05, [new("PART", outline)], [], [], []);
        var cuts = new CutRequest([], new("part.nc", tools, ZZero.PartFace, default, null, false), 0.1, 2, new(null, 90, 700) { HoldOverKg = 1 });
        var outcome = Cutting.Apply(job, drawing, cuts, path, "job.json");
        Assert.True(outcome.Succeeded, outcome.Refusal?.ToString());
        var result = Planning.Plan(outcome.Value, new Effort(2, TimeSpan.FromSeconds(20)), null, TestContext.Current.CancellationToken);
        if (result.Layout is not { } layout)
        {
            return;
        }

        _laid++;
        var low = ToolPositions.Below(path, tools, -Thickness + 0.1, 0.25);
        Assert.NotEmpty(low);
        var least = ToolPositions.LeastClearance(layout, low);
        Assert.True(least >= job.Margins.CutClearanceMm - Tolerances.ContactMm - 1e-3, $"seed {seed}: {least} mm");
        Assert.Empty(LayoutChecker.Check(result).Violations);
    }

    private static string Moves(System.Random random)
    {
        var text = new StringBuilder("G21 G90 G17\nT1 M6\nM3 F1000\nG0 X0 Y0 Z5\n");
        for (var i = 0; i < 7; i++)
        {
            double x = random.Next(-300, 300), y = random.Next(-260, 260), z = -Thickness - 2 + 5 * random.NextDouble();
            text.Append(random.Next(5) switch
            {
                0 => Text($"G0 Z5\nX{x} Y{y}\nG1 Z-28\nG2 I{random.Next(4, 20)} Z{z - 1:0.00}\n"),
                1 => Text($"G0 Z5\nG81 X{x} Y{y} Z{-Thickness - 1} R2\nG80\n"),
                2 => Text($"G0 Z5\nT{random.Next(1, 3)} M6\nX{x} Y{y}\nG1 Z{z:0.00}\nX{x + random.Next(-90, 90)} Y{y + random.Next(-90, 90)} Z{z - 1.5:0.00}\nG0 Z5\n"),
                3 => Text($"G0 Z5\nX{x} Y{y}\nG1 Z{-Thickness - 0.5}\nG3 X{x + 30} Y{y} R{random.Next(16, 60)}\nG0 Z5\n"),
                _ => Text($"G1 X{x / 2} Y{y / 2} Z{z:0.00}\nG0 Z5\n"),
            });
        }

        return text.Append(Text($"G0 Z5\nX20 Y20\nG1 Z{-Thickness - 1}\nX60\nG0 Z5\nM2\n")).ToString();
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
