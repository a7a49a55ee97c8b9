using System.Text;
using PodLayout.Findings;
using PodLayout.Programs;

namespace PodLayout.Tests.Programs;

public class DamagedProgramsTests
{
    private const string Head = "%\nN10 G21 G90 G17\nT1 M6\nS18000 M3\nG0 X0 Y0\nG0 Z5\n";

    public static TheoryData<string, string, int> Damaged => new()
    {
        { Head + "G1 X#101 F2000", "macro", 7 },
        { Head + "G1 X[10+2] F2000", "macro", 7 },
        { Head + "O100 sub", "o-word", 7 },
        { Head + "O200\nG1 X1", "o-word", 7 },
        { Head + "M98 P1000", "word-not-read", 7 },
        { Head + "G5 X10 Y10 I1 J1 P0 Q0", "word-not-read", 7 },
        { Head + "G68 X0 Y0 R45", "word-not-read", 7 },
        { Head + "G1 X10 A45 F100", "word-not-read", 7 },
        { Head + "G1 X10 X20 F100", "word-twice", 7 },
        { Head + "G0 G1 X10 F100", "modal-group-twice", 7 },
        { Head + "G1 X F100", "number-missing", 7 },
        { Head + "G1 X1.2.3 F100", "number-missing", 7 },
        { Head + "G1 X10 (to the corner", "comment-open", 7 },
        { Head + "(a (b) c)", "comment-nested", 7 },
        { Head + "G1 X10 ? F100", "character-unexpected", 7 },
        { Head + "G2 X10 Y0 I4 J0 F100", "arc-radius", 7 },
        { Head + "G2 X10 Y0 R4 F100", "arc-radius", 7 },
        { Head + "G2 X0 Y0 R4 F100", "arc-unclear", 7 },
        { Head + "G2 X10 Y0 F100", "arc-unclear", 7 },
        { Head + "G81 X10 Y10 Z-5 F100", "cycle-unclear", 7 },
        { Head + "G81 X10 Y10 Z-5 R-8 F100", "cycle-unclear", 7 },
        { Head + "G80 X10", "motion-missing", 7 },
        { Head + "G28 G1 X10 F100", "axes-claimed-twice", 7 },
        { Head + "T1.5 M6", "number-not-whole", 7 },
        { Head + "G1 Y10 / X20", "slash-misplaced", 7 },
        { Head + "G1 X99999999 F100", "coordinate-too-large", 7 },
        { "G91\nG1 X10 F100", "place-unknown", 2 },
        { "0 BEGIN PGM TOP MM\n1 BLK FORM 0.1 Z X+0", "character-unexpected", 1 },
        { "IN;SP1;PU0,0;PD100,100;", "number-missing", 1 },
        { "<?xml version=\"1.0\"?>", "character-unexpected", 1 },
        { "  0\nSECTION\n  2\nENTITIES\n", "character-unexpected", 1 },
        { "G1 X1 F100" + new string(' ', 250), "line-too-long", 1 },
        { "", "program-without-moves", 1 },
        { "%\n(nothing)\n%\nG0 X1", "program-without-moves", 3 },
        { "G0 X1\nG1 X\0", "program-binary", 2 },
    };

    [Theory]
    [MemberData(nameof(Damaged))]
    public void A_damaged_or_foreign_program_is_refused_in_one_line_with_its_place(string text, string code, int line)
    {
        var outcome = Posted.Read(text);
        var refused = Assert.Single(outcome.Findings, f => f.Severity == Severity.Refused);
        Assert.Equal((code, $"part.nc:{line}"), (refused.Code, refused.Place?.ToString()));
        Assert.Equal(FindingKind.Program, refused.Kind);
        Assert.NotNull(refused.Remedy);
        Assert.DoesNotContain('\n', refused.ToString());
    }

    [Fact]
    public void Text_in_UTF_16_is_named_as_such()
    {
        var outcome = ProgramReading.Read("part.nc", [0xFF, 0xFE, .. Encoding.Unicode.GetBytes("G0 X1")], new());
        Assert.Equal("program-encoding", outcome.Refusal?.Code);
    }

