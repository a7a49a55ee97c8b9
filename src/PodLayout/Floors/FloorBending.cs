using PodLayout.Jobs;
using PodLayout.Woods;

namespace PodLayout.Floors;

/// <summary>What the vacuum of a pod does to a floor: the wood above its cavity where a cut has made it thinner.</summary>
/// <remarks>
/// <para>
/// Inside its upper seal a pod's vacuum pulls the wood down with the gauge pressure, the most that the pod can have in the shop. Where
/// nothing is cut the wood there is a plate of the part's thickness that rests on the seal all round, as large as the cavity. A floor
/// is a place of it that is thinner; what matters of the place is its width (twice the radius of the largest disc in it), its longest
/// extent, and the thickness that is left. Nothing depends on where under the floor the pod stands.
/// </para>
/// <para>
/// <b>Sag</b> is the sum of two. The floor sags between its walls: a plate that rests all round (<see cref="FloorPlate.Resting"/>), whose
/// sides are its width and extent, or the cavity's where those are less. And the walls sag with the rest: the plate over the cavity,
/// weakened. If the floor crosses the cavity as a trench of width f, as a share of the cavity, through its middle, then by the beam
/// under even load the share s(f) = (f - f²/2 - f³/3 + f⁴/4) / (5/12) of the whole sag arises in it, and grows as the thin plate sags
/// more than the thick one; where the floor is shorter than the cavity, by the share g, the strips beside it (1 - g) stay as stiff as
/// they were. No floor can sag more than if the whole part were as thin, which bounds the sum.
/// </para>
/// <para>
/// A floor that lies wholly within a cavity, with walls at least twice as thick all round it, is clamped by them
/// (<see cref="FloorPlate.Clamped"/>). One that is thicker than half its walls sags no more than it would at that half.
/// </para>
/// <para>
/// <b>Stress</b>, along and across the grain each by itself, is the sum of that of the floor between its walls and of what the bending
/// of the whole plate brings into it: the stress of the plate, grown as its sag has, and three times that, as at the rim of a round hole.
/// No more than if the whole part were as thin, which is what a trench that crosses the cavity comes to. The strength along the grain is the modulus of rupture, that across it
/// the tension across the grain.
/// </para>
/// <para>
/// Left out: the seal's own give, creep under vacuum that stays on for hours, checks and knots, the cutter's press on the floor, and
/// stress where thick wood changes to thin.
/// </para>
/// </remarks>
public sealed class FloorBending
{
    // Thicknesses that would do are found to this, mm, and not looked for beyond this.
    private const double ThicknessStepMm = 0.01;
    private const double ThickestMm = 1000;

    // A plate that is bent bears at the rim of a small round hole at most three times its stress (Peterson, Stress Concentration
    // Factors; from memory).
    private const double AtRim = 3;

    private readonly PlateWood _wood;
    private readonly FloorPlate _cavity;
    private readonly FloorPlate _floor;
    private readonly FloorPlate? _clamped;
    private readonly double _wholeMm;
    private readonly double _within;
    private readonly double _across;

    /// <summary>A floor.</summary>
    /// <param name="wood">The wood.</param>
    /// <param name="wholeMm">Thickness of the part.</param>
    /// <param name="cavity">The pod's cavity.</param>
    /// <param name="widthMm">Width of the floor.</param>
    /// <param name="extentMm">Its longest extent.</param>
    /// <param name="isWalled">Whether walls at least twice as thick as it stand all round it.</param>
    public FloorBending(PlateWood wood, double wholeMm, PodCavity cavity, double widthMm, double extentMm, bool isWalled)
    {
        (_wood, _wholeMm) = (wood, wholeMm);
        _cavity = FloorPlate.Resting(wood, cavity.ShortMm, cavity.LongMm);
        double shortMm = Math.Min(widthMm, cavity.ShortMm), longMm = Math.Max(shortMm, Math.Min(extentMm, cavity.LongMm));
        _floor = FloorPlate.Resting(wood, shortMm, longMm);
        _clamped = isWalled && extentMm <= cavity.ShortMm ? FloorPlate.Clamped(wood, shortMm, longMm) : null;
        var f = Math.Min(1, widthMm / cavity.ShortMm);
        _within = (f - f * f / 2 - f * f * f / 3 + f * f * f * f / 4) * 12 / 5;
        _across = Math.Min(1, extentMm / cavity.ShortMm);
    }

