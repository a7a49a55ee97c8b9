using System.Text;
using PodLayout.Cli;
using PodLayout.Findings;
using PodLayout.Geometry;
using PodLayout.Jobs.Written;
using PodLayout.Layouts;
using PodLayout.Parts;
using PodLayout.Shops.Written;

namespace PodLayout.Tests.Cli;

public class ExitCodesTests
{
    [Theory]
    [InlineData(true, false, false, ExitCodes.LayoutFound)]
    [InlineData(true, true, false, ExitCodes.LayoutFound)]
    [InlineData(true, true, true, ExitCodes.Interrupted)]
    [InlineData(true, false, true, ExitCodes.LayoutFound)]
    [InlineData(false, false, false, ExitCodes.NoLayout)]
    [InlineData(false, true, false, ExitCodes.OutOfTime)]
    [InlineData(false, true, true, ExitCodes.Interrupted)]
    [InlineData(false, false, true, ExitCodes.NoLayout)]
    public void A_plan_ends_with_the_code_of_what_it_came_to(bool found, bool cutShort, bool byUser, int code) =>
        Assert.Equal(code, ExitCodes.Of(Planned(found, cutShort), byUser));

    [Fact]
    public void A_wrong_option_and_a_wrong_member_have_codes_of_their_own()
    {
        Assert.Equal(ExitCodes.BadCommandLine, ExitCodes.Of(Refusal(FindingKind.Request, new Place.InOption("--at"))));
        Assert.Equal(ExitCodes.BadRequest, ExitCodes.Of(Refusal(FindingKind.Request, new Place.InJson("job.json", "$.a"))));
        Assert.Equal(ExitCodes.BadDrawing, ExitCodes.Of(Refusal(FindingKind.Drawing, null)));
        Assert.Equal(ExitCodes.BadFile, ExitCodes.Of(Refusal(FindingKind.File, null)));
        Assert.Equal(ExitCodes.NoLayout, ExitCodes.Of(Refusal(FindingKind.NoLayout, null)));
    }

    [Fact]
    public void A_folder_that_cannot_be_written_is_said_before_the_search()
    {
        using Scratch scratch = new();
        var drawing = Repository.Path("tests", "PodLayout.Tests", "Reading", "ezdxf", "slot-R2010.dxf");
        var taken = scratch.Put("out", "mine");
        var ran = Ran.Of("plan", drawing, "--thickness", "32", "--out", taken);
        Assert.Contains("out: the results cannot be written", ran.OnlyError(), StringComparison.Ordinal);
        Assert.Equal(ExitCodes.BadFile, ran.Code);
        Assert.Equal("mine", File.ReadAllText(taken));
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Every_result_file_can_be_written_whether_there_is_a_layout_or_not(bool found)
    {
        var files = Results.Files(Planned(found, cutShort: false), null);
        Assert.Equal(["layout.json", "pods.csv", "ports.csv", "layout.svg"], files.Select(f => f.Name));
        Assert.All(files, f => Assert.Equal((byte)'\n', f.Content[^1]));
    }

    private static Finding Refusal(FindingKind kind, Place? place) => new("x", Severity.Refused, kind, "x", place);

    private static PlanResult Planned(bool found, bool cutShort)
    {
        var request = JobReading.Read("f", Encoding.UTF8.GetBytes("""{"version":1,"drawing":"a.dxf","thicknessMm":32}"""), []).Value!;
        PartShape shape = new(new Ring([new(0, 0), new(300, 0), new(300, 300)]), [], []);
        var layout = found ? new Layout(new(new(0, 0), 0), [], [], new(ProofScope.ThisPlacement, 1, 0, "")) : null;
        return new(request.With(shape, ShopReading.Default()).Value!, layout, [], [], cutShort, new(0, 0, 0));
    }
}
