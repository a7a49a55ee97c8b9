using System.Text;
using PodLayout.Cli;
using PodLayout.Findings;
using PodLayout.Tests.Cli;

namespace PodLayout.Tests.Faults;

/// <summary>What steers a terminal or turns what follows never comes out as it went in.</summary>
public class PlainWordsTests
{
    private const string Steering = "\u001b[31mRED\u001b]0;title\u0007\u202Eevil\u2066x\u200F\u009B2J\u2028y";

    [Fact]
    public void Layers_and_file_names_that_steer_are_shown_by_number()
    {
        using Scratch scratch = new();
        // The layer of a line that is left out with a warning, of the outline, and the file itself.
        var layer = Steering.Replace("\u2028", "", StringComparison.Ordinal);
        var dxf = Reading.Drawings.Rectangle(0, 0, 240, 150, "OUTLINE") + Reading.Drawings.Line(30, 30, 60, 60, "MARK") + Reading.Drawings.Rectangle(100, 60, 9, 9, "HOLE");
        var text = Reading.Drawings.Dxf(dxf, header: "9 $ACADVER 1 AC1027 9 $INSUNITS 70 4").Replace("MARK", layer, StringComparison.Ordinal).Replace("HOLE", "H" + layer, StringComparison.Ordinal);
        var drawing = scratch.Put("part.dxf", text);
        var steered = Ran.Of("plan", scratch.Put("part\u001b[2J\u202E.dxf", text), "--thickness", "30");
        Assert.Contains("FILE: this text holds a control character", steered.OnlyError(), StringComparison.Ordinal);
        var planned = Ran.Of("plan", drawing, "--thickness", "30", "--overhang", "90", "--at", "105,105", "--out", scratch.Path("out"), "--card", "--date", "a\u001b[1mb", "--revision", "\u202Ec");
        Assert.Contains(planned.Code, new[] { ExitCodes.LayoutFound, ExitCodes.DoesNotHold });
        var inspected = Ran.Of("inspect", drawing);
        var json = Ran.Of("inspect", drawing, "--json");
        Assert.Contains("<U+001B>[31mRED", inspected.Error + inspected.Out, StringComparison.Ordinal);
        foreach (var said in new[] { planned.Out, planned.Error, inspected.Out, inspected.Error, json.Out, json.Error, steered.Error, Ran.Of("plan", drawing).Error })
        {
            AssertPlain(said.ReplaceLineEndings("\n"));
        }

        foreach (var file in Directory.GetFiles(scratch.Path("out")).Where(f => !f.EndsWith(".pdf", StringComparison.Ordinal)))
        {
            AssertPlain(File.ReadAllText(file).ReplaceLineEndings("\n"));
        }

        var pages = Handover.Setup.PaperText.All(File.ReadAllBytes(scratch.Path("out/card.pdf")));
        Assert.DoesNotContain(pages, Plain.Steers);
    }

    [Theory]
    [InlineData("\u001b[31m")]
    [InlineData("\u202E")]
    [InlineData("\u200F")]
    [InlineData("\uFEFF")]
    public void Names_in_a_job_that_steer_are_refused(string steering)
    {
        using Scratch scratch = new();
        SmallJobs.Put(scratch, $", \"name\": {System.Text.Json.JsonSerializer.Serialize("a" + steering)}");
        Assert.Contains("$.name: this text holds a control character, a mark of direction", Ran.Of("plan", scratch.Path("job.json")).OnlyError(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_layout_that_steers_makes_plain_files()
    {
        using Scratch scratch = new();
        SmallJobs.Put(scratch, """, "name": "NAME" """);
        SmallJobs.Plan(scratch, "out");
        var json = File.ReadAllText(scratch.Path("out/layout.json")).Replace("NAME", Steering.Replace("\u001b", "\\u001b", StringComparison.Ordinal).Replace("\u0007", "\\u0007", StringComparison.Ordinal), StringComparison.Ordinal);
        var ran = Ran.Of("card", scratch.Put("layout.json", json), "--out", scratch.Path("card"));
        Assert.Equal(ExitCodes.LayoutFound, ran.Code);
        AssertPlain(Ran.Of("check", scratch.Path("layout.json")).Out.ReplaceLineEndings("\n"));
        foreach (var file in Directory.GetFiles(scratch.Path("card")).Where(f => !f.EndsWith(".pdf", StringComparison.Ordinal)))
        {
            AssertPlain(File.ReadAllText(file).ReplaceLineEndings("\n"));
        }
    }

    // Unicode Standard Annex 9 names the marks of direction; C0 and C1 are the controls of ISO 6429.
    private static void AssertPlain(string text)
    {
        var steering = text.EnumerateRunes().Where(r => (Rune.IsControl(r) && r.Value is not ('\n' or '\t')) || r.Value is 0x61C or 0x200E or 0x200F or (>= 0x2028 and <= 0x202E) or (>= 0x2066 and <= 0x2069) or 0xFEFF);
        Assert.Empty(steering.Select(r => r.Value.ToString("X4", System.Globalization.CultureInfo.InvariantCulture)).Distinct());
    }
}
