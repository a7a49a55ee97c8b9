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
        { "friction of zero", """{"version":1,"drawing":"part.dxf","thicknessMm":32,"holding":{"friction":0}}""", ExitCodes.BadRequest, "$.holding.friction: found 0" },
        { "a feed of zero", """{"version":1,"drawing":"part.dxf","thicknessMm":32,"cutter":{"feedMmPerMin":0}}""", ExitCodes.BadRequest, "$.cutter.feedMmPerMin: found 0" },
        { "a cutter without flutes", """{"version":1,"drawing":"part.dxf","thicknessMm":32,"cutter":{"flutes":0}}""", ExitCodes.BadRequest, "$.cutter.flutes: found 0" },
        { "a pass deeper than the part", """{"version":1,"drawing":"part.dxf","thicknessMm":32,"cutter":{"passDepthMm":33}}""", ExitCodes.BadRequest, "$.cutter.passDepthMm: found 33 mm, more than the part's thickness of 32 mm" },
        { "a cut wider than its cutter", """{"version":1,"drawing":"part.dxf","thicknessMm":32,"cutter":{"diameterMm":8,"widthMm":9}}""", ExitCodes.BadRequest, "$.cutter.widthMm: found 9 mm, more than the cutter's diameter" },
        { "straight flutes with a helix", """{"version":1,"drawing":"part.dxf","thicknessMm":32,"cutter":{"helix":"straight","helixDeg":30}}""", ExitCodes.BadRequest, "$.cutter.helixDeg: found an angle on straight flutes" },
        { "a force across without one along", """{"version":1,"drawing":"part.dxf","thicknessMm":32,"cutter":{"normalN":30}}""", ExitCodes.BadRequest, "$.cutter.normalN: found without tangentialN" },
        { "a reason without words", """{"version":1,"drawing":"part.dxf","thicknessMm":32,"holding":{"acceptLessBecause":" "}}""", ExitCodes.BadRequest, "$.holding.acceptLessBecause: found no words" },
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
        { "vacuum above the barometer", "vacuum", """{"gaugeKPa":90,"altitudeM":2000}""", "$.vacuum.gaugeKPa: found 90 kPa of vacuum where the air's pressure is 79.5 kPa" },
        { "vacuum above the barometer in inches", "vacuum", """{"gaugeInHg":30}""", "$.vacuum.gaugeInHg: found 101.59 kPa of vacuum" },
        { "a pump that reaches more than there is", "vacuum", """{"pump":{"ultimateKPa":105,"nominalM3PerHour":100}}""", "$.vacuum.pump.ultimateKPa: found 105 kPa" },
        { "a pump's curve that rises", "vacuum", """{"pump":{"flow":[{"vacuumKPa":0,"flowM3PerHour":50},{"vacuumKPa":50,"flowM3PerHour":60}]}}""", "$.vacuum.pump.flow[1]" },
        { "a gauge and a pump", "vacuum", """{"gaugeKPa":70,"pump":{"ultimateKPa":85,"nominalM3PerHour":100}}""", "$.vacuum.pump: found a gauge reading and a pump" },
        { "a barometer and an altitude", "vacuum", """{"altitudeM":100,"barometerKPa":99}""", "$.vacuum.barometerKPa" },
        { "friction of zero", "holding", """{"friction":0}""", "$.holding.friction: found 0" },
        { "factors that cross", "holding", """{"targetFactor":1.2,"leastFactor":1.5}""", "$.holding.targetFactor: found 1.2, less than leastFactor (1.5)" },
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
