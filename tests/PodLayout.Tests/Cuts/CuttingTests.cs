using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using PodLayout.Cuts;
using PodLayout.Findings;
using PodLayout.Geometry;
using PodLayout.Jobs;
using PodLayout.Parts;
using PodLayout.Programs;
using PodLayout.Reading;
using PodLayout.Seats;
using PodLayout.Tests.Programs;

namespace PodLayout.Tests.Cuts;

public class CuttingTests
{
    private const double Thickness = 30;

    private static readonly Tool Mill = new(3, 12, new CutterForm.Flat());

    // An opening of 200 x 120 in a plate of 900 x 600.
    private static readonly Ring Opening = Shapes.Rectangle(350, 240, 200, 120);

    [Theory]
    [InlineData(CutSide.Inside, 6, "")]
    [InlineData(CutSide.Outside, -6, "G2")]
    [InlineData(CutSide.On, 0, "")]
    public void A_cut_given_as_an_operation_and_as_a_program_keeps_pods_off_the_same_places(CutSide side, double inset, string corners)
    {
        var operation = Through(side);
        var byOperation = Plate(operation).Part.Shape;
        var byProgram = Plate([], Posted.Read(Contour(inset, corners), new() { Tools = Posted.Tools(Mill) }).Value).Part.Shape;
        var (a, b) = (byOperation.Hazards.Single().Area, byProgram.Hazards.Single().Area);
        Assert.True(a.Minus(b).AreaMm2 + b.Minus(a).AreaMm2 < 1e-3 * a.AreaMm2);
        foreach (var pod in (PodLayout.Shops.PodType[])[Shapes.Pod(120, 60, mayTurn: true), Round(90)])
        {
            var (fromOperation, fromProgram) = (Seats(byOperation, pod), Seats(byProgram, pod));
            Assert.True(fromOperation.Minus(fromProgram).AreaMm2 + fromProgram.Minus(fromOperation).AreaMm2 < 1e-4 * fromOperation.AreaMm2);
        }
    }

    [Fact]
    public void Bodies_keep_the_cut_clearance_from_a_cut()
    {
        // A through drilling of 20 mm in the middle; a square body of 60 with a clearance of 3: centres keep out of a square of
        // 60 with a round of 13 about it, less the hair that bodies may pass their line.
        var hole = new CutOperation(CutKind.Drill, new CutLines.OfLayer("CUT"), "$.cuts[0]") { DiameterMm = 20, LowestTipMm = -1 };
        var without = Seats(Plate().Part.Shape, Shapes.Pod(60, 60)).AreaMm2;
        var with = Seats(Plate(hole).Part.Shape, Shapes.Pod(60, 60)).AreaMm2;
        const double Side = 60 - 2 * Tolerances.ContactMm;
        Assert.Equal(1, (without - with) / (Side * Side + 4 * Side * 13 + Math.PI * 13 * 13), 1e-4);
    }

    [Fact]
    public void A_groove_in_the_underside_keeps_seals_off_and_not_bodies()
    {
        var groove = new CutOperation(CutKind.PocketInUnderside, new CutLines.OfLayer("CUT"), "$.cuts[0]");
        var shape = Plate(groove).Part.Shape;
        Assert.Equal((false, true), (shape.Hazards[0].KeepsBodiesOff, shape.Hazards[0].KeepsSealsOff));
        var inset = Shapes.Pod(120, 120) with { SealInsetAboveMm = 10 };
        var index = new RegionIndex(Seats(shape, inset));
        // Body from 60 right of the opening's right edge (550) is 0 off it; its seal 10; the seal margin is 3.
        Assert.True(index.Contains(new(550 + 60 - 6, 300)));
        Assert.False(index.Contains(new(550 + 60 - 8, 300)));
    }

    [Fact]
    public void What_does_not_cut_through_is_said_and_keeps_nothing_off()
    {
        var skin = Through(CutSide.Inside) with { LowestTipMm = 0.5 };
        var outcome = Apply([skin, new(CutKind.PocketFromFace, new CutLines.OfLayer("CUT"), "$.cuts[1]") { LowestTipMm = 8 }], null);
        Assert.Empty(outcome.Value!.Part.Shape.Hazards);
        Assert.Contains(outcome.Findings, f => f.Code == "cut-not-through" && f.Message.StartsWith("0.5 mm of wood", StringComparison.Ordinal));
        // A skin thinner than what counts is no skin.
        Assert.Single(Apply([skin with { LowestTipMm = 0.05 }], null).Value!.Part.Shape.Hazards);
    }

