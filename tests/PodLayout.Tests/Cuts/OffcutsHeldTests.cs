using PodLayout.Checking;
using PodLayout.Cuts;
using PodLayout.Findings;
using PodLayout.Geometry;
using PodLayout.Handover;
using PodLayout.Jobs;
using PodLayout.Layouts;
using PodLayout.Parts;
using PodLayout.Reading;
using PodLayout.Tests.Independent;

namespace PodLayout.Tests.Cuts;

public class OffcutsHeldTests
{
    [Theory]
    [InlineData(0)]
    [InlineData(30)]
    public void A_heavy_loose_piece_gets_pods_of_its_own_about_its_centre_of_mass(double angleDeg)
    {
        var result = Planned(Plate(180, 1, placement: new PlacementWish.Search([angleDeg])));
        Assert.Empty(LayoutChecker.Check(result).Violations);
        Assert.Empty(LayoutCheck.Of(result.Job, result.Layout!).Rules.SelectMany(r => r.Breaches));
        var piece = Assert.Single(result.Job.Part.Shape.Held);
        var own = result.Layout!.Pods.Where(p => p.Holds == "offcut 1").ToList();

        // The frame's centre of mass, (150, 120), lies in its opening: two pods at least, and it lies in the hull of their bodies.
        Assert.Equal(150, piece.CentreOfMass.X, 1);
        Assert.Equal(120, piece.CentreOfMass.Y, 1);
        Assert.True(own.Count >= 2);
        var mass = Turn.FromDegrees(angleDeg).Apply(piece.CentreOfMass) + result.Layout.Placement.ZeroOnBoard;
        for (var deg = 0.0; deg < 360; deg += 5)
        {
            var (sin, cos) = Math.SinCos((deg + angleDeg) * Math.PI / 180);
            Assert.True(own.Max(p => (p.Centre.X - mass.X) * cos + (p.Centre.Y - mass.Y) * sin + 30 * (Math.Abs(cos) + Math.Abs(sin))) >= -0.01);
        }
    }