    /// <summary>The part itself over a pod, where nothing is cut.</summary>
    public static FloorBending OfPart(PlateWood wood, double wholeMm, PodCavity cavity) =>
        new(wood, wholeMm, cavity, cavity.ShortMm, cavity.LongMm, false);

    /// <summary>The sag of the floor, mm.</summary>
    /// <param name="pullMPa">The pod's vacuum.</param>
    /// <param name="leftMm">Thickness of the floor, at most that of the part.</param>
    public double SagMm(double pullMPa, double leftMm)
    {
        double asThin = _cavity.SagMm(pullMPa, leftMm), walls = _cavity.SagMm(pullMPa, Math.Max(leftMm, _wholeMm)) * Weakened(pullMPa, leftMm);
        var between = _floor.SagMm(pullMPa, leftMm);
        if (_clamped is { } clamped)
        {
            between = Math.Min(between, clamped.SagMm(pullMPa, Math.Min(leftMm, _wholeMm / 2)));
        }

        return Math.Min(asThin, between + walls);
    }

    /// <summary>How many times its greatest stress the wood bears: the less of along and across the grain.</summary>
    /// <param name="pullMPa">The pod's vacuum.</param>
    /// <param name="leftMm">Thickness of the floor, at most that of the part.</param>
    public double StrengthFactor(double pullMPa, double leftMm) => Math.Min(
        _wood.AlongStrengthMPa / Stress(_cavity.AlongMPa, _floor.AlongMPa, pullMPa, leftMm),
        _wood.AcrossStrengthMPa / Stress(_cavity.AcrossMPa, _floor.AcrossMPa, pullMPa, leftMm));

    /// <summary>Whether both limits are kept.</summary>
    public bool Bears(double pullMPa, double leftMm, FloorLimits limits) =>
        leftMm > 0 && SagMm(pullMPa, leftMm) <= limits.SagMm && StrengthFactor(pullMPa, leftMm) >= limits.StressFactor;

    /// <summary>The thickness that would do, mm, rounded up: of the floor, or of the whole part where that is too thin itself.</summary>
    /// <param name="pullMPa">The pod's vacuum.</param>
    /// <param name="limits">What is allowed.</param>
    public double NeededMm(double pullMPa, FloorLimits limits)
    {
        double low = 0, high = Bears(pullMPa, _wholeMm, limits) ? _wholeMm : ThickestMm;
        while (high - low > ThicknessStepMm / 2)
        {
            var middle = (low + high) / 2;
            (low, high) = Bears(pullMPa, middle, limits) ? (low, middle) : (middle, high);
        }

        return high;
    }

    // How many times as far the plate over the cavity sags as it would without the floor.
    private double Weakened(double pullMPa, double leftMm)
    {
        double asThin = _cavity.SagMm(pullMPa, leftMm), asThick = _cavity.SagMm(pullMPa, Math.Max(leftMm, _wholeMm));
        var trench = 1 - _within + _within * asThin / asThick;
        return 1 / (1 - _across + _across / trench);
    }

    private double Stress(Func<double, double, double> cavity, Func<double, double, double> floor, double pullMPa, double leftMm) => Math.Min(
        cavity(pullMPa, leftMm),
        floor(pullMPa, leftMm) + AtRim * cavity(pullMPa, Math.Max(leftMm, _wholeMm)) * Weakened(pullMPa, leftMm));
}
