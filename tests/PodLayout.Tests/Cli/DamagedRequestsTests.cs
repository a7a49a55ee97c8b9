using System.Text;
using PodLayout.Cli;
using PodLayout.Shops.Written;
using PodLayout.Tests.Shops;

namespace PodLayout.Tests.Cli;

public class DamagedRequestsTests
{
    private const string Job = """{"version":1,"drawing":"part.dxf","thicknessMm":32,"shop":"shop.json"}""";

    public static TheoryData<string, string, int, string> Jobs() => new()
    {
        // What is wrong; the job file; exit code; what the line must name.
        { "a typo in a member", """{"version":1,"drawing":"part.dxf","thicknesMm":32}""", ExitCodes.BadRequest, "$.thicknesMm: there is no such member here. Did you mean \"thicknessMm\"?" },
        { "no thickness", """{"version":1,"drawing":"part.dxf"}""", ExitCodes.BadRequest, "$.thicknessMm: this member is missing" },
        { "a thickness in quotes", """{"version":1,"drawing":"part.dxf","thicknessMm":"32"}""", ExitCodes.BadRequest, "found the text \"32\", expected a number" },
        { "NaN", "{\"version\":1,\n\"thicknessMm\":NaN}", ExitCodes.BadRequest, "job.json:2: this is not valid JSON" },
        { "a thickness of 1e12", """{"version":1,"drawing":"part.dxf","thicknessMm":1e12}""", ExitCodes.BadRequest, "$.thicknessMm: found 1e12" },
        { "an empty file", "", ExitCodes.BadRequest, "the file is empty" },
        { "cut off", """{"version":1,"drawing":"par""", ExitCodes.BadRequest, "not valid JSON" },
        { "a picture", "\u0089PNG\r\n\u001a\n\0\0", ExitCodes.BadRequest, "job.json" },
        { "a list", "[]", ExitCodes.BadRequest, "$: found a list of 0, expected a JSON object" },
        { "deep nesting", "{\"a\":" + string.Concat(Enumerable.Repeat("[", 5000)), ExitCodes.BadRequest, "not valid JSON" },
        { "a later version", """{"version":7,"drawing":"part.dxf","thicknessMm":32}""", ExitCodes.BadRequest, "found version 7; this program reads version 1" },
        { "a unit that is none", """{"version":1,"drawing":"part.dxf","thicknessMm":32,"units":"inches"}""", ExitCodes.BadRequest, "$.units" },
        { "a shop that is not there", """{"version":1,"drawing":"part.dxf","thicknessMm":32,"shop":"none.json"}""", ExitCodes.BadFile, "none.json: there is no such file" },
        { "a drawing that is not there", """{"version":1,"drawing":"none.dxf","thicknessMm":32}""", ExitCodes.BadFile, "none.dxf: there is no such file" },
    };

    public static TheoryData<string, string, string, string> Shops() => new()
    {
        { "stock of zero", "pods", """[{"name":"a","widthMm":120,"lengthMm":120,"sealInsetAboveMm":5,"sealInsetBelowMm":6,"heightMm":60,"stock":0}]""", "$.pods: the stock of every pod type is 0" },
        { "no pods", "pods", "[]", "$.pods: found a list of 0, expected at least 1" },
        { "a pod off the pitch", "pods[0].widthMm", "100", "$.pods[0].widthMm: found 100 mm, which is not a whole number of pitches of 30 mm" },
        { "a pod of negative size", "pods[1].lengthMm", "-60", "$.pods[1].lengthMm: found -60" },
        { "a seal that eats the pod", "pods[2].sealInsetAboveMm", "40", "$.pods[2].sealInsetAboveMm" },
        { "a usable area off the board", "board", """{"name":"b","widthMm":500,"lengthMm":500,"pitchMm":30,"grooveWidthMm":6,"grooveDepthMm":7,"usableArea":{"minXMm":0,"minYMm":0,"maxXMm":501,"maxYMm":500},"ports":{"diameterMm":8,"lattice":{"spacingMm":120,"firstMm":[15,15]}}}""", "$.board.usableArea" },
        { "a port on a groove", "board.ports.lattice.firstMm", "[45, 60]", "is 0 mm from the middle of a groove" },
        { "a note of the wrong kind", "note", "5", "$.note: found 5, expected text in quotes" },
    };

    [Theory]
    [MemberData(nameof(Jobs))]
    public void A_damaged_job_gives_one_clear_line_and_leaves_nothing(string what, string job, int code, string says)
    {
        Assert.NotEmpty(what);
        using Scratch scratch = new();
        scratch.Put("shop.json", ShopReading.DefaultText());
        AssertRefused(scratch, scratch.Put("job.json", job), code, says);
    }

    [Theory]
    [MemberData(nameof(Shops))]
    public void A_damaged_shop_gives_one_clear_line_and_leaves_nothing(string what, string member, string json, string says)
    {
        Assert.NotEmpty(what);
        using Scratch scratch = new();
        scratch.Put("shop.json", ShopReadingTests.Change(Encoding.UTF8.GetString(ShopReading.DefaultText()), member, json));
        AssertRefused(scratch, scratch.Put("job.json", Job), ExitCodes.BadRequest, says);
    }

    private static void AssertRefused(Scratch scratch, string job, int code, string says)
    {
        var ran = Ran.Of("plan", job, "--out", scratch.Path("out"));
        Assert.Contains(says, ran.OnlyError(), StringComparison.Ordinal);
        Assert.Equal(code, ran.Code);
        Assert.Equal(2, Directory.GetFileSystemEntries(scratch.Folder).Length);
    }
}
