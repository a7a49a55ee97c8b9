using PodLayout.Floors;
using PodLayout.Jobs;
using PodLayout.Shops;
using PodLayout.Woods;

namespace PodLayout.Tests.Floors;

public class FloorBendingTests
{
    private const double Pull = 0.070;
    private static readonly PlateWood Maple = WoodTable.Find("hard maple")!.Plate;

    // A pod of 120 mm whose seal lies 5 mm in.
    private static readonly PodCavity Large = new(110, 110);

    // Another program's figures for hard maple over a 120 mm pod at 70 kPa, the seal's own give taken off: 0.59, 0.36, 0.17, 0.10 and
    // 0.02 mm (not published). Ours let the wood rest at the seal's outer edge and add shear, and so lie above them.
    [Theory]
    [InlineData(5, .59)]
    [InlineData(6, .36)]
    [InlineData(8, .17)]
    [InlineData(10, .10)]
    [InlineData(20, .02)]
    public void A_plain_part_of_maple_sags_over_a_large_pod_about_as_much_as_elsewhere_worked_out(double thick, double sag) =>
        Assert.InRange(FloorBending.OfPart(Maple, thick, Large).SagMm(Pull, thick) / sag, 0.95, 1.5);

    [Fact]
    public void Eight_millimetres_of_maple_bear_a_large_pod_and_five_do_not()
    {
        Assert.True(FloorBending.OfPart(Maple, 8, Large).Bears(Pull, 8, FloorLimits.Default));
        Assert.False(FloorBending.OfPart(Maple, 5, Large).Bears(Pull, 5, FloorLimits.Default));
    }

    [Fact]
    public void The_thickness_that_would_do_does_and_a_little_less_does_not()
    {
        foreach (var (width, extent) in new[] { (110.0, 110.0), (60, 90), (25, 300), (12, 12) })
        {
            var floor = new FloorBending(Maple, 18, Large, width, extent, false);
            var needed = floor.NeededMm(Pull, FloorLimits.Default);
            Assert.True(floor.Bears(Pull, needed, FloorLimits.Default));
            Assert.False(floor.Bears(Pull, needed - 0.02, FloorLimits.Default));
        }

        // By hand: bending alone goes with 1 / t³, and shear asks for a little more.
        var plate = FloorPlate.Resting(Maple, 110, 110);
        var bare = Math.Cbrt(Pull * plate.Bending / 0.25);
        Assert.InRange(FloorBending.OfPart(Maple, 5, Large).NeededMm(Pull, FloorLimits.Default) - bare, 0, 0.4);
    }

    [Fact]
    public void A_floor_as_large_as_the_cavity_is_the_plain_plate_of_its_thickness()
    {
        var floor = new FloorBending(Maple, 20, Large, 200, 300, false);
        Assert.Equal(FloorPlate.Resting(Maple, 110, 110).SagMm(Pull, 5), floor.SagMm(Pull, 5), 1e-9);
    }

    // A beam on two supports whose middle part, of a share f of the span, is thinner: the sag by the dummy load, summed by hand.
    [Theory]
    [InlineData(.2)]
    [InlineData(.5)]
    [InlineData(.8)]
    public void A_trench_across_the_cavity_weakens_it_like_a_beam(double f)
    {
        const double thick = 12, thin = 6;
        double stiff = 0, weak = 0;
        for (var i = 0; i < 200_000; i++)
        {
            // From the middle, 0, to the support, 1: moments 1 - x² of the load and 1 - x of the dummy.
            var x = (i + 0.5) / 200_000;
            stiff += (1 - x * x) * (1 - x);
            weak += (1 - x * x) * (1 - x) * (x < f ? 8 : 1);
        }

        // Shear and the trench's own sag between its walls are taken off, so that only the beam is left.
        var wood = Maple with { ShearMPa = 1e9 };
        var cavity = FloorPlate.Resting(wood, 110, 110);
        var floor = new FloorBending(wood, thick, Large, 110 * f, 110, false);
        var between = FloorPlate.Resting(wood, 110 * f, 110).SagMm(Pull, thin);
        var expected = Math.Min(cavity.SagMm(Pull, thin), between + cavity.SagMm(Pull, thick) * weak / stiff);
        Assert.Equal(expected, floor.SagMm(Pull, thin), 1e-6);
    }

    [Fact]
    public void A_small_floor_in_a_thick_part_is_bent_by_itself()
    {
        // 10 x 12 mm, 2 mm left of 40: what the rest of the plate adds is less than the floor's own.
        var wood = Maple with { AlongStrengthMPa = 1e9 };
        var floor = new FloorBending(wood, 40, new(110, 110), 10, 12, false);
        var square = FloorPlate.Resting(wood, 10, 12).AcrossMPa(Pull, 2);
        Assert.InRange(wood.AcrossStrengthMPa / floor.StrengthFactor(Pull, 2), square, 2 * square);
    }

