using System.Globalization;
using PodLayout.Cuts;
using PodLayout.Findings;
using PodLayout.Jobs;
using PodLayout.Programs;
using PodLayout.Reading;
using PodLayout.Tests.Programs;

namespace PodLayout.Tests.Cuts;

/// <summary>A plate 30 mm thick on pods of 50 mm, cut around by a program whose zero is told right or wrong.</summary>
public class ZeroDoubtsTests
{
    private const double Thickness = 30, PodHeight = 50;

    [Theory]
    [InlineData(ZZero.PartFace, 3)]
    [InlineData(ZZero.PartUnderside, 3)]
    [InlineData(ZZero.PodFace, 3)]
    [InlineData(ZZero.BoardFace, 3)]
    [InlineData(ZZero.PartFace, 1)]
    [InlineData(ZZero.PartUnderside, 1)]
    [InlineData(ZZero.BoardFace, 1)]
    public void A_zero_that_is_told_right_draws_no_word(ZZero zero, int passes) => Assert.Null(Told(Around(zero, passes, -0.8), zero));

    [Theory]
    [InlineData(ZZero.PartFace, ZZero.PartUnderside)]
    [InlineData(ZZero.PartFace, ZZero.PodFace)]
    [InlineData(ZZero.PartFace, ZZero.BoardFace)]
    [InlineData(ZZero.PartUnderside, ZZero.PartFace)]
    [InlineData(ZZero.PartUnderside, ZZero.BoardFace)]
    [InlineData(ZZero.BoardFace, ZZero.PartFace)]
    [InlineData(ZZero.BoardFace, ZZero.PartUnderside)]
    public void A_zero_that_is_told_wrong_is_found_out_and_the_right_one_is_named(ZZero real, ZZero told)
    {
        foreach (var passes in new[] { 1, 3 })
        {
            var finding = Told(Around(real, passes, -0.8), told)!;
            Assert.True(finding.Severity >= Severity.Warning);
            var name = real switch { ZZero.PartFace => "partFace", ZZero.BoardFace => "boardFace", _ => "partUnderside (or podFace)" };
            Assert.Contains($"zZero {name} would make sense", finding.Message, StringComparison.Ordinal);
            Assert.Contains("the deepest tip is then 0.8 mm below the underside", finding.Message, StringComparison.Ordinal);
            Assert.StartsWith("part.nc:", finding.Place?.ToString(), StringComparison.Ordinal);
        }
    }

    [Fact]
    public void A_program_that_never_reaches_the_part_is_refused()
    {
        // Zero is on the board, 80 mm below the part's face; the lowest tip is at 49.2.
        var outcome = Apply(Around(ZZero.BoardFace, 3, -0.8), ZZero.PartFace);
        Assert.Equal(("zero-unlikely", Severity.Refused), (outcome.Refusal!.Code, outcome.Refusal.Severity));
        Assert.Contains("no cut reaches the part: the deepest tip stays 49.2 mm above its face", outcome.Refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Where_no_zero_makes_sense_that_is_said()
    {
        var finding = Told("G21 G90 T1 M6 M3 F900\nG0 X10 Y10 Z300\nG1 Z200\nX500\nG0 Z300\nM2", ZZero.PartFace)!;
        Assert.Contains("no other zero makes sense of its depths either", finding.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("G0 X100 Y100 Z5\nG1 Z-0.8\nX400\nG0 Z5")] // A line engraved in the face.
    [InlineData("G0 X100 Y100 Z40\nG1 Z-0.8\nX400\nG0 Z40")] // The same with a high way back.
    [InlineData("G0 X100 Y100 Z5\nG1 Z-12\nX400\nY200\nG0 Z-4\nX100\nG0 Z5")] // A rapid move within a pocket.
    [InlineData("G0 X100 Y100 Z5\nG81 Z-33 R2\nX200\nG80")] // Drilled holes only.
    public void A_program_that_only_cuts_little_draws_no_doubt_about_its_zero(string moves) =>
        Assert.Null(Told("G21 G90 G17 T1 M6 M3 F900\n" + moves + "\nM2", ZZero.PartFace));

    private static string Around(ZZero zero, int passes, double tip)
    {
        var underside = zero switch { ZZero.PartFace => -Thickness, ZZero.BoardFace => PodHeight, _ => 0 };
        var (face, text) = (underside + Thickness, new System.Text.StringBuilder("G21 G90 G17 T1 M6 M3 F6000\n"));
        for (var i = 1; i <= passes; i++)
        {
            var z = face - (Thickness - tip) * i / passes;
            text.Append(CultureInfo.InvariantCulture, $"G0 Z{face + 8:0.###}\nG0 X-6 Y-6\nG1 Z{z:0.###}\nY406\nX606\nY-6\nX-6\nG0 Z{face + 8:0.###}\n");
        }

        return text + "M2";
    }

    private static Finding? Told(string program, ZZero zero) => Apply(program, zero).Findings.SingleOrDefault(f => f.Code == "zero-unlikely");

    private static Outcome<Job> Apply(string program, ZZero zero)
    {
        var plate = Shapes.Rectangle(0, 0, 600, 400);
        Drawing drawing = new("part.dxf", "DXF", "millimetre", 1, 0.05, [new("PART", plate)], [], [], []);
        var job = Shapes.JobFor(new(plate, [], []), Shapes.Board(900, 600), [Shapes.Pod(60, 60)], 60);
        var tools = Posted.Tools(new Tool(1, 12, new CutterForm.Flat()));
        return Cutting.Apply(
            job with { Part = job.Part with { ThicknessMm = Thickness } }, drawing,
            new([], new("part.nc", tools, zero, default, null, false), 0.1, 2, null), Posted.Read(program).Value!, "job.json");
    }
}
