using System.Text.RegularExpressions;
using PodLayout.Cli;
using PodLayout.Schemas;

namespace PodLayout.Tests.Cli;

public partial class CommandLineTests
{
    public static TheoryData<string, string> Wrong() => new()
    {
        { "", "command" },
        { "paln part.dxf", "\"paln\" is not known here. Did you mean plan?" },
        { "plan", "FILE" },
        { "plan part.dxf", "--thickness: missing" },
        { "plan part.dxf --thicknes 32", "Did you mean --thickness?" },
        { "plan part.dxf --thickness", "--thickness" },
        { "plan part.dxf --thickness 32 --thickness 33", "--thickness" },
        { "plan part.dxf --thickness 3,2", "--thickness: found \"3,2\", expected one number with a decimal point" },
        { "plan part.dxf --thickness NaN", "--thickness: found \"NaN\"" },
        { "plan part.dxf --thickness -32", "--thickness: found -32" },
        { "plan part.dxf --thickness 32 --units inch", "--units: found the text \"inch\"" },
        { "plan part.dxf --thickness 32 --overhang 1,2,3", "--overhang: found \"1,2,3\"" },
        { "plan part.dxf --thickness 32 --overhang 60,0", "--overhang: found 0" },
        { "plan part.dxf --thickness 32 --layer KNOTS", "--layer: found \"KNOTS\"" },
        { "plan part.dxf --thickness 32 --layer KNOTS=hoel", "--layer: found the text \"hoel\"" },
        { "plan part.dxf --thickness 32 --at 5", "--at: found \"5\", expected two numbers X,Y" },
        { "plan part.dxf --thickness 32 --at 5,6 --angle 0,90", "--angle: found \"0,90\", expected one angle" },
        { "plan part.dxf --thickness 32 --angle x", "--angle: found \"x\"" },
        { "plan part.dxf --thickness 32 --threads 0", "--threads: found \"0\"" },
        { "plan part.dxf --thickness 32 --time-limit 0", "--time-limit: found \"0\"" },
        { "schema board", "board" },
        { "board", "FILE" },
        { "board shop.json --ouT x", "Did you mean --out?" },
        { "shop a.json b.json", "b.json" },
    };

    [Theory]
    [MemberData(nameof(Wrong))]
    public void A_wrong_command_line_gives_one_clear_line(string line, string says)
    {
        var ran = Ran.Of(line.Split(' ', StringSplitOptions.RemoveEmptyEntries));
        Assert.Contains(says, ran.OnlyError(), StringComparison.Ordinal);
        Assert.Equal(ExitCodes.BadCommandLine, ran.Code);
    }

    [Fact]
    public void Help_lists_every_exit_code()
    {
        var ran = Ran.Of("--help");
        Assert.Equal(0, ran.Code);
        Assert.Contains("Usage:" + Environment.NewLine + "  podlayout [command]", ran.Out, StringComparison.Ordinal);
        Assert.All(ExitCodes.All, c => Assert.Contains($"  {c.Code,3}  {c.Meaning}", ran.Out, StringComparison.Ordinal));
    }

    [Fact]
    public void The_readme_lists_every_exit_code()
    {
        var readme = File.ReadAllText(Repository.Path("README.md"));
        Assert.All(ExitCodes.All, c => Assert.Contains($"| {c.Code} | {c.Meaning} |", readme, StringComparison.Ordinal));
        Assert.Equal(ExitCodes.All.Count, CodeRow().Count(readme));
    }

    [Fact]
    public void The_schemas_are_printed_as_published()
    {
        Assert.Equal(PublishedSchemas.Shop, Ran.Of("schema", "shop").Out);
        Assert.Equal(PublishedSchemas.Job, Ran.Of("schema", "job").Out);
    }

    [Fact]
    public void The_built_in_shop_is_printed_as_a_file_that_can_be_read()
    {
        using Scratch scratch = new();
        var ran = Ran.Of("shop", scratch.Put("shop.json", Ran.Of("shop").Out));
        Assert.Equal((0, ""), (ran.Code, ran.Error));
        Assert.Contains("108 ports, 108 of them working", ran.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void An_argument_that_begins_with_an_at_sign_is_a_file_name() =>
        Assert.Contains("@x: there is no such file", Ran.Of("shop", "@x").OnlyError(), StringComparison.Ordinal);

    [GeneratedRegex(@"^\| \d+ \|", RegexOptions.Multiline)]
    private static partial Regex CodeRow();

    [Fact]
    public void A_shop_is_listed_with_its_vacuum_and_how_firmly_it_holds()
    {
        var said = Ran.Of("shop", Repository.Path("samples", "shop.json")).Out;
        Assert.Contains("Vacuum: gauge 70 kPa (20.7 inHg), air pressure 101.3 kPa\n", said, StringComparison.Ordinal);
        Assert.Contains("Holding: target factor 2, least 1.5, friction 0.4\n", said, StringComparison.Ordinal);
        Assert.Contains("Assumed: Vacuum 70 kPa", said, StringComparison.Ordinal);

        using var scratch = new Scratch();
        var shop = System.Text.Json.Nodes.JsonNode.Parse(Ran.Of("shop").Out)!;
        // The share of sea level's 101.325 kPa that the air has there: 85 and 100 times 85 / 101.325, each times 96 / 101.325.
        shop["vacuum"] = System.Text.Json.Nodes.JsonNode.Parse("""{ "pump": { "ultimateKPa": 85, "nominalM3PerHour": 100 }, "barometerKPa": 96 }""");
        Assert.Contains(
            "Vacuum: pump of 79.5 m3/h of free air, 80.5 kPa (23.8 inHg) at no flow, air pressure 96 kPa",
            Ran.Of("shop", scratch.Put("shop.json", shop.ToJsonString())).Out, StringComparison.Ordinal);
        shop["vacuum"] = System.Text.Json.Nodes.JsonNode.Parse("""{ "gaugeKPa": 101.5 }""");
        Assert.Contains(
            "Correct the figure or its unit", Ran.Of("shop", scratch.Put("shop.json", shop.ToJsonString())).OnlyError(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_path_that_was_typed_and_leads_nowhere_is_not_sought_beside_the_job()
    {
        var ran = Ran.Of("plan", Repository.Path("samples", "crest-rail", "job.json"), "--from", "nope.json");
        Assert.Contains("nope.json: there is no such file. Check the path; it is taken from the folder in which the command is given.", ran.Error, StringComparison.Ordinal);
        Assert.Contains("taken from the folder in which the command is given", Ran.Of("check", "nope.json").OnlyError(), StringComparison.Ordinal);
        Assert.Contains("taken from the folder in which the command is given", Ran.Of("plan", "nope.dxf", "--thickness", "20").OnlyError(), StringComparison.Ordinal);
    }
}