    [Fact]
    public void Holding_tabs_are_stated_and_change_nothing()
    {
        var outcome = Apply([Through(CutSide.Inside) with { Tabs = 4 }], null);
        Assert.Contains(outcome.Findings, f => f.Code == "tabs-stated");
        Assert.Equal(
            Plate(Through(CutSide.Inside)).Part.Shape.Hazards[0].Area.AreaMm2, outcome.Value!.Part.Shape.Hazards[0].Area.AreaMm2, 9);
    }

    [Theory]
    [InlineData("NONE", CutSide.On, 12, "cut-without-lines")]
    [InlineData("OPEN", CutSide.Inside, 12, "cut-open")]
    [InlineData("CUT", CutSide.Inside, 130, "cut-empty")]
    public void An_operation_that_cannot_be_is_refused_at_its_place(string layer, CutSide side, double diameter, string code)
    {
        var refusal = Apply([Through(side) with { Lines = new CutLines.OfLayer(layer), ToolDiameterMm = diameter }], null).Refusal!;
        Assert.Equal((code, "job.json $.cuts[0]"), (refusal.Code, refusal.Place?.ToString()));
    }

    [Theory]
    [InlineData(-10, true)]
    [InlineData(-48, true)]
    [InlineData(-48.5, false)]
    public void A_tip_too_near_to_the_board_is_refused_and_the_spare_height_is_said(double tip, bool fits)
    {
        // Pods of 50 mm; at least 2 mm are to stay.
        var text = string.Create(CultureInfo.InvariantCulture, $"G21 T3 M6\nM3 F900\nG0 X400 Y300 Z9\nG1 Z{tip - Thickness}\nG0 Z9\nM2");
        var outcome = Apply([], Posted.Read(text).Value);
        Assert.Equal(fits, outcome.Succeeded);
        var said = outcome.Findings.First(f => f.Code == (fits ? "height-spare" : "pods-too-low"));
        Assert.Contains(string.Create(CultureInfo.InvariantCulture, $"{50 + tip:0.##} mm above the board"), said.Message, StringComparison.Ordinal);
        Assert.Equal("part.nc:4", said.Place?.ToString());
        Assert.True(!fits || said.Message.EndsWith("the pod face is at Z -30 and the part's face at Z 0", StringComparison.Ordinal));
    }

    [Fact]
    public void Pods_too_low_for_the_cut_are_left_out_where_higher_ones_are_in_stock()
    {
        var path = Posted.Read("G21 T3 M6\nM3 F900\nG0 X400 Y300 Z9\nG1 Z-80\nG0 Z9\nM2").Value;
        var job = Bare() with { Shop = Bare().Shop with { Pods = [Shapes.Pod(60, 60), Shapes.Pod(120, 60) with { HeightMm = 80 }] } };
        var outcome = Cutting.Apply(job, PlateDrawing(), new([], Program(), 0.1, 2, null), path, "job.json");
        Assert.Equal([0, 99], outcome.Value!.Shop.Pods.Select(p => p.Stock));
    }

    [Fact]
    public void Loose_pieces_are_what_is_left_of_the_blank_beside_the_part()
    {
        // The opening's middle, smaller by the tool all round; and the blank's rim once the outline is cut.
        var cuts = new CutOperation[]
        {
            Through(CutSide.Inside),
            new(CutKind.ThroughProfile, new CutLines.Outline(), "$.cuts[1]") { Side = CutSide.Outside, ToolDiameterMm = 12, LowestTipMm = -1 },
        };
        var outcome = Cutting.Apply(Bare(), PlateDrawing(), new([.. cuts], null, 0.1, 2, new(null, 40, 700)), null, "job.json");
        var pieces = outcome.Findings.Where(f => f.Code == "offcut").ToList();
        Assert.Equal([Severity.Warning, Severity.Warning], pieces.Select(p => p.Severity));
        Assert.Contains("980 x 680 mm", pieces[0].Message, StringComparison.Ordinal);
        Assert.Contains("176 x 96 mm", pieces[1].Message, StringComparison.Ordinal);
        // 17.6 cm x 9.6 cm x 3 cm at 0.7 g/cm3.
        Assert.Contains("0.355 kg", pieces[1].Message, StringComparison.Ordinal);
    }

