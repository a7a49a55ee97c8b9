using PodLayout.Woods;

namespace PodLayout.Floors;

/// <summary>How a rectangular plate of wood bends under an even pull, for any thickness.</summary>
/// <param name="Bending">Sag in the middle for each MPa, times the cube of the thickness: mm⁴ for each MPa.</param>
/// <param name="Shear">What shear adds to it for each MPa, times the thickness: mm² for each MPa.</param>
/// <param name="MomentAlongMm2">Greatest moment in the grain's direction, N mm for each mm of width and each MPa.</param>
/// <param name="MomentAcrossMm2">The same across the grain.</param>
/// <remarks>
/// Kirchhoff's plate, orthotropic (Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells, 2nd edition, chapter 11): D11 = EL
/// t³ / 12 (1 - nuLT nuTL), D22 likewise of ET, D12 = nuTL D11, D66 = GLT t³ / 12. All grow with t³, so that sag times t³ and the
/// moments are one figure for each plate, whatever its thickness. Resting all round: Navier's series. Clamped all round: the
/// deflection (1 - cos)(1 - cos) of one term by the energy, 1.4 % too much for the isotropic square (0.00128 against 0.00126 q a⁴ / D)
/// and at most 31 % in long plates, where the clamped strip of either direction, which the rest of the plate can only stiffen, is the
/// lesser figure. The direction of the grain against the sides is taken as the worse of the two, for each figure. The moments are
/// those of the plate that rests all round in either case: clamping moves the greatest moment to the walls and makes it little larger
/// in a square (0.0513 against 0.0479 q a²), a third smaller in a strip. Shear adds 1.2 q b² / 8 G t, that of a strip over the short
/// side, which is too much for a plate, with the modulus of the board's plane.
/// </remarks>
public sealed record FloorPlate(double Bending, double Shear, double MomentAlongMm2, double MomentAcrossMm2)
{
    // Beyond this ratio of the sides a plate is a strip over its short side, to a hundredth.
    private const double LongestRatio = 8;

    // Odd terms of the series each way: the deflection is then right to 1e-5 and the moments to a few thousandths.
    private const int Terms = 25;

    // Places along half of each middle line where moments are looked at.
    private const int Places = 8;

    private static readonly double[,] Sines = SinesAtPlaces();

    /// <summary>A plate that rests all round.</summary>
    /// <param name="wood">The wood.</param>
    /// <param name="shortMm">Its shorter side.</param>
    /// <param name="longMm">Its longer side.</param>
    public static FloorPlate Resting(PlateWood wood, double shortMm, double longMm)
    {
        var shear = 1.2 * shortMm * shortMm / (8 * wood.ShearMPa);
        if (longMm > LongestRatio * shortMm)
        {
            var stiffness = Stiffness(wood);
            return new(5.0 / 384 * Math.Pow(shortMm, 4) / stiffness.Across, shear, shortMm * shortMm / 8, shortMm * shortMm / 8);
        }

        FloorPlate one = Series(wood, shortMm, longMm), other = Series(wood, longMm, shortMm);
        return new(
            Math.Max(one.Bending, other.Bending), shear, Math.Max(one.MomentAlongMm2, other.MomentAlongMm2),
            Math.Max(one.MomentAcrossMm2, other.MomentAcrossMm2));
    }

    /// <summary>A plate that is clamped all round; its moments are those of one that rests.</summary>
    /// <param name="wood">The wood.</param>
    /// <param name="shortMm">Its shorter side.</param>
    /// <param name="longMm">Its longer side.</param>
    public static FloorPlate Clamped(PlateWood wood, double shortMm, double longMm) =>
        Resting(wood, shortMm, longMm) with { Bending = Math.Max(OneTerm(wood, shortMm, longMm), OneTerm(wood, longMm, shortMm)) };

    /// <summary>Its sag in the middle, mm.</summary>
    public double SagMm(double pullMPa, double thicknessMm) => pullMPa * (Bending / Math.Pow(thicknessMm, 3) + Shear / thicknessMm);

    /// <summary>Its greatest bending stress along the grain, MPa.</summary>
    public double AlongMPa(double pullMPa, double thicknessMm) => 6 * pullMPa * MomentAlongMm2 / (thicknessMm * thicknessMm);

    /// <summary>Its greatest bending stress across the grain, MPa.</summary>
    public double AcrossMPa(double pullMPa, double thicknessMm) => 6 * pullMPa * MomentAcrossMm2 / (thicknessMm * thicknessMm);

    // Stiffness of a plate 1 mm thick, N mm.
    private static (double Along, double Across, double Both, double Twist) Stiffness(PlateWood wood)
    {
        var minor = wood.Poisson * wood.AcrossMPa / wood.AlongMPa;
        var share = 12 * (1 - wood.Poisson * minor);
        return (wood.AlongMPa / share, wood.AcrossMPa / share, minor * wood.AlongMPa / share, wood.ShearMPa / 12);
    }

    /// <summary>Navier's series for a plate with its grain along one side, without shear.</summary>
    /// <param name="wood">The wood.</param>
    /// <param name="alongMm">Its side along the grain.</param>
    /// <param name="acrossMm">Its side across the grain.</param>
    internal static FloorPlate Series(PlateWood wood, double alongMm, double acrossMm)
    {
        var (d11, d22, d12, d66) = Stiffness(wood);
        const double Pi2 = Math.PI * Math.PI;
        var (sag, along, across) = (new double[2 * Places], new double[2 * Places], new double[2 * Places]);
        for (var i = 0; i < Terms; i++)
        {
            double m = (2 * i + 1) / alongMm, m2 = m * m;
            for (var k = 0; k < Terms; k++)
            {
                double n = (2 * k + 1) / acrossMm, n2 = n * n;
                var term = 16 / (Pi2 * Pi2 * Pi2 * (2 * i + 1) * (2 * k + 1) * (d11 * m2 * m2 + 2 * (d12 + 2 * d66) * m2 * n2 + d22 * n2 * n2));
                double alongTerm = term * Pi2 * (d11 * m2 + d12 * n2), acrossTerm = term * Pi2 * (d12 * m2 + d22 * n2);
                for (var place = 0; place < 2 * Places; place++)
                {
                    var shape = Sines[place, i] * Sines[(place + Places) % (2 * Places), k];
                    sag[place] += term * shape;
                    along[place] += alongTerm * shape;
                    across[place] += acrossTerm * shape;
                }
            }
        }

        return new(sag.Max(), 0, along.Max(), across.Max());
    }

    // The sine of each odd term at each place: the first half of the places goes along a middle line from the edge to the middle, in
    // the second half the place stays in the middle while the other line is gone along.
    private static double[,] SinesAtPlaces()
    {
        var sines = new double[2 * Places, Terms];
        for (var place = 0; place < 2 * Places; place++)
        {
            var share = place < Places ? (place + 1) / (2.0 * Places) : 0.5;
            for (var i = 0; i < Terms; i++)
            {
                sines[place, i] = Math.Sin((2 * i + 1) * Math.PI * share);
            }
        }

        return sines;
    }

    private static double OneTerm(PlateWood wood, double alongMm, double acrossMm)
    {
        var (d11, d22, d12, d66) = Stiffness(wood);
        double a2 = alongMm * alongMm, b2 = acrossMm * acrossMm;
        var whole = 1 / (Math.Pow(Math.PI, 4) * (3 * d11 / (a2 * a2) + 2 * (d12 + 2 * d66) / (a2 * b2) + 3 * d22 / (b2 * b2)));
        return Math.Min(whole, Math.Min(a2 * a2 / (384 * d11), b2 * b2 / (384 * d22)));
    }
}
