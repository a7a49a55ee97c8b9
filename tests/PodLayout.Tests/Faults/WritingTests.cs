using System.Text;
using PodLayout.Cli;
using PodLayout.Findings;
using PodLayout.Tests.Cli;

namespace PodLayout.Tests.Faults;

/// <summary>All files of a set or none, whatever happens while they are written.</summary>
public class WritingTests
{
    private static readonly (string Name, byte[] Content)[] Next = [("a.json", "new a"u8.ToArray()), ("b.csv", "new b"u8.ToArray()), ("c.svg", "new c"u8.ToArray())];

    /// <summary>The steps that change what is seen: a list, two for each file that stands there, one for each that does not, one for each that goes.</summary>
    public static TheoryData<int> Steps => [.. Enumerable.Range(0, 7)];

    /// <summary>And the one after all is in its place, before the list goes.</summary>
    public static TheoryData<int> StepsToTheEnd => [.. Enumerable.Range(0, 8)];

    [Theory]
    [MemberData(nameof(Steps))]
    public void A_step_that_fails_leaves_the_old_set(int failing)
    {
        using Scratch scratch = new();
        var old = Old(scratch);
        var step = 0;
        var refusal = OutputFolder.Write(scratch.Path("out"), Next, ["d.pdf"], _ =>
        {
            if (step++ == failing)
            {
                throw new IOException("locked by another program");
            }
        });
        Assert.Equal(FindingKind.File, refusal?.Kind);
        Assert.Contains("locked by another program", refusal!.Message, StringComparison.Ordinal);
        Assert.Equal(old, Seen(scratch));
    }

    [Theory]
    [MemberData(nameof(StepsToTheEnd))]
    public void After_a_kill_the_next_command_finishes_and_leaves_nothing_behind(int killed)
    {
        using Scratch scratch = new();
        var old = Old(scratch);
        var step = 0;
        Assert.Throws<Killed>(() => OutputFolder.Write(scratch.Path("out"), Next, ["d.pdf"], _ =>
        {
            if (step++ == killed)
            {
                throw new Killed();
            }
        }));
        Assert.Null(OutputFolder.Mend(scratch.Path("out")));
        Assert.Equal(killed == 0 ? old : ["a.json: new a", "b.csv: new b", "c.svg: new c", "mine.txt: mine"], Seen(scratch));

        // And another write afterwards is one like any other.
        Assert.Null(OutputFolder.Write(scratch.Path("out"), [("a.json", "newer")]));
        Assert.Contains("a.json: newer", Seen(scratch));
    }

    [Fact]
    public void What_a_killed_command_had_not_finished_to_write_is_taken_away()
    {
        using Scratch scratch = new();
        var old = Old(scratch);
        scratch.Put("out/.podlayout-writing/new-a.json", "half");
        scratch.Put("out/.podlayout-writing/lock", "");
        scratch.Put("out/.podlayout-writing/list.part", "+a.json");
        Assert.Null(OutputFolder.Mend(scratch.Path("out")));
        Assert.Equal(old, Seen(scratch));
    }

    [Theory]
    [InlineData("-../mine.txt")]
    [InlineData("+../mine.txt")]
    [InlineData("-sub/mine.txt")]
    [InlineData("-..")]
    [InlineData("")]
    public void A_list_from_elsewhere_touches_nothing_outside_its_folder(string line)
    {
        using Scratch scratch = new();
        var old = Old(scratch);
        scratch.Put("mine.txt", "outside");
        scratch.Put("out/sub/mine.txt", "below");
        scratch.Put("out/.podlayout-writing/list", line + "\n");
        scratch.Put("out/.podlayout-writing/new-a.json", "theirs");
        Assert.Null(OutputFolder.Mend(scratch.Path("out")));
        Assert.Equal(old, Seen(scratch));
        Assert.Equal(("outside", "below"), (File.ReadAllText(scratch.Path("mine.txt")), File.ReadAllText(scratch.Path("out/sub/mine.txt"))));
    }

    [Fact]
    public void A_folder_in_the_place_of_a_file_is_refused_and_left_alone()
    {
        using Scratch scratch = new();
        Old(scratch);
        scratch.Put("out/c.svg/keep.txt", "mine");
        Assert.Contains("c.svg is a folder", OutputFolder.Write(scratch.Path("out"), Next)!.Message, StringComparison.Ordinal);
        Assert.Equal(["a.json: old a", "b.csv: old b", "d.pdf: old d", "mine.txt: mine"], Seen(scratch));
        Assert.Equal("mine", File.ReadAllText(scratch.Path("out/c.svg/keep.txt")));
    }

