using PodLayout.Cuts;
using PodLayout.Forces;
using PodLayout.Jobs;
using PodLayout.Programs;
using PodLayout.Reading;
using PodLayout.Tests.Programs;

namespace PodLayout.Tests.Forces;

public class MachiningTests
{
    // Low and high pods, 50 and 100 mm; the part is 30 mm thick.
    private static readonly Job Plate = Shapes.JobFor(
        new(Shapes.Rectangle(0, 0, 400, 300), [], []), Shapes.Board(1200, 900),
        [Shapes.Pod(60, 60), Shapes.Pod(60, 60) with { Name = "high", HeightMm = 100 }], 60);

    private static readonly Drawing Drawn = new(
        "part.dxf", "DXF", "millimetre", 1, 0.05, [new("PART", Shapes.Rectangle(0, 0, 400, 300))], [], [], []);

    [Theory]
    [InlineData(-40, 2)]
    [InlineData(-85, 1)]
    public void The_loads_are_those_of_the_job_with_its_cuts_even_where_pods_are_left_out_for_them(double tipMm, int heights)
    {
        var (request, path) = Slot(tipMm);
        var job = Machining.Apply(Plate, Drawn, request, path, "job.json").Value!;
        var cut = Cutting.Apply(Plate, Drawn, request, path, "job.json").Value!;
        Assert.Equal(heights, job.Shop.Pods.Count(p => p.Stock > 0));
        var after = Loading.Of(cut, Drawn, request, path, "job.json").Value!;
        Assert.NotEmpty(job.Part.Loads.Points);
        Assert.Equal(after.Passes, job.Part.Loads.Passes);
        Assert.Equal(
            after.Points.SelectMany(p => p.Forces.Select(f => (p.OnPart, p.HeightMm, f))), job.Part.Loads.Points.SelectMany(p => p.Forces.Select(f => (p.OnPart, p.HeightMm, f))));
        Assert.Equal(cut.Part.Shape.Hazards.Select(h => h.Area.AreaMm2), job.Part.Shape.Hazards.Select(h => h.Area.AreaMm2));
    }

    [Fact]
    public void What_is_found_of_cuts_is_told_before_what_is_found_of_loads_and_a_refused_cut_alone()
    {
        // Beside the part nothing is cut.
        var (request, path) = Slot(-40, offsetMm: 5000);
        var codes = Machining.Apply(Plate, Drawn, request, path, "job.json").Findings.Select(f => f.Code).ToList();
        Assert.Equal("nothing-cut", codes[^1]);
        Assert.Contains("tool-below", codes[..^1]);

        // Through the board itself.
        (request, path) = Slot(-200, offsetMm: 5000);
        var refused = Machining.Apply(Plate, Drawn, request, path, "job.json");
        Assert.Equal("pods-too-low", refused.Refusal?.Code);
        Assert.DoesNotContain(refused.Findings, f => f.Code == "nothing-cut");
    }

    private static (CutRequest Request, ToolPath Path) Slot(double tipMm, double offsetMm = 0)
    {
        var tools = Posted.Tools(new Tool(1, 12, new CutterForm.Flat()));
        var text = string.Create(
            System.Globalization.CultureInfo.InvariantCulture, $"G21 G90 G17\nT1 M6\nS18000 M3\nG0 X{50 + offsetMm} Y150 Z5\nG1 Z{tipMm} F3000\nX{350 + offsetMm}\nG0 Z5\nM30\n");
        return (new([], new("part.nc", tools, ZZero.PartFace, default, null, false), 0.1, 2, null), Posted.Read(text, new() { Tools = tools }).Value!);
    }
}
