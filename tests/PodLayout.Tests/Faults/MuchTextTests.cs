using System.Diagnostics;
using System.Globalization;
using System.Text.Json.Nodes;
using PodLayout.Cli;
using PodLayout.Holding;
using PodLayout.Tests.Cli;

namespace PodLayout.Tests.Faults;

/// <summary>Long texts and long lists: done in seconds, or refused at once by a length that the schema states.</summary>
public class MuchTextTests
{
    private static readonly TimeSpan Ceiling = TimeSpan.FromMinutes(2);

    public static TheoryData<string, string, string> Lists => new()
    {
        { "$.name", "a name of 30,000 characters", $", \"name\": \"{new string('n', 30_000)}\"" },
        { "$.note", "a remark of 30,000 characters", $", \"note\": \"{new string('n', 30_000)}\"" },
        { "$.avoid", "20,000 areas to avoid", $", \"avoid\": [{string.Join(',', Enumerable.Range(0, 20_000).Select(i => Text($$"""{ "name": "a{{i}}", "centreMm": [{{i % 100}}, {{i / 100}}], "diameterMm": 1 }""")))}]" },
        { "$.avoidOnPart", "20,000 areas to avoid on the part", $", \"avoidOnPart\": [{string.Join(',', Enumerable.Range(0, 20_000).Select(i => Text($$"""{ "name": "a{{i}}", "centreMm": [{{i % 100}}, {{i / 100}}], "diameterMm": 1 }""")))}]" },
        { "$.cuts", "5,000 cuts", $", \"cuts\": [{string.Join(',', Enumerable.Range(0, 5_000).Select(_ => """{ "operation": "holes", "layer": "H" }"""))}]" },
        { "$.keep", "a million pods to keep", $", \"keep\": [{string.Join(',', Enumerable.Repeat("0", 1_000_000))}]" },
        { "$.placement.searchAnglesDeg", "100,000 angles", $", \"placement\": {{ \"searchAnglesDeg\": [{string.Join(',', Enumerable.Repeat("1", 100_000))}] }}" },
    };

    [Theory]
    [MemberData(nameof(Lists))]
    public void What_is_too_long_is_refused_at_once(string path, string what, string member)
    {
        Assert.NotEmpty(what);
        using Scratch scratch = new();
        scratch.Put("part.dxf", SmallJobs.Rectangle(240, 150));
        var clock = Stopwatch.StartNew();
        var ran = Ran.Of("plan", scratch.Put("job.json", $"{{ \"version\": 1, \"drawing\": \"part.dxf\", \"thicknessMm\": 30{member} }}"));
        Assert.Matches($"{path.Replace("$", "\\$", StringComparison.Ordinal).Replace(".", "\\.", StringComparison.Ordinal)}: found .*, expected at most ", ran.OnlyError());
        Assert.Equal(ExitCodes.BadRequest, ran.Code);
        Assert.True(clock.Elapsed < Ceiling, $"{what} took {clock.Elapsed}.");
    }

    [Fact]
    public void As_much_as_the_schema_allows_is_planned_in_seconds()
    {
        using Scratch scratch = new();
        var spots = string.Join(',', Enumerable.Range(0, 2000).Select(i => Text($$"""{ "name": "{{i}}", "centreMm": [{{600 + i % 32}}, {{300 + i / 32}}], "diameterMm": 0.5 }""")));
        SmallJobs.Put(scratch, $", \"name\": \"{new string('n', 1000)}\", \"species\": \"{string.Join(' ', Enumerable.Repeat("oak", 250))}\", \"avoid\": [{spots}]");
        var clock = Stopwatch.StartNew();
        var ran = SmallJobs.Plan(scratch, "out", "--card");
        Assert.Equal(ExitCodes.LayoutFound, ran.Code);
        Assert.True(clock.Elapsed < Ceiling, $"It took {clock.Elapsed}.");
        clock.Restart();
        Assert.Equal(ExitCodes.LayoutFound, Ran.Of("check", scratch.Path("out/layout.json")).Code);
        Assert.True(clock.Elapsed < Ceiling, $"It took {clock.Elapsed}.");
    }

    [Fact]
    public void Long_texts_of_a_layout_are_refused_at_once()
    {
        using Scratch scratch = new();
        SmallJobs.Put(scratch);
        SmallJobs.Plan(scratch, "out");
        var json = JsonNode.Parse(File.ReadAllText(scratch.Path("out/layout.json")))!;
        json["job"] = new string('n', 30_000);
        var clock = Stopwatch.StartNew();
        Assert.Contains("$.job: ", Ran.Of("card", scratch.Put("layout.json", json.ToJsonString()), "--out", scratch.Path("card")).OnlyError(), StringComparison.Ordinal);
        Assert.True(clock.Elapsed < Ceiling, $"It took {clock.Elapsed}.");
    }

    [Fact]
    public void Long_names_of_layers_and_long_words_on_the_card_are_refused_at_once()
    {
        using Scratch scratch = new();
        SmallJobs.Put(scratch);
        Assert.Contains("--revision: ", SmallJobs.Plan(scratch, "out", "--card", "--revision", new string('r', 30_000)).OnlyError(), StringComparison.Ordinal);
        var clock = Stopwatch.StartNew();
        var ran = Ran.Of("inspect", scratch.Put("part.dxf", SmallJobs.Rectangle(240, 150).Replace("OUTLINE", new string('n', 1_000_000), StringComparison.Ordinal)));
        Assert.Equal(ExitCodes.BadDrawing, ran.Code);
        Assert.Contains("A layer's name has 1000000 characters", ran.OnlyError(), StringComparison.Ordinal);
        Assert.True(clock.Elapsed < Ceiling, $"It took {clock.Elapsed}.");
    }

    [Theory]
    [InlineData("\"thicknessMm\": 30", "\"thicknessMm\": 1e-300", "$.thicknessMm: found 1e-300, expected a number from 0.01 to 1000")]
    [InlineData("\"overhangMm\": 90", "\"overhangMm\": 1e-300", "$.overhangMm: found 1e-300")]
    [InlineData("\"tangentialN\": 5", "\"diameterMm\": 1e-300, \"tangentialN\": 5", "$.cutter.diameterMm: found 1e-300")]
    public void Figures_that_nothing_has_are_refused_by_stated_bounds(string instead, string given, string says)
    {
        using Scratch scratch = new();
        scratch.Put("part.dxf", SmallJobs.Rectangle(240, 150));
        Assert.Contains(says, Ran.Of("plan", scratch.Put("job.json", SmallJobs.Job().Replace(instead, given, StringComparison.Ordinal))).OnlyError(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(1.9985, "2")]
    [InlineData(1.9979, "1.99")]
    [InlineData(1.4986, "1.5")]
    [InlineData(2.0001, "2")]
    [InlineData(1.7399, "1.73")]
    public void What_counts_as_reached_is_not_written_below_what_was_asked_for(double factor, string text) =>
        // A thousandth short still counts as reached (Tolerances.HoldingShare).
        Assert.Equal(text, FactorText.Of(factor, 2, 1.5));

    [Fact]
    public void Counts_of_an_inserted_block_that_are_no_counts_are_told()
    {
        // Group codes 70 and 71 are counts of 16 bits; a file may hold more than that, or none.
        var blocks = $"0 SECTION 2 BLOCKS 0 BLOCK 2 B 10 0 20 0 {Reading.Drawings.Rectangle(0, 0, 9, 9)} 0 ENDBLK 0 ENDSEC";
        foreach (var count in new[] { "-3", "99999999999", "0" })
        {
            var read = Reading.Drawings.Read(Reading.Drawings.Dxf($"0 INSERT 2 B 10 0 20 0 70 {count} 44 20", more: blocks));
            Assert.True(count != "99999999999" || !read.Succeeded || read.Findings.Any(f => f.Code == "dxf-insert-count"), count);
            Assert.True(count != "-3" || read.Findings.Any(f => f.Code == "dxf-insert-count"), count);
        }
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