    [Fact]
    public void Two_at_once_do_not_write_into_one_folder()
    {
        using Scratch scratch = new();
        Old(scratch);
        Finding? second = null;
        Assert.Null(OutputFolder.Write(scratch.Path("out"), Next, ["d.pdf"], step => second ??= step == "list" ? OutputFolder.Write(scratch.Path("out"), [("a.json", "other")]) : null));
        Assert.Contains("another podlayout is writing", second!.Message, StringComparison.Ordinal);
        Assert.Contains("a.json: new a", Seen(scratch));
    }

    [Fact]
    public void Check_finishes_what_a_killed_plan_began()
    {
        using Scratch scratch = new();
        SmallJobs.Put(scratch);
        SmallJobs.Plan(scratch, "out", "--card");
        SmallJobs.Put(scratch, """, "name": "another" """);
        SmallJobs.Plan(scratch, "next");
        (string, byte[])[] next = [.. Directory.GetFiles(scratch.Path("next")).Select(f => (Path.GetFileName(f), File.ReadAllBytes(f)))];
        var step = 0;
        Assert.Throws<Killed>(() => OutputFolder.Write(scratch.Path("out"), next, ["card.html", "card.pdf", "layout.dxf"], _ =>
        {
            if (step++ == 4)
            {
                throw new Killed();
            }
        }));
        var ran = Ran.Of("check", scratch.Path("out/layout.json"));
        Assert.Equal(ExitCodes.LayoutFound, ran.Code);
        Assert.DoesNotContain("[files-of", ran.Error, StringComparison.Ordinal);
        Assert.Equal(next.Select(f => f.Item1).Order(StringComparer.Ordinal), Directory.GetFileSystemEntries(scratch.Path("out")).Select(Path.GetFileName).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void A_full_screen_costs_no_result()
    {
        using Scratch scratch = new();
        SmallJobs.Put(scratch);
        using StringWriter error = new();
        using Full full = new();
        var code = CommandLine.Run(["plan", scratch.Path("job.json"), "--out", scratch.Path("out")], full, error, TestContext.Current.CancellationToken);
        Assert.Equal(ExitCodes.BadFile, code);
        Assert.Matches("\\Apodlayout: error: the output cannot be written: [^\n]* \\[output-unwritable\\]\n\\z", error.ToString().ReplaceLineEndings("\n"));
        Assert.Equal(["layout.json", "layout.svg", "pods.csv", "ports.csv"], Directory.GetFiles(scratch.Path("out")).Select(Path.GetFileName).Order(StringComparer.Ordinal));
    }

    [Theory]
    [InlineData("plan")]
    [InlineData("plan nothing.json")]
    [InlineData("shop")]
    [InlineData("--help")]
    public void With_both_streams_full_the_code_alone_tells(string line)
    {
        using Full output = new(), error = new();
        var code = CommandLine.Run(line.Split(' '), output, error, TestContext.Current.CancellationToken);
        Assert.Equal(line switch { "plan" => ExitCodes.BadCommandLine, "plan nothing.json" => ExitCodes.BadFile, _ => ExitCodes.BadFile }, code);
    }

    private static string[] Old(Scratch scratch)
    {
        scratch.Put("out/a.json", "old a");
        scratch.Put("out/b.csv", "old b");
        scratch.Put("out/d.pdf", "old d");
        scratch.Put("out/mine.txt", "mine");
        return Seen(scratch);
    }

    private static string[] Seen(Scratch scratch)
    {
        Assert.DoesNotContain(Directory.GetDirectories(scratch.Path("out")), d => Path.GetFileName(d).StartsWith('.'));
        return [.. Directory.GetFiles(scratch.Path("out")).Select(f => $"{Path.GetFileName(f)}: {File.ReadAllText(f)}").Order(StringComparer.Ordinal)];
    }

    private sealed class Killed : Exception;

    /// <summary>A screen without room.</summary>
    private sealed class Full : TextWriter
    {
        public override Encoding Encoding => Encoding.UTF8;

        public override void Write(char value) => throw new IOException("No space left on device");

        public override void Write(string? value) => throw new IOException("No space left on device");
    }
}