    [Fact]
    public void Both_together_are_proven_no_fewer_than_the_part_alone_and_the_pieces_pods_add_up()
    {
        var alone = Planned(Plate(180, null));
        var both = Planned(Plate(180, 1));
        var own = both.Layout!.Pods.Count(p => p.Holds is not null);
        Assert.Equal(both.Layout.Pods.Length, both.Layout.Proof.FewestPodsPossible);
        Assert.Equal(alone.Layout!.Pods.Length + own, both.Layout.Pods.Length);
        Assert.Equal(2, own);
        Assert.Contains("offcut 1", both.Layout.Proof.Words, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(false, true, Severity.Warning)]
    [InlineData(true, false, Severity.Refused)]
    public void A_piece_that_no_pod_fits_under_is_warned_about_or_refused_where_it_must_be_held(bool must, bool found, Severity severity)
    {
        // A rim of 40 mm less the cut of 12: no pod of 60.
        var result = Planned(Plate(40, 0.1, must));
        Assert.Equal(found, result.Layout is not null);
        var said = Assert.Single(result.Findings, f => f.Code == "offcut-not-held");
        Assert.Equal(severity, said.Severity);
        Assert.Contains("no pod of the shop fits", said.Message, StringComparison.Ordinal);
        Assert.NotNull(said.Remedy);
        Assert.Empty(result.Job.Part.Shape.Held.Where(_ => found));
    }

    [Fact]
    public void With_pods_for_the_part_only_the_piece_is_left_out_with_its_reason()
    {
        var needed = Planned(Plate(180, null)).Layout!.Pods.Length;
        var result = Planned(Plate(180, 1, stock: needed));
        Assert.Equal(needed, result.Layout!.Pods.Length);
        Assert.Contains("the stock", Assert.Single(result.Findings, f => f.Code == "offcut-not-held").Message, StringComparison.Ordinal);

        // One more pod: it holds the piece, though not in balance.
        var one = Planned(Plate(180, 1, stock: needed + 1));
        Assert.Single(one.Layout!.Pods, p => p.Holds == "offcut 1");
        Assert.Contains(one.Findings, f => f.Code == "offcut-not-balanced" && f.Severity == Severity.Warning);
        Assert.Empty(LayoutChecker.Check(one).Violations);

        var refused = Planned(Plate(180, 1, must: true, stock: needed));
        Assert.Null(refused.Layout);
        Assert.Contains(refused.Findings, f => f.Code == "offcut-not-held" && f.Severity == Severity.Refused);
    }

    [Fact]
    public void The_file_names_what_each_pod_holds_and_check_finds_a_piece_that_lost_its_pods()
    {
        var result = Planned(Plate(180, 1));
        var read = LayoutJson.Read("layout.json", LayoutJson.Write(result));
        Assert.True(read.Succeeded, read.Refusal?.ToString());
        var again = LayoutJson.ToPlan(read.Value);
        Assert.Equal(result.Layout!.Pods.Select(p => p.Holds), again.Layout!.Pods.Select(p => p.Holds));
        Assert.Contains(",offcut 1,", PodsCsv.Write(result), StringComparison.Ordinal);

        var without = again.Layout with { Pods = [.. again.Layout.Pods.Where(p => p.Holds is null)] };
        var breaches = LayoutCheck.Of(again.Job, without).Rules.SelectMany(r => r.Breaches).ToList();
        Assert.Equal("offcut-without-pod", Assert.Single(breaches).Code);
    }

    [Fact]
    public void The_blank_is_drawn_where_it_reaches_beyond_the_part_and_only_there()
    {
        var grown = Plate(40, null).Part.Shape.Blank;

        // 300 x 240 grown by 40 with rounded corners: 380 x 320 less (4 - pi) 40 40, within a hundredth of a millimetre of its length.
        var bounds = Assert.Single(grown).Bounds;
        Assert.Equal((-40.0, -40.0, 340.0, 280.0), (bounds.MinX, bounds.MinY, bounds.MaxX, bounds.MaxY), (a, b) => Math.Abs(a.Item1 - b.Item1) + Math.Abs(a.Item2 - b.Item2) + Math.Abs(a.Item3 - b.Item3) + Math.Abs(a.Item4 - b.Item4) < 0.01);
        Assert.Equal((380 * 320) - ((4 - Math.PI) * 1600), grown[0].AreaMm2, 0.01 * 1400);
        Assert.Empty(Plate(0, null).Part.Shape.Blank);
    }

    [Fact]
    public void A_blank_that_is_drawn_is_shown_as_drawn_though_its_box_is_no_larger_than_the_parts()
    {
        // The plank that a triangle is cut out of.
        Ring triangle = new([new(0, 0), new(300, 0), new(0, 240)]);
        Drawing drawing = new("part.dxf", "DXF", "millimetre", 1, 0.05, [new("PART", triangle), new("BLANK", Shapes.Rectangle(0, 0, 300, 240))], [], [], []);
        PartShape shape = new(triangle, [], []);
        var edges = Offcuts.EdgesBeyondPart(drawing, shape, new("BLANK", 0, null));
        Assert.Equal(Shapes.Rectangle(0, 0, 300, 240).Points.OrderBy(p => p.X).ThenBy(p => p.Y), Assert.Single(edges).Points.OrderBy(p => p.X).ThenBy(p => p.Y));
        Assert.Empty(Offcuts.EdgesBeyondPart(drawing, shape, null));
        Assert.Empty(Offcuts.EdgesBeyondPart(drawing, shape, new("PART", 0, null)));
    }

    private static PlanResult Planned(Job job) => Planning.Plan(job, new Effort(2, null), null, TestContext.Current.CancellationToken);

    // A plate of 300 x 240 out of a blank that reaches some way beyond it all round.
    private static Job Plate(double rim, double? holdOverKg, bool must = false, int stock = 99, PlacementWish? placement = null)
    {
        Drawing drawing = new("part.dxf", "DXF", "millimetre", 1, 0.05, [new("PART", Shapes.Rectangle(0, 0, 300, 240))], [], [], []);
        var job = Shapes.JobFor(
            new(Shapes.Rectangle(0, 0, 300, 240), [], []), Shapes.Board(900, 900, portSpacing: 60), [Shapes.Pod(60, 60, stock: stock)], 100,
            placement: placement);
        CutOperation outline = new(CutKind.ThroughProfile, new CutLines.Outline(), "$.cuts[0]")
        {
            Side = CutSide.Outside,
            ToolDiameterMm = 12,
            LowestTipMm = -1,
        };
        var outcome = Cutting.Apply(
            job, drawing, new([outline], null, 0.1, 2, new(null, rim, 700) { HoldOverKg = holdOverKg, MustHold = must }), null, "job.json");
        Assert.True(outcome.Succeeded, outcome.Refusal?.ToString());
        return outcome.Value;
    }
}