    [Fact]
    public void Thick_walls_all_round_stiffen_a_floor_that_lies_within_the_cavity_and_none_that_does_not()
    {
        FloorBending Floor(double extent, bool isWalled) => new(Maple, 30, Large, 50, extent, isWalled);
        Assert.True(Floor(60, true).SagMm(Pull, 4) < 0.6 * Floor(60, false).SagMm(Pull, 4));
        Assert.Equal(Floor(150, false).SagMm(Pull, 4), Floor(150, true).SagMm(Pull, 4));
    }

    [Fact]
    public void A_thicker_floor_or_less_vacuum_never_fails_where_a_thinner_one_or_more_vacuum_is_borne()
    {
        var random = new Random(907);
        var borne = 0;
        for (var i = 0; i < 400; i++)
        {
            var species = WoodTable.All[random.Next(WoodTable.All.Length)].Plate;
            double side = 25 + 120 * random.NextDouble(), whole = 3 + 30 * random.NextDouble();
            var width = 3 + 150 * random.NextDouble();
            var floor = new FloorBending(
                species, whole, new(side, side * (1 + random.NextDouble())), width, width * (1 + 3 * random.NextDouble()), random.Next(2) == 0);
            double left = whole * random.NextDouble(), more = left + (whole - left) * random.NextDouble(), pull = 0.01 + 0.08 * random.NextDouble();
            Assert.True(floor.SagMm(pull, more) <= floor.SagMm(pull, left) * (1 + 1e-9));
            if (floor.Bears(pull, left, FloorLimits.Default))
            {
                borne++;
                Assert.True(floor.Bears(pull, more, FloorLimits.Default), $"case {i}");
                Assert.True(floor.Bears(pull * random.NextDouble(), left, FloorLimits.Default), $"case {i}");
            }
        }

        Assert.InRange(borne, 60, 340);
    }

    [Fact]
    public void A_weaker_wood_needs_more_and_one_that_is_not_known_as_much_as_the_weakest()
    {
        double Needed(PlateWood wood) => FloorBending.OfPart(wood, 1, Large).NeededMm(Pull, FloorLimits.Default);
        double Of(string name) => Needed(WoodTable.Find(name)!.Plate);
        // Wood Handbook, table 5-3: modulus and tension across the grain fall from maple over poplar to white pine.
        Assert.True(Of("hard maple") < Of("yellow-poplar") && Of("yellow-poplar") < Of("eastern white pine"));
        Assert.All(WoodTable.All.Where(w => w.Kind == WoodKind.Solid), w => Assert.True(Needed(w.Plate) <= Needed(Wood.Unknown("").Plate) + 0.01, w.Name));
        // An own modulus goes before the table: 0.8 of the stiffness needs 0.8^(-1/3) of the thickness, less what stress asks.
        Assert.True(Needed(WoodTable.Find("hard maple")!.Plate.WithAlong(0.8 * 13860)) > Of("hard maple"));
    }

    [Fact]
    public void Every_wood_has_figures_and_says_what_it_lacks()
    {
        Assert.All(WoodTable.All, w => Assert.True(w.Plate is { AcrossMPa: > 100, ShearMPa: > 100, AlongStrengthMPa: > 10, AcrossStrengthMPa: > 1 }, w.Name));
        Assert.Contains("no strength across the grain of teak", string.Join(' ', WoodTable.Find("teak")!.Plate.Assumptions), StringComparison.Ordinal);
        Assert.Contains("three plies", string.Join(' ', WoodTable.Find("birch plywood")!.Plate.Assumptions), StringComparison.Ordinal);
        // Wood Handbook, table 5-3, 12 %, tension perpendicular to grain in kPa: northern red oak 5500, yellow-poplar 3700, eastern white pine 2100.
        Assert.Equal([5.5, 3.7, 2.1], new[] { "northern red oak", "yellow-poplar", "eastern white pine" }.Select(n => WoodTable.Find(n)!.Plate.AcrossStrengthMPa));
    }

    [Fact]
    public void The_cavity_reaches_to_the_outer_edge_of_the_upper_seal_and_a_round_one_is_taken_as_its_square()
    {
        Assert.Equal(new PodCavity(50, 110), PodCavity.Of(Shapes.Pod(120, 60) with { SealInsetAboveMm = 5 }));
        Assert.Equal(new PodCavity(80, 80), PodCavity.Of(Shapes.Pod(90, 90) with { Footprint = new PodFootprint.Round(90), SealInsetAboveMm = 5 }));
    }
}
