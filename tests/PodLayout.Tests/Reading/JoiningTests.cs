using System.Globalization;
using FsCheck;
using FsCheck.Fluent;
using PodLayout.Geometry;
using PodLayout.Reading;
using static PodLayout.Tests.Reading.Drawings;

namespace PodLayout.Tests.Reading;

public class JoiningTests
{
    private static readonly Config Fixed = Config.QuickThrowOnFailure.WithReplay(20260725, 7, 0).WithMaxTest(60);

    /// <summary>A star-shaped polygon, the seed of a shuffle, and which segments are reversed.</summary>
    private static Arbitrary<(Point2[] Corners, int Seed)> Stars() => (
        from n in Gen.Choose(3, 40)
        from radii in Gen.Choose(50, 300).ArrayOf(n)
        from seed in Gen.Choose(0, int.MaxValue - 1)
        select (radii.Select((r, i) => new Point2(r * Math.Cos(Math.Tau * i / n), r * Math.Sin(Math.Tau * i / n))).ToArray(), seed)).ToArbitrary();

    private static string Lines(Point2[] corners, int? shuffle)
    {
        var lines = corners.Select((p, i) => (From: p, To: corners[(i + 1) % corners.Length])).ToArray();
        if (shuffle is { } seed)
        {
            var random = new System.Random(seed);
            random.Shuffle(lines);
            lines = [.. lines.Select(l => random.Next(2) == 0 ? l : (l.To, l.From))];
        }

        return Dxf(string.Concat(lines.Select(l => Line(l.From.X, l.From.Y, l.To.X, l.To.Y))));
    }

    [Fact]
    public void Shuffled_and_reversed_segments_give_the_same_ring() => Check.One(Fixed, Prop.ForAll(Stars(), s =>
    {
        var plain = Shape(Lines(s.Corners, null)).Outline;
        Assert.Equal(s.Corners.Length, plain.Points.Length);
        return plain.Equals(Shape(Lines(s.Corners, s.Seed)).Outline);
    }));

    [Fact]
    public void Moving_the_drawing_moves_the_ring() => Check.One(Fixed, Prop.ForAll(Stars(), s =>
    {
        var plain = Shape(Lines(s.Corners, null)).Outline;
        var by = new Point2(1_000_000, -2_000_000);
        var moved = Shape(Lines([.. s.Corners.Select(c => c + by)], s.Seed)).Outline;
        Assert.Equal(plain.AreaMm2, moved.AreaMm2, 1e-4);
        return moved.Points.Zip(plain.Points).All(p => (p.First - by - p.Second).Length < 1e-8);
    }));

    [Fact]
    public void A_nested_mirrored_insert_equals_the_transformed_ring() => Check.One(Fixed, Prop.ForAll(Stars(), s =>
    {
        var random = new System.Random(s.Seed);
        double sx = random.Next(-30, 30) / 10.0 + 0.05, sy = 0.3 + random.NextDouble(), turn = random.Next(-360, 360), x = random.Next(-500, 500);
        static string Blocks(string inner, string middle) =>
            $"0 SECTION 2 BLOCKS 0 BLOCK 2 IN 10 3 20 4 {inner} 0 ENDBLK 0 BLOCK 2 MID 10 0 20 0 {middle} 0 ENDBLK 0 ENDSEC";
        var inner = string.Concat(s.Corners.Select((p, i) => Line(p.X, p.Y, s.Corners[(i + 1) % s.Corners.Length].X, s.Corners[(i + 1) % s.Corners.Length].Y)));
        var middle = string.Create(CultureInfo.InvariantCulture, $"0 INSERT 8 0 2 IN 10 {x} 20 7 41 {sx:R} 42 {sy:R}");
        var text = Dxf(string.Create(CultureInfo.InvariantCulture, $"0 INSERT 8 CUT 2 MID 10 11 20 {x} 50 {turn}"), more: Blocks(inner, middle));
        var radians = turn * Math.PI / 180;
        var expected = s.Corners.Select(p =>
        {
            double u = (p.X - 3) * sx + x, v = (p.Y - 4) * sy + 7;
            return new Point2(Math.Cos(radians) * u - Math.Sin(radians) * v + 11, Math.Sin(radians) * u + Math.Cos(radians) * v + x);
        }).ToArray();
        var ring = Assert.Single(Read(text).Value!.Rings);
        Assert.Equal("CUT", ring.Layer);
        return expected.All(e => ring.Ring.Points.Any(p => (p - e).Length < 1e-9));
    }));

