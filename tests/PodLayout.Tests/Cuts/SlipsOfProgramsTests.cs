using System.Text;
using System.Text.RegularExpressions;
using PodLayout.Jobs.Written;
using PodLayout.Tests.Cli;

namespace PodLayout.Tests.Cuts;

/// <summary>Slips that are made in a hurry, each answered in one line with what would be right.</summary>
public class SlipsOfProgramsTests
{
    // The tray is 700 x 440 mm: read in inches its program runs 25.4 times as far.
    [Fact]
    public void A_program_in_millimetres_under_G20_is_told_the_word_that_would_make_sense()
    {
        using var scratch = Tray();
        var program = File.ReadAllText(Repository.Path("samples", "tray", "part.nc"));
        scratch.Put("part.nc", program.Replace("G21", "G20", StringComparison.Ordinal));
        var ran = Ran.Of("plan", scratch.Path("job.json"), "--time-limit", "1");
        var line = Assert.Single(ran.Error.Split('\n'), l => l.Contains("[unit-unlikely]", StringComparison.Ordinal));
        Assert.Contains("the part is 700 x 440 mm; G21 (millimetres) would make sense: ", line, StringComparison.Ordinal);
        Assert.Contains("G21 (millimetres) would make sense", Ran.Of("inspect", scratch.Path("part.nc")).Error, StringComparison.Ordinal);
        scratch.Put("part.nc", program);
        Assert.DoesNotContain("unit-unlikely", Ran.Of("plan", scratch.Path("job.json"), "--time-limit", "1").Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_program_in_inches_under_G21_is_told_so_too_and_one_small_cut_is_not()
    {
        // 28 x 18 in are 711.2 x 457.2 mm, a tool around the tray; a hole of an inch is no program that lost its unit.
        using var scratch = Tray();
        scratch.Put("part.nc", Around(28, 18));
        Assert.Contains("G20 (inches) would make sense: 711.2 x 457.2 mm", Ran.Of("plan", scratch.Path("job.json"), "--time-limit", "1").Error, StringComparison.Ordinal);
        scratch.Put("part.nc", Around(10, 10));
        Assert.DoesNotContain("unit-unlikely", Ran.Of("plan", scratch.Path("job.json"), "--time-limit", "1").Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_mistyped_layer_of_a_cut_is_one_line_with_the_nearest_names()
    {
        using var scratch = Tray();
        scratch.Put("job.json", File.ReadAllText(scratch.Path("job.json")).Replace("\"layer\": \"GROOVE\"", "\"layer\": \"GROVE\"", StringComparison.Ordinal));
        var line = Ran.Of("plan", scratch.Path("job.json")).OnlyError();
        Assert.Contains("The drawing has no layer GROVE, which a cut or the blank of the job is to follow; the nearest names it has: GROOVE", line, StringComparison.Ordinal);
    }

    [Fact]
    public void A_tool_too_wide_for_its_line_is_told_with_both_sizes()
    {
        // The slit is a line; the handles are 32 x 118 mm at most, whatever their drawing: a tool of 300 mm does not fit.
        using var scratch = Tray("job-by-operations.json");
        var job = File.ReadAllText(scratch.Path("job.json"));
        scratch.Put("job.json", Regex.Replace(job, "(\"name\": \"handles\".*?\"toolDiameterMm\": )12", "${1}300"));
        Assert.Matches("the tool of 300 mm does not fit into the line, which is [0-9.]+ x [0-9.]+ mm at its largest", Ran.Of("plan", scratch.Path("job.json")).Error);
    }

    [Fact]
    public void Where_only_small_pods_find_room_the_cause_says_that_the_large_ones_do_not()
    {
        // A strip of 75 mm: pods of 120 mm do not go under it, those of 30 mm do, but the only port lies far from it.
        var cause = Small.Cause();
        Assert.Contains("a 30x30 at X ", cause, StringComparison.Ordinal);
        Assert.Contains("no port lies under it", cause, StringComparison.Ordinal);
        Assert.DoesNotContain("120x120", cause, StringComparison.Ordinal);
    }

    [Fact]
    public void The_examples_of_the_README_are_read()
    {
        var readme = File.ReadAllText(Repository.Path("README.md"));
        var examples = Regex.Matches(readme, "```json\n(\"(?:cuts|program)\".*?)\n```", RegexOptions.Singleline).Select(m => m.Groups[1].Value).ToList();
        Assert.Equal(2, examples.Count);
        foreach (var example in examples)
        {
            var read = JobReading.Read("job.json", Encoding.UTF8.GetBytes("{ \"version\": 1, \"drawing\": \"part.dxf\", \"thicknessMm\": 27, " + example + " }"), []);
            Assert.True(read.Succeeded, read.Refusal?.ToString());
        }
    }

    private static string Around(double x, double y) => FormattableString.Invariant(
        $"G21 G90 G17\nT1 M6\nS18000 M3\nG0 X-0.2 Y-0.2 Z1\nG1 Z-1.1 F40\nG1 X{x - 0.2} Y-0.2 F200\nG1 X{x - 0.2} Y{y - 0.2}\nG1 X-0.2 Y{y - 0.2}\nG1 X-0.2 Y-0.2\nG0 Z1\nM5\nM30\n");

    private static Scratch Tray(string job = "job.json")
    {
        Scratch scratch = new();
        foreach (var name in new[] { "part.dxf", "part.nc" })
        {
            scratch.Put(name, File.ReadAllBytes(Repository.Path("samples", "tray", name)));
        }

        scratch.Put("job.json", File.ReadAllText(Repository.Path("samples", "tray", job))
            .Replace("../shop.json", Repository.Path("samples", "shop.json"), StringComparison.Ordinal));
        return scratch;
    }

    /// <summary>A narrow part on a board whose ports lie elsewhere.</summary>
    private static class Small
    {
        public static string Cause()
        {
            var board = Shapes.Board(600, 600, portSpacing: 60);
            board = board with { Ports = [.. board.Ports.Where(p => p.Centre.X > 500)] };
            var job = Shapes.JobFor(
                new(Shapes.Rectangle(0, 0, 300, 75), [], []), board, [Shapes.Pod(120, 120), Shapes.Pod(30, 30)], 60,
                placement: new PodLayout.Jobs.PlacementWish.Given(new(60, 60), 0));
            var result = Planning.Plan(job, new Effort(1, null), null, TestContext.Current.CancellationToken);
            return string.Join('\n', result.Unsupported.Select(u => u.Cause));
        }
    }
}
