using PodLayout.Cuts;
using PodLayout.Findings;
using PodLayout.Geometry;
using PodLayout.Jobs;
using PodLayout.Layouts;
using PodLayout.Programs;
using PodLayout.Seats;

namespace PodLayout.Tests.Cuts;

/// <summary>The sample with a program of our own post.</summary>
public class TrayTests
{
    [Fact]
    public void The_layout_from_the_program_and_from_the_operations_agree()
    {
        var (byProgram, byOperations) = (Planned("job.json").Result.Layout!, Planned("job-by-operations.json").Result.Layout!);
        Assert.Equal(byOperations.Placement, byProgram.Placement);
        Assert.Equal(
            byOperations.Pods.Select(p => (p.Type.Name, p.Turned, p.Column, p.Row)),
            byProgram.Pods.Select(p => (p.Type.Name, p.Turned, p.Column, p.Row)));
    }

    [Fact]
    public void Nowhere_do_the_seats_from_the_program_and_from_the_operations_differ_by_more_than_a_hair()
    {
        var (a, b) = (SampleJob.Read("tray", "job.json").Job, SampleJob.Read("tray", "job-by-operations.json").Job);
        foreach (var pose in PodPose.Of(a.Shop, 60))
        {
            var fromProgram = SeatRegion.Of(ClearWood.Of(a.Part.Shape, a.Margins), pose, Tolerances.ContactMm).Centres;
            var fromOperations = SeatRegion.Of(ClearWood.Of(b.Part.Shape, b.Margins), pose, Tolerances.ContactMm).Centres;
            Assert.False(fromProgram.IsEmpty);
            Assert.True(fromProgram.Minus(fromOperations).Shrink(2 * Tolerances.ContactMm).IsEmpty);
            Assert.True(fromOperations.Minus(fromProgram).Shrink(2 * Tolerances.ContactMm).IsEmpty);
        }
    }

    [Fact]
    public void No_pod_stands_in_a_cut_and_one_moved_there_is_refused_with_line_tool_and_overlap()
    {
        var (job, path, request, result) = Planned("job.json");
        var layout = result.Layout!;
        Assert.Empty(PodsInCuts.Of(job, layout, path, request));

        // Over the middle of the slit, which tool 2 cuts in the line after its plunge, 6 mm wide.
        var slit = Turn.FromDegrees(layout.Placement.AngleDeg).Apply(new(350, 340)) + layout.Placement.ZeroOnBoard;
        var moved = layout with { Pods = layout.Pods.SetItem(0, layout.Pods[0] with { Centre = slit }) };
        var refused = Assert.Single(PodsInCuts.Of(job, moved, path, request));
        var line = 1 + File.ReadAllLines(SampleJob.FileOf("tray", "part.nc")).ToList().FindIndex(l => l.Contains("G1 X470.000 F4000", StringComparison.Ordinal));
        Assert.Equal((Severity.Refused, line), (refused.Severity, ((Place.InFile)refused.Place!).Line));
        Assert.Contains("pod P1", refused.Message, StringComparison.Ordinal);
        Assert.Contains("tool 2", refused.Message, StringComparison.Ordinal);
        Assert.Contains("overlaps it by 720", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void The_program_is_read_without_a_warning()
    {
        var outcome = ProgramReading.Read("part.nc", File.ReadAllBytes(SampleJob.FileOf("tray", "part.nc")), new());
        Assert.True(outcome.Succeeded);
        Assert.Empty(outcome.Findings);
    }

    private static (Job Job, ToolPath? Path, CutRequest Request, PlanResult Result) Planned(string file)
    {
        var (job, _, path, request) = SampleJob.Read("tray", file);
        return (job, path, request, Planning.Plan(job, new Effort(2, null), null, TestContext.Current.CancellationToken));
    }
}
