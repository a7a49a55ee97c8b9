using System.Globalization;
using PodLayout.Cli;
using PodLayout.Tests.Cli;
using PodLayout.Tests.Programs;

namespace PodLayout.Tests.Faults;

/// <summary>Small files that ask for much: chains, nests, arrays and repeats without end.</summary>
public class DeepAndManyTests
{
    /// <summary>Tells seconds from minutes and from never, on a machine that does other work beside.</summary>
    private static readonly TimeSpan Ceiling = TimeSpan.FromMinutes(2);

    public static TheoryData<string, string, string> Drawn => new()
    {
        { "ten thousand blocks in a chain", "dxf", ChainOfBlocks(10_000) },
        { "an array of arrays of an empty block", "dxf", ArrayOfNothing },
        { "an array of arrays of an empty block, without a unit", "dxf", ArrayOfNothing.Replace("$INSUNITS", "$OTHER", StringComparison.Ordinal) },
        { "blocks that insert the next twice, 90 deep, the last empty", "dxf", DoublingBlocks(90) },
        { "six thousand uses in a chain", "svg", ChainOfUses(6_000) },
        { "twenty thousand nested groups", "svg", Svg(string.Concat(Enumerable.Repeat("<g>", 20_000)) + "<path d='M0 0h9v9z'/>" + string.Concat(Enumerable.Repeat("</g>", 20_000))) },
        { "groups that use the next twice, 200 deep, the last empty", "svg", DoublingGroups(200) },
        { "entities of an array of a hundred thousand names", "dxf", ChainOfBlocks(100_000) },
    };

    public static TheoryData<string, string> Asked => new()
    {
        { "job.json", "{\"version\":1,\"drawing\":" + Nested(100_000, '[', ']') + "}" },
        { "job.json", string.Concat(Enumerable.Repeat("{\"a\":", 100_000)) },
        { "layout.json", "{\"schema\":\"podlayout-layout\",\"version\":1,\"part\":" + Nested(100_000, '[', ']') + "}" },
        { "layout.json", "{\"schema\":" + string.Concat(Enumerable.Repeat("{\"a\":", 100_000)) },
    };

    public static TheoryData<string, string> Posted_ => new()
    {
        { "a peck drill that repeats", "G83 X10 Y10 Z-10 R1 Q0.01 L10000 F500" },
        { "a cycle and lines of repeats", "G91 G81 X1 Z-2 R-3 L10000 F500\n" + string.Concat(Enumerable.Range(0, 400).Select(_ => "X0.01 L10000\n")) },
    };

    [Theory]
    [MemberData(nameof(Drawn))]
    public void A_drawing_that_asks_for_too_much_is_refused_in_time(string what, string ending, string text)
    {
        Assert.NotEmpty(what);
        using Scratch scratch = new();
        var ran = InTime(() => Ran.Of("plan", scratch.Put($"part.{ending}", text), "--thickness", "20"));
        Assert.Equal(ExitCodes.BadDrawing, ran.Code);
        ran.OnlyError();
    }

    [Theory]
    [MemberData(nameof(Asked))]
    public void Deep_json_is_refused_in_time(string name, string text)
    {
        using Scratch scratch = new();
        var ran = InTime(() => Ran.Of(name == "job.json" ? "plan" : "check", scratch.Put(name, text)));
        Assert.Equal(ExitCodes.BadRequest, ran.Code);
        ran.OnlyError();
    }

    [Theory]
    [MemberData(nameof(Posted_))]
    public void A_program_of_more_moves_than_any_part_takes_is_refused_with_its_line(string what, string lines)
    {
        Assert.NotEmpty(what);
        var outcome = InTime(() => Posted.Read($"G21 G90 G17\nT1 M6\nS18000 M3\nG0 X0 Y0\nG0 Z5\n{lines}\nM2\n"));
        Assert.Equal("program-too-long", outcome.Refusal?.Code);
        Assert.Matches("^part.nc:[0-9]+$", outcome.Refusal!.Place!.ToString());
    }

    private static T InTime<T>(Func<T> work)
    {
        var ran = Task.Run(work, TestContext.Current.CancellationToken);
#pragma warning disable xUnit1031 // The wait is what is tested.
        Assert.True(ran.Wait(Ceiling, TestContext.Current.CancellationToken), $"It took longer than {Ceiling}.");
        return ran.Result;
#pragma warning restore xUnit1031
    }

    private static string Nested(int deep, char opening, char closing) => new string(opening, deep) + new string(closing, deep);

    private static string Svg(string inside) =>
        $"<svg xmlns='http://www.w3.org/2000/svg' width='90mm' height='90mm' viewBox='0 0 90 90'>{inside}</svg>";

    private static string ChainOfUses(int count) => Svg(
        "<defs><path id='u0' d='M0 0h9v9z'/>"
        + string.Concat(Enumerable.Range(1, count).Select(i => Text($"<use id='u{i}' href='#u{i - 1}'/>")))
        + Text($"</defs><use href='#u{count}'/>"));

    private static string DoublingGroups(int count) => Svg(
        "<defs><g id='g0'/>"
        + string.Concat(Enumerable.Range(1, count).Select(i => Text($"<g id='g{i}'><use href='#g{i - 1}'/><use href='#g{i - 1}'/></g>")))
        + Text($"</defs><use href='#g{count}'/>"));

    private static string ChainOfBlocks(int count) => Blocks(
        string.Concat(Enumerable.Range(0, count).Select(i => Text($" 0 BLOCK 2 B{i} 10 0 20 0 0 INSERT 2 B{i + 1} 10 0 20 0 0 ENDBLK ")))
        + Text($" 0 BLOCK 2 B{count} 10 0 20 0 0 ENDBLK "),
        "0 INSERT 2 B0 10 0 20 0");

    private static string DoublingBlocks(int count) => Blocks(
        string.Concat(Enumerable.Range(0, count).Select(i => Text($" 0 BLOCK 2 B{i} 10 0 20 0 0 INSERT 2 B{i + 1} 70 2 44 1 0 ENDBLK ")))
        + Text($" 0 BLOCK 2 B{count} 10 0 20 0 0 ENDBLK "),
        "0 INSERT 2 B0 10 0 20 0");

    private static readonly string ArrayOfNothing = Blocks(
        " 0 BLOCK 2 NOTHING 0 ENDBLK 0 BLOCK 2 ROWS 0 INSERT 2 NOTHING 70 32767 71 32767 0 ENDBLK ",
        "0 INSERT 2 ROWS 70 32767 71 32767");

    private static string Blocks(string blocks, string entities) =>
        Reading.Drawings.Dxf(entities, more: $"0 SECTION 2 BLOCKS {blocks} 0 ENDSEC");

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
