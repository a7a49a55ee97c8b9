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
}
