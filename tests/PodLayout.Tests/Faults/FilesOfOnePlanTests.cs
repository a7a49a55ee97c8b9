using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using PodLayout.Cli;
using PodLayout.Tests.Cli;

namespace PodLayout.Tests.Faults;

/// <summary>What lies in a folder belongs to one plan.</summary>
public partial class FilesOfOnePlanTests
{
    private static readonly string[] Plain = ["layout.json", "layout.svg", "pods.csv", "ports.csv"];
    private static readonly string[] WithCard = ["card.html", "card.pdf", "layout.dxf", .. Plain];

    [Fact]
    public void Every_file_bears_the_mark_of_its_plan_and_another_plan_has_another()
    {
        using Scratch scratch = new();
        SmallJobs.Put(scratch);
        Assert.Equal(ExitCodes.LayoutFound, SmallJobs.Plan(scratch, "a", "--card").Code);
        SmallJobs.Put(scratch, """, "name": "another" """);
        Assert.Equal(ExitCodes.LayoutFound, SmallJobs.Plan(scratch, "b", "--card").Code);
        var (a, b) = (Marks(scratch.Path("a")), Marks(scratch.Path("b")));
        Assert.Equal(WithCard.Order(StringComparer.Ordinal), a.Keys.Order(StringComparer.Ordinal));
        Assert.Matches("^[0-9a-f]{8}$", Assert.Single(a.Values.Distinct()));
        Assert.NotEqual(a["layout.json"], Assert.Single(b.Values.Distinct()));
        // People read it too, on the picture and on the card.
        Assert.Contains($"Plan: {a["layout.json"]}", File.ReadAllText(scratch.Path("a/layout.svg")), StringComparison.Ordinal);
        Assert.Contains($"Plan: {a["layout.json"]}", File.ReadAllText(scratch.Path("a/card.html")), StringComparison.Ordinal);
        Assert.Contains($"Plan:{a["layout.json"]}", Handover.Setup.PaperText.All(File.ReadAllBytes(scratch.Path("a/card.pdf"))).Replace(" ", "", StringComparison.Ordinal), StringComparison.Ordinal);
    }

    [Fact]
    public void A_plan_without_a_card_takes_the_old_card_away_and_says_so()
    {
        using Scratch scratch = new();
        SmallJobs.Put(scratch);
        SmallJobs.Plan(scratch, "out", "--card");
        scratch.Put("out/note.txt", "mine");
        SmallJobs.Put(scratch, """, "name": "another" """);
        var ran = SmallJobs.Plan(scratch, "out");
        Assert.Equal(ExitCodes.LayoutFound, ran.Code);
        Assert.Contains("Removed from " + scratch.Path("out") + ", as out of date beside these: card.html, card.pdf, layout.dxf\n", ran.Out.ReplaceLineEndings("\n"), StringComparison.Ordinal);
        Assert.Equal(["layout.json", "layout.svg", "note.txt", "pods.csv", "ports.csv"], Names(scratch.Path("out")));
    }

    [Fact]
    public void After_a_plan_without_a_layout_no_card_stands_beside_empty_lists()
    {
        using Scratch scratch = new();
        SmallJobs.Put(scratch);
        SmallJobs.Plan(scratch, "out", "--card");
        SmallJobs.Put(scratch, widthMm: 3000, overhangMm: 20);
        Assert.Equal(ExitCodes.NoLayout, SmallJobs.Plan(scratch, "out", "--card").Code);
        Assert.Equal(Plain, Names(scratch.Path("out")));
        Assert.Single(File.ReadAllLines(scratch.Path("out/pods.csv")));
    }

    [Fact]
    public void A_plan_that_is_refused_before_it_begins_leaves_the_whole_set_of_before()
    {
        using Scratch scratch = new();
        SmallJobs.Put(scratch);
        SmallJobs.Plan(scratch, "out", "--card");
        var before = Contents(scratch.Path("out"));
        scratch.Put("part.dxf", "0\nSECTION\n");
        Assert.Equal(ExitCodes.BadDrawing, SmallJobs.Plan(scratch, "out").Code);
        Assert.Equal(before, Contents(scratch.Path("out")));
    }

    [Fact]
    public void A_file_of_the_same_name_that_is_not_ours_stays()
    {
        using Scratch scratch = new();
        SmallJobs.Put(scratch);
        scratch.Put("out/card.html", "<p>Birthday card</p>");
        Assert.Equal(ExitCodes.LayoutFound, SmallJobs.Plan(scratch, "out").Code);
        Assert.Equal("<p>Birthday card</p>", File.ReadAllText(scratch.Path("out/card.html")));
    }