    [Fact]
    public void No_pod_that_a_seat_region_allows_comes_within_the_clearance_of_a_low_tool()
    {
        for (var seed = 0; seed < 12; seed++)
        {
            var random = new Random(seed);
            var path = Posted.Read(Random(random)).Value!;
            var shape = Plate([], path).Part.Shape;
            var pod = seed % 2 == 0 ? Shapes.Pod(90, 60) : Round(90);
            var index = new RegionIndex(Seats(shape, pod));
            var low = path.Stretches.SelectMany(s => Enumerable.Range(0, 101).Select(i => s.At(i / 100.0)))
                .Where(t => t.ZMm < -Thickness + 0.1 - 1e-9).Select(t => new Point2(t.XMm, t.YMm)).ToList();
            Assert.NotEmpty(low);
            for (var i = 0; i < 400; i++)
            {
                var centre = new Point2(900 * random.NextDouble(), 600 * random.NextDouble());
                if (!index.Contains(centre))
                {
                    continue;
                }

                var body = new Box2(centre.X - 45, centre.Y - 30, centre.X + 45, centre.Y + 30);
                var nearest = low.Min(t => seed % 2 == 0 ? Clearance.ToPoint(body, t) : (t - centre).Length - 45) - 6;
                Assert.True(nearest >= 3 - 2 * Tolerances.ContactMm, $"seed {seed}: {nearest} mm");
            }
        }
    }

    private static string Random(Random random)
    {
        var text = new StringBuilder("G21 T3 M6\nM3 F1000\nG0 X450 Y300 Z5\n");
        for (var i = 0; i < 25; i++)
        {
            double x = random.Next(50, 850), y = random.Next(50, 550), z = -Thickness - 4 + 8 * random.NextDouble();
            text.Append(random.Next(3) switch
            {
                0 => string.Create(CultureInfo.InvariantCulture, $"G0 Z5\nX{x} Y{y}\nG1 Z{z:0.00}\nG2 I{random.Next(5, 40)} Z{z - 1:0.00}\n"),
                1 => string.Create(CultureInfo.InvariantCulture, $"G0 Z5\nG81 X{x} Y{y} Z{z:0.00} R2\nG80\n"),
                _ => string.Create(CultureInfo.InvariantCulture, $"G1 X{x} Y{y} Z{z:0.00}\n"),
            });
        }

        return text + "G0 Z5\nM2";
    }

    // Around the opening, with the tool's centre at a distance inside its edge (outside where negative, corners rounded).
    private static string Contour(double inset, string corners)
    {
        double left = 350 + inset, right = 550 - inset, low = 240 + inset, high = 360 - inset;
        var text = new StringBuilder("G21 G90 G17\nT3 M6\nS18000 M3\nG0 Z9\nG0 ");
        text.Append(corners.Length == 0
            ? Text($"X{left} Y{low}\nG1 Z-31 F2000\nX{left} Y{high}\nX{right}\nY{low}\nX{left}\n")
            : Text($"X{left} Y240\nG1 Z-31 F2000\nY360\nG2 X350 Y{high} I6 J0\nG1 X550\nG2 X{right} Y360 I0 J-6\nG1 Y240\nG2 X550 Y{low} I-6 J0\nG1 X350\nG2 X{left} Y240 I0 J6\n"));
        return text + "G0 Z9\nM30";
    }

    private static CutOperation Through(CutSide side) =>
        new(CutKind.ThroughProfile, new CutLines.OfLayer("CUT"), "$.cuts[0]") { Side = side, ToolDiameterMm = 12, LowestTipMm = -1 };

    private static Job Plate(params ImmutableArray<CutOperation> operations) => Plate(operations, null);

    private static Job Plate(ImmutableArray<CutOperation> operations, ToolPath? path)
    {
        var outcome = Apply(operations, path);
        Assert.True(outcome.Succeeded, outcome.Refusal?.ToString());
        return outcome.Value;
    }

    private static Outcome<Job> Apply(ImmutableArray<CutOperation> operations, ToolPath? path) =>
        Cutting.Apply(Bare(), PlateDrawing(), new(operations, Program(), 0.1, 2, null), path, "job.json");

    private static ProgramRequest Program() => new("part.nc", Posted.Tools(Mill), ZZero.PartFace, default, null, false);

    private static Job Bare() =>
        Shapes.JobFor(new(Shapes.Rectangle(0, 0, 900, 600), [], []), Shapes.Board(1200, 900), [Shapes.Pod(60, 60)], 60);

    private static Drawing PlateDrawing() => new(
        "part.dxf", "DXF", "millimetre", 1, 0.05,
        [new("PART", Shapes.Rectangle(0, 0, 900, 600)), new("CUT", Opening)],
        [new("OPEN", [new(100, 100), new(200, 100)], null, null)], [], []);

    private static PodLayout.Shops.PodType Round(double diameter) => Shapes.Pod(60, 60) with { Footprint = new PodLayout.Shops.PodFootprint.Round(diameter) };

    private static Region Seats(PartShape shape, PodLayout.Shops.PodType pod) => SeatRegion.Of(
        ClearWood.Of(shape, new(3, 3)), new(0, pod, false, 1, 1), Tolerances.ContactMm).Centres;

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