    [Fact]
    public void Twenty_thousand_shuffled_lines_finer_than_the_gap_make_one_ring()
    {
        // Points 0.04 mm apart, below the join gap of 0.05 mm: the shape must not collapse.
        const int n = 20000;
        var radius = 0.04 * n / Math.Tau;
        var corners = Enumerable.Range(0, n).Select(i => new Point2(radius * Math.Cos(Math.Tau * i / n), radius * Math.Sin(Math.Tau * i / n))).ToArray();
        var outline = Shape(Lines(corners, 1)).Outline;
        Assert.Equal(n, outline.Points.Length);
        Assert.Equal(n / 2.0 * radius * radius * Math.Sin(Math.Tau / n), outline.AreaMm2, 1e-3);
    }

    [Fact]
    public void A_gap_is_named_with_its_place_and_width_and_a_wider_one_left_open()
    {
        string Gap(double width) => Dxf(Line(0, 0, 200, 0) + Line(200, width, 200, 100) + Line(200, 100, 0, 100) + Line(0, 100, 0, 0));
        var joined = Part(Gap(0.04));
        Assert.Contains(joined.Findings, f => f.Code == "gap-joined" && f.Message.Contains("0.04 mm"));
        Assert.Equal(20000, joined.Value!.AreaMm2, 6);
        var open = Part(Gap(0.06));
        Assert.Contains("--join-gap 0.07", open.Refusal!.Remedy);
        Assert.True(Part(Gap(0.06), ReadingOptions.Default with { JoinGapMm = 0.1 }).Succeeded);
    }

    [Fact]
    public void Two_bulged_vertices_make_a_circle() => Assert.Equal(
        10000 * Math.PI, Shape(Dxf("0 LWPOLYLINE 8 0 90 2 70 1 10 -100 20 0 42 1 10 100 20 0 42 1")).AreaMm2, 0.01 * 200 * Math.PI);

    [Fact]
    public void A_circle_far_from_zero_keeps_its_precision()
    {
        var fine = ReadingOptions.Default with { ChordToleranceMm = 1e-4 };
        Assert.Equal(10000 * Math.PI, Shape(Dxf(Circle(1e6, -2e6, 100)), fine).AreaMm2, 0.07);
    }

    [Fact]
    public void Arcs_turn_the_right_way_whatever_their_angles()
    {
        // Half discs of radius 100 closed by their chord: end before start, and angles outside 0 to 360.
        foreach (var (from, to) in ((double, double)[])[(270, 90), (-90, 90), (630, 810), (-450, -270)])
        {
            var arc = string.Create(CultureInfo.InvariantCulture, $"0 ARC 8 0 10 0 20 0 40 100 50 {from} 51 {to}");
            var shape = Shape(Dxf(arc + Line(0, 100, 0, -100)));
            Assert.Equal(5000 * Math.PI, shape.AreaMm2, 4.0);
            Assert.Equal(100, shape.Outline.Bounds.MaxX, 0.01);
        }
    }

    [Fact]
    public void An_ellipse_whose_minor_axis_is_the_longer_is_read() => Assert.Equal(
        100 * 250 * Math.PI, Shape(Dxf("0 ELLIPSE 8 0 10 0 20 0 11 100 21 0 40 2.5")).AreaMm2, 12.0);

    [Fact]
    public void Coordinates_may_come_X_first() => Assert.Equal(20000, Shape(Dxf(
        "0 LINE 8 0 10 0 11 200 20 0 21 0 0 LINE 8 0 10 200 11 200 20 0 21 100 0 LINE 8 0 10 200 11 0 20 100 21 100 0 LINE 8 0 10 0 11 0 20 100 21 0")).AreaMm2, 9);