    [Theory]
    [InlineData("check", "pods.csv")]
    [InlineData("check", "card.html")]
    [InlineData("check", "card.pdf")]
    [InlineData("check", "layout.dxf")]
    [InlineData("card", "layout.svg")]
    [InlineData("card", "ports.csv")]
    public void Files_of_two_plans_in_one_folder_are_refused(string command, string name)
    {
        using Scratch scratch = new();
        SmallJobs.Put(scratch);
        SmallJobs.Plan(scratch, "a", "--card");
        SmallJobs.Put(scratch, """, "name": "another" """);
        SmallJobs.Plan(scratch, "b", "--card");
        File.Copy(scratch.Path("b/" + name), scratch.Path("a/" + name), overwrite: true);
        var before = Contents(scratch.Path("a"));
        var ran = Ran.Of([command, scratch.Path("a/layout.json"), .. command == "card" ? ["--out", scratch.Path("a")] : Array.Empty<string>()]);
        Assert.Equal(ExitCodes.BadRequest, ran.Code);
        Assert.Contains($"{name}: is of the plan {Marks(scratch.Path("b"))["layout.json"]}, the layout beside it of the plan {Marks(scratch.Path("a"))["layout.json"]}.", ran.OnlyError(), StringComparison.Ordinal);
        Assert.Equal(before, Contents(scratch.Path("a")));
    }

