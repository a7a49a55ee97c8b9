using PodLayout.Floors;
using PodLayout.Woods;

namespace PodLayout.Tests.Floors;

/// <summary>Plates held against the tables of Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells, and against a solution by differences.</summary>
public class FloorPlateTests
{
    private static readonly PlateWood Maple = WoodTable.Find("hard maple")!.Plate;

    // Alike in all directions, with Poisson's ratio 0.3, as in the tables; D is that of a plate 1 mm thick.
    private static readonly PlateWood Steel = Alike(1000, 0.3);
    private const double D = 1000 / 12.0 / (1 - 0.3 * 0.3);

    // Table 8: deflection in the middle / (q a⁴ / D), and the moments over the short and the long side / (q a²).
    [Theory]
    [InlineData(1, .00406, .0479, .0479)]
    [InlineData(1.5, .00772, .0812, .0498)]
    [InlineData(2, .01013, .1017, .0464)]
    [InlineData(5, .01297, .1246, .0375)]
    public void A_plate_that_rests_all_round_sags_and_is_bent_as_in_the_table(double ratio, double sag, double overShort, double overLong)
    {
        var plate = FloorPlate.Series(Steel, 100, 100 * ratio);
        Assert.Equal(sag, plate.Bending * D / 1e8, 1e-5);
        Assert.Equal(overShort, plate.MomentAlongMm2 / 1e4, 2e-4);
        // The table has the moment in the middle; in long plates that of the long way is a little larger nearer to the ends.
        Assert.InRange(plate.MomentAcrossMm2 / 1e4, overLong - 2e-4, overLong * 1.4);
    }

    // Table 35 gives 0.00126 for the square; the check value by a finer series is 0.00126532.
    [Fact]
    public void A_clamped_square_sags_as_in_the_table_and_never_less() =>
        Assert.InRange(FloorPlate.Clamped(Steel, 100, 100).Bending * D / 1e8, .00126532, .00126532 * 1.02);

    // Table 35, b/a = 2: 0.00254; the clamped beam: 1/384 = 0.00260.
    [Fact]
    public void A_long_clamped_plate_sags_no_more_than_the_clamped_beam() =>
        Assert.InRange(FloorPlate.Clamped(Steel, 100, 200).Bending * D / 1e8, .00254, 1 / 384.0 + 1e-9);

    // Beam on two supports: 5/384 q b⁴ / EI, q b² / 8.
    [Fact]
    public void A_very_long_plate_is_a_beam_over_its_short_side()
    {
        var strip = FloorPlate.Resting(Steel, 10, 400);
        Assert.Equal(5 / 384.0, strip.Bending * D / 1e4, 1e-9);
        Assert.Equal(100 / 8.0, strip.MomentAcrossMm2, 1e-9);
        // Just before it is taken for one it is nearly one.
        Assert.InRange(FloorPlate.Resting(Steel, 10, 79.9).Bending / strip.Bending, 0.995, 1.0001);
        Assert.InRange(FloorPlate.Resting(Maple, 10, 79.9).Bending / FloorPlate.Resting(Maple, 10, 400).Bending, 0.98, 1.006);
        // q b² / 8 on a section of t: 6 M / t².
        Assert.Equal(6 * 0.07 * 100 / 8 / 4, strip.AcrossMPa(0.07, 2), 1e-9);
    }

    // Independent series (orthotropic, chapter 11) with EL 13860, ET 900.9, GLT 873.18 MPa, nuLT 0.476: 200 mm square, 20 mm thick,
    // 0.05 MPa: 0.09807 mm.
    [Fact]
    public void A_square_of_hard_maple_sags_as_an_independent_series_says() =>
        Assert.Equal(.09807, FloorPlate.Series(Maple, 200, 200).SagMm(0.05, 20), 1e-5);

    [Theory]
    [InlineData(160, 100)]
    [InlineData(100, 160)]
    [InlineData(110, 110)]
    public void An_orthotropic_plate_sags_as_one_solved_by_differences(double along, double across)
    {
        var byDifferences = PlateByDifferences.MiddleSag(Maple, along, across, 1e-3);
        Assert.Equal(1, FloorPlate.Series(Maple, along, across).SagMm(1e-3, 1) / byDifferences, 0.01);
    }

    [Fact]
    public void The_grain_is_taken_to_run_the_worse_way()
    {
        FloorPlate one = FloorPlate.Series(Maple, 60, 110), other = FloorPlate.Series(Maple, 110, 60);
        var plate = FloorPlate.Resting(Maple, 60, 110);
        // With the grain along the long side the short way is the soft one.
        Assert.True(other.Bending > one.Bending);
        Assert.Equal(other.Bending, plate.Bending);
        Assert.All([one, other], p => Assert.True(p.MomentAlongMm2 <= plate.MomentAlongMm2 && p.MomentAcrossMm2 <= plate.MomentAcrossMm2));
    }

    // Beam on two supports under even load, rectangular section: shear adds 1.2 q b² / 8 G h in the middle.
    [Fact]
    public void Shear_adds_that_of_a_strip()
    {
        var plate = FloorPlate.Resting(Steel, 40, 40);
        Assert.Equal(1.2 * 0.1 * 1600 / (8 * (1000 / 2.6) * 10), plate.SagMm(0.1, 10) - 0.1 * plate.Bending / 1000, 1e-9);
    }

    private static PlateWood Alike(double mPa, double poisson) => new(mPa, mPa, mPa / 2 / (1 + poisson), poisson, 100, 100, []);
}