    [Theory]
    [InlineData("\r\n")]
    [InlineData("\r")]
    public void Any_line_end_is_read(string end) =>
        Assert.Equal(20000, Shape(Dxf(Rectangle(0, 0, 200, 100)).Replace("\n", end, StringComparison.Ordinal)).AreaMm2, 9);

    [Fact]
    public void Layer_names_with_escapes_are_read() =>
        Assert.Equal("TÜR", Assert.Single(Read(Dxf(Circle(0, 0, 50, @"T\U+00DCR"))).Value!.Rings).Layer);

    [Fact]
    public void What_a_block_draws_on_layer_0_lies_on_the_layer_of_its_insert_and_is_hidden_with_it()
    {
        const string Layers = "0 SECTION 2 TABLES 0 TABLE 2 LAYER 0 LAYER 2 OFF 70 0 62 -7 0 LAYER 2 COLD 70 1 62 7 0 ENDTAB 0 ENDSEC ";
        var blocks = $"0 SECTION 2 BLOCKS 0 BLOCK 2 B 10 0 20 0 {Circle(0, 0, 50)} {Circle(0, 0, 20, "OWN")} 0 ENDBLK 0 ENDSEC";
        string[] On(string layer) => [.. Read(Dxf(Circle(500, 0, 5, "REST") + $"0 INSERT 8 {layer} 2 B 10 0 20 0", more: Layers + blocks)).Value!.Rings.Select(r => r.Layer)];
        Assert.Equal(["SHOWN", "OWN", "REST"], On("SHOWN"));
        Assert.Equal(["OWN", "REST"], On("OFF"));
        Assert.Equal(["REST"], On("COLD"));
    }

    [Fact]
    public void A_block_that_does_not_name_itself_is_named_by_its_record()
    {
        const string Records = "0 SECTION 2 TABLES 0 TABLE 2 BLOCK_RECORD 0 BLOCK_RECORD 5 1F 2 B 0 ENDTAB 0 ENDSEC ";
        var blocks = $"0 SECTION 2 BLOCKS 0 BLOCK 5 20 330 1F 10 0 20 0 {Circle(0, 0, 50)} 0 ENDBLK 0 ENDSEC";
        Assert.Single(Read(Dxf("0 INSERT 8 0 2 B 10 0 20 0", more: Records + blocks)).Value!.Rings);
    }

    [Fact]
    public void Many_findings_of_one_kind_are_counted()
    {
        var tilted = string.Concat(Enumerable.Range(1, 100).Select(i => $" 0 LINE 8 0 10 {i} 20 {i} 30 0 11 {i} 21 {i} 31 50 "));
        var findings = Part(Dxf(Rectangle(0, 0, 200, 100) + tilted)).Findings;
        Assert.Equal(13, findings.Length);
        Assert.StartsWith("88 more", findings[^1].Message);
    }

    [Fact]
    public void Ends_that_nearly_agree_give_the_same_ring_in_any_order()
    {
        string[] lines = [Line(0, 0, 200, 0.00002), Line(200.00001, 0, 200, 100), Line(200, 100.00003, 0, 100), Line(0.00001, 100, 0.00002, 0)];
        var rings = new[] { lines, [.. lines.Reverse()], [lines[2], lines[0], lines[3], lines[1]] }.Select(l => Shape(Dxf(string.Concat(l))).Outline).ToList();
        Assert.All(rings, r => Assert.Equal(rings[0], r));
    }

    [Fact]
    public void A_circle_under_uneven_scales_and_a_tilted_plane_of_no_height_becomes_an_ellipse()
    {
        var blocks = $"0 SECTION 2 BLOCKS 0 BLOCK 2 B 10 0 20 0 {Circle(0, 0, 1)} 0 ENDBLK 0 ENDSEC";
        var shape = Shape(Dxf("0 INSERT 8 0 2 B 10 5 20 5 41 -300 42 100 43 0 210 0 220 0 230 -1", more: blocks));
        Assert.Equal(30000 * Math.PI, shape.AreaMm2, 15.0);
        Assert.Equal(-305, shape.Outline.Bounds.MinX, 0.02);
    }
}
