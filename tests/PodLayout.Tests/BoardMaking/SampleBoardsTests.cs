using System.Text;
using System.Text.Json.Nodes;
using PodLayout.BoardMaking;
using PodLayout.Cli;
using PodLayout.Schemas;
using PodLayout.Shops.Written;
using PodLayout.Tests.Cli;
using PodLayout.Tests.Schemas;

namespace PodLayout.Tests.BoardMaking;

public class SampleBoardsTests
{
    private static readonly string[] Files =
        ["board-front.dxf", "board-back.dxf", "board-front.svg", "board-back.svg", "board-section.svg", "board.json", "board-sheet.md"];

    public static TheoryData<string> Samples() => [.. Boards.Samples];

    [Theory]
    [MemberData(nameof(Samples))]
    public void A_sample_board_is_made_without_a_finding_and_written_whole(string sample)
    {
        using Scratch scratch = new();
        var ran = Ran.Of("board", Boards.SamplePath(sample), "--out", scratch.Path("out"));
        Assert.Equal((ExitCodes.LayoutFound, ""), (ran.Code, ran.Error));
        Assert.Equal(Files.Order(), Directory.GetFiles(scratch.Path("out")).Select(Path.GetFileName).Order());
        Assert.All(Files, f => Assert.EndsWith("\n", File.ReadAllText(scratch.Path("out/" + f)), StringComparison.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Samples))]
    public void The_same_shop_gives_the_same_files(string sample) => Assert.Equal(
        BoardFiles.Of(Boards.Good(Boards.Sample(sample))).AsEnumerable(), BoardFiles.Of(Boards.Good(Boards.Sample(sample))).AsEnumerable());

    [Theory]
    [MemberData(nameof(Samples))]
    public void The_board_s_file_is_a_shop_file_of_the_published_form_and_gives_the_same_board_again(string sample)
    {
        var text = Boards.Good(Boards.Sample(sample)).FileText;
        Assert.True(PublishedSchemasTests.IsValid(PublishedSchemas.Shop, Encoding.UTF8.GetBytes(text)));
        Assert.Empty(ShopReading.Read("board.json", Encoding.UTF8.GetBytes(text)).Findings);
        var again = Boards.Good(JsonNode.Parse(text)!);
        Assert.Equal(text, again.FileText);
    }

    [Theory]
    [MemberData(nameof(Samples))]
    public void Plan_takes_the_board_s_file_as_its_shop(string sample)
    {
        using Scratch scratch = new();
        var board = scratch.Put("board.json", Boards.Good(Boards.Sample(sample)).FileText);
        var part = scratch.Put(
            "part.svg", """<svg xmlns="http://www.w3.org/2000/svg" width="200mm" height="160mm" viewBox="0 0 200 160"><path d="M0 0H200V160H0Z"/></svg>""");
        // What is assumed to be cut, a whole diameter deep, throws so small a part: the layout is shown, and said not to hold.
        var ran = Ran.Of("plan", part, "--thickness", "32", "--shop", board, "--out", scratch.Path("out"));
        Assert.Equal((ExitCodes.DoesNotHold, ""), (ran.Code, ran.Error));
        Assert.True(File.Exists(scratch.Path("out/layout.svg")));
    }

    [Fact]
    public void A_refused_board_writes_nothing()
    {
        using Scratch scratch = new();
        var shop = Boards.TradeFacts();
        shop["making"]!["channels"]!["depthIn"] = 0.0625;
        var ran = Ran.Of("board", scratch.Put("shop.json", shop.ToJsonString()), "--out", scratch.Path("out"));
        Assert.Contains("[port-misses-channel]", ran.OnlyError(), StringComparison.Ordinal);
        Assert.Equal(ExitCodes.BadRequest, ran.Code);
        Assert.False(Directory.Exists(scratch.Path("out")));
    }

    [Fact]
    public void A_pod_may_not_stand_on_a_seam_or_a_pin()
    {
        var plan = Boards.Good(Boards.Sample("two-zones-metric"));
        Assert.Contains(plan.Board.Obstacles, o => o.Name == "seam");
        Assert.Equal(4, plan.Board.Obstacles.Count(o => o.Name.StartsWith("pin", StringComparison.Ordinal)));
    }
}