    [Fact]
    public void Random_damage_is_a_refusal_or_a_path_and_never_a_fault()
    {
        var text = Encoding.ASCII.GetBytes(Head + "G1 Z-3 F3000\nX100 Y20\nG2 X120 Y40 I0 J20\nG81 X5 Y5 Z-3 R2\nG80\nG92 X3\nG41 D1 G1 X9\nY60\nG40\nG28\nM30\n%\n");
        var tools = Posted.Tools(new Tool(1, 6, new CutterForm.Flat()));
        for (var seed = 0; seed < 3000; seed++)
        {
            var random = new Random(seed);
            var damaged = text.ToArray();
            for (var i = random.Next(1, 4); i > 0; i--)
            {
                damaged[random.Next(damaged.Length)] = (byte)random.Next(256);
            }

            var outcome = ProgramReading.Read("part.nc", damaged, new() { Tools = tools });
            Assert.True(outcome.Succeeded || outcome.Refusal is not null);
            Assert.DoesNotContain(
                outcome.Value?.Stretches ?? [], s => !double.IsFinite(s.To.XMm + s.To.YMm + s.To.ZMm + s.From.XMm + s.From.YMm + s.From.ZMm + s.TurnRad + s.FeedMmPerMin));
        }
    }

    [Fact]
    public void What_moves_nothing_is_a_warning_with_its_first_line_and_a_count()
    {
        var outcome = Posted.Read(Head + "M10\nG1 X5 F100\nM10\nG4\nM5\nG1 X6\nG53 Z0\nM30\n%\n");
        Assert.True(outcome.Succeeded, outcome.Refusal?.ToString());
        Assert.Equal(
            ["word-left-out", "dwell-unclear", "spindle-stopped", "height-of-machine"], outcome.Findings.Select(f => f.Code));
        Assert.Contains("(2 times, first here)", outcome.Findings[0].Message, StringComparison.Ordinal);
        Assert.Equal("part.nc:7", outcome.Findings[0].Place?.ToString());
    }

    [Theory]
    [InlineData("G0 X1 Y1 Z5\nM30", "unit-assumed")]
    [InlineData("G21 G0 X1 Y1 Z5", "program-end-missing")]
    [InlineData("G21 T3\nG0 X1 Y1 Z5\nM30", "tool-change-missing")]
    [InlineData("G21 G0 X1 Y1 Z5\nG55 X2\nM30", "work-systems-several")]
    [InlineData("G21 G0 X1 Y1 Z5\nG28 X0\nM30", "travel-unchecked")]
    [InlineData("G21 G0 X1 Y1 Z5\n/X3\nM30", "slash-lines")]
    [InlineData("G21 M3 G0 X1 Y1 Z5\nG1 X4\nM30", "feed-missing")]
    public void What_had_to_be_assumed_is_said(string text, string code)
    {
        var outcome = Posted.Read(text);
        Assert.True(outcome.Succeeded, outcome.Refusal?.ToString());
        Assert.Contains(outcome.Findings, f => f.Code == code);
    }

    [Fact]
    public void Lines_with_a_slash_are_left_out_when_the_job_says_so()
    {
        const string Text = "G21 G0 X1 Y1 Z5\n/X3\nX4\nM30";
        Assert.Equal(3, Posted.Read(Text).Value!.Stretches.Length);
        Assert.Equal(2, Posted.Read(Text, new() { LeavesOutSlashLines = true }).Value!.Stretches.Length);
    }

    [Fact]
    public void A_program_may_begin_unplaced_and_go_to_the_machines_own_reference()
    {
        var outcome = Posted.Read("%\nO1000 (TOP)\nG21 G40 G80 G90\nG91 G28 Z0\nG90\nT1 M6\nG54 G0 X10 Y20 S18000 M3\nG43 H1 Z20\nG1 Z-3 F1000\nG0 Z20\nG91 G28 Z0\nG28 X0 Y0\nM30\n%\n");
        Assert.True(outcome.Succeeded, outcome.Refusal?.ToString());
        Assert.Equal([(10, 20, 20), (10, 20, -3), (10, 20, 20)], outcome.Value.Ends());
        Assert.All(outcome.Value.Stretches, s => Assert.Equal(1, s.ToolNumber));
        Assert.Equal(["height-of-machine"], outcome.Findings.Select(f => f.Code));
    }
}