    [Fact]
    public void Empty_lists_beside_a_layout_with_pods_are_refused()
    {
        using Scratch scratch = new();
        SmallJobs.Put(scratch);
        SmallJobs.Plan(scratch, "out");
        File.WriteAllText(scratch.Path("out/pods.csv"), File.ReadAllLines(scratch.Path("out/pods.csv"))[0] + "\r\n");
        Assert.Contains("pods.csv: is of a plan that found no layout", Ran.Of("check", scratch.Path("out/layout.json")).OnlyError(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_card_is_not_written_beside_the_layout_of_another_plan()
    {
        using Scratch scratch = new();
        SmallJobs.Put(scratch);
        SmallJobs.Plan(scratch, "a");
        SmallJobs.Put(scratch, """, "name": "another" """);
        SmallJobs.Plan(scratch, "b");
        var ran = Ran.Of("card", scratch.Path("a/layout.json"), "--out", scratch.Path("b"));
        Assert.Equal(ExitCodes.BadRequest, ran.Code);
        ran.OnlyError();
        Assert.Equal(Plain, Names(scratch.Path("b")));
    }

    [Fact]
    public void The_card_of_a_layout_that_was_changed_by_hand_has_a_mark_behind_that_of_its_plan()
    {
        using Scratch scratch = new();
        SmallJobs.Put(scratch);
        SmallJobs.Plan(scratch, "out", "--card");
        var planned = Marks(scratch.Path("out"))["layout.json"];
        var json = JsonNode.Parse(File.ReadAllText(scratch.Path("out/layout.json")))!;
        json["rules"]!["overhangAlongGrainMm"] = 95;
        scratch.Put("out/layout.json", json.ToJsonString());

        // The files of the plan are of before.
        var check = Ran.Of("check", scratch.Path("out/layout.json"));
        Assert.Equal(6, check.Error.Split('\n').Count(l => l.EndsWith("[files-of-before]", StringComparison.Ordinal)));

        var made = Ran.Of("card", scratch.Path("out/layout.json"), "--out", scratch.Path("out"));
        Assert.Equal(check.Code, made.Code);
        Assert.Contains("as out of date beside these: layout.svg\n", made.Out.ReplaceLineEndings("\n"), StringComparison.Ordinal);
        var marks = Marks(scratch.Path("out"));
        Assert.Equal(planned, marks["layout.json"]);
        Assert.Matches($"^{planned}\\+[0-9a-f]{{8}}$", Assert.Single(marks.Where(m => m.Key != "layout.json").Select(m => m.Value).Distinct()));
        Assert.DoesNotContain("files-of-before", Ran.Of("check", scratch.Path("out/layout.json")).Error, StringComparison.Ordinal);

        // Changed once more.
        json["rules"]!["overhangAlongGrainMm"] = 96;
        scratch.Put("out/layout.json", json.ToJsonString());
        Assert.Contains("[files-of-before]", Ran.Of("check", scratch.Path("out/layout.json")).Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_mark_that_is_none_is_refused()
    {
        using Scratch scratch = new();
        SmallJobs.Put(scratch);
        SmallJobs.Plan(scratch, "out");
        var json = JsonNode.Parse(File.ReadAllText(scratch.Path("out/layout.json")))!;
        json["mark"] = "<script>";
        Assert.Contains("$.mark: The plan's mark has eight digits", Ran.Of("check", scratch.Put("x/layout.json", json.ToJsonString())).OnlyError(), StringComparison.Ordinal);
    }

    [Fact]
    public void The_same_files_come_out_however_the_path_is_typed()
    {
        using Scratch scratch = new();
        scratch.Put("jobs/x/part.dxf", SmallJobs.Rectangle(240, 150) + Reading.Drawings.Groups("0 0"));
        // A line that is left out with a warning, so that a finding names the drawing.
        scratch.Put("jobs/x/part.dxf", Reading.Drawings.Dxf(Reading.Drawings.Rectangle(0, 0, 240, 150, "OUTLINE") + Reading.Drawings.Line(30, 30, 60, 60, "MARK")));
        scratch.Put("jobs/x/job.json", SmallJobs.Job(""", "shop": "../shop.json" """));
        scratch.Put("jobs/shop.json", Ran.Of("shop").Out);
        string[] typed = [scratch.Path("jobs/x/job.json"), scratch.Path("jobs/../jobs/./x/job.json"), Path.GetRelativePath(Environment.CurrentDirectory, scratch.Path("jobs/x/job.json"))];
        var outputs = typed.Select((path, i) =>
        {
            var ran = Ran.Of("plan", path, "--out", scratch.Path($"out{i}"), "--card", "--threads", "1");
            Assert.Equal(ExitCodes.LayoutFound, ran.Code);
            return Contents(scratch.Path($"out{i}"));
        }).ToList();
        Assert.Contains("\"file\": \"part.dxf\"", outputs[0]["layout.json"], StringComparison.Ordinal);
        Assert.All(outputs, o => Assert.Equal(outputs[0], o));
        Assert.All(outputs[0].Values, text => Assert.DoesNotContain(scratch.Folder, text, StringComparison.Ordinal));

        // The drawing itself too, and a job that names it by a path of this machine.
        scratch.Put("jobs/y/job.json", SmallJobs.Job().Replace("part.dxf", scratch.Path("jobs/x/part.dxf").Replace('\\', '/'), StringComparison.Ordinal));
        Assert.Equal(ExitCodes.LayoutFound, Ran.Of("plan", scratch.Path("jobs/y/job.json"), "--out", scratch.Path("outy"), "--card").Code);
        // The cutter that is assumed there is too much for so small a part.
        Assert.Equal(ExitCodes.DoesNotHold, Ran.Of("plan", scratch.Path("jobs/x/part.dxf"), "--thickness", "30", "--overhang", "90", "--at", "105,105", "--out", scratch.Path("outz"), "--card").Code);
        Assert.All([.. Contents(scratch.Path("outy")).Values, .. Contents(scratch.Path("outz")).Values], text => Assert.DoesNotContain(scratch.Folder, text, StringComparison.Ordinal));
    }

    private static string[] Names(string folder) => [.. Directory.GetFileSystemEntries(folder).Select(f => Path.GetFileName(f)!).Order(StringComparer.Ordinal)];

    private static SortedDictionary<string, string> Contents(string folder) => new(
        Directory.GetFiles(folder).ToDictionary(f => Path.GetFileName(f), f => System.Text.Encoding.Latin1.GetString(File.ReadAllBytes(f)), StringComparer.Ordinal), StringComparer.Ordinal);

    // Read as anyone would who looks for eight digits where each kind of file has them.
    private static Dictionary<string, string> Marks(string folder) => Contents(folder).ToDictionary(f => f.Key, f => Path.GetExtension(f.Key) switch
    {
        ".csv" => Assert.Single(f.Value.TrimEnd().Split("\r\n").Skip(1).Select(row => row.Split(',')[^1]).Distinct()),
        ".json" => (string)JsonNode.Parse(f.Value)!["mark"]!,
        _ => Told().Match(f.Value).Groups[1].Value,
    }, StringComparer.Ordinal);

    [GeneratedRegex("PodLayout plan ([0-9a-f+]+)")]
    private static partial Regex Told();
}
