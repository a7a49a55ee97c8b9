using System.Collections.Concurrent;
using System.Collections.Immutable;
using PodLayout.Geometry;
using PodLayout.Parts;
using PodLayout.Shops;
using PodLayout.Vacuum;

namespace PodLayout.Holding;

/// <summary>
/// What holding a part comes down to, wherever its pods stand: its weight, what the cutter may do to it, and what each kind of
/// pod in the shop can bring. In the drawing's axes about the middle of the part's outline, heights from the underside.
/// </summary>
public sealed class HoldingGround
{
    private readonly ConcurrentDictionary<int, ImmutableArray<double>> _mostKPa = new();

    /// <summary>
    /// How far inside the figure of its pods the part's centre of mass must lie before the vacuum is on, mm: parts are laid down by
    /// hand. Common practice, no source.
    /// </summary>
    public const double LeastStandMm = 5;

    private HoldingGround(Part part, Shop shop, double factor, HeldPiece? piece)
    {
        Shop = shop;
        Factor = factor;
        Piece = piece?.Name;
        Middle = part.Shape.Outline.Bounds.Centre;
        var (outline, holes) = (piece?.Outline ?? part.Shape.Outline, piece?.Holes ?? part.Shape.Holes);
        AreaMm2 = Mass(outline, holes, Middle).AreaMm2;
        var cuts = piece is null ? part.CutAway : [];
        (var volume, CentreOfMass) = Left(outline, holes, part.ThicknessMm, cuts, Middle, _ => true);
        StandingCentre = Left(outline, holes, part.ThicknessMm, cuts, Middle, c => c.IsGone).Centre;
        WeightN = (piece?.MassKg ?? volume * 1e-9 * part.DensityKgPerM3) * StandardGravity;
        CutterLoads = piece?.Loads ?? part.Loads;
        Loads = CutterForces.Of(CutterLoads, Middle);
        LengthMm = Math.Max(1, Loads.Select(l => new Point2(l.X, l.Y).Length)
            .Concat(outline.Points.Select(p => (p - Middle).Length)).Max());
        Telling = Farthest([.. Loads.Select(l => l.Wrench)], LengthMm);
        Grips = [.. shop.Pods.Select(p => PodGrip.Of(p, shop.Holding.Friction))];
    }

    // Forces that every layout is asked first: those that go farthest in directions spread over pushes, twists and tilts.
    private const int Directions = 48;

    // m/s², ISO 80000-3 (standard acceleration of free fall).
    private const double StandardGravity = 9.80665;

    /// <summary>The shop.</summary>
    public Shop Shop { get; }

    /// <summary>The holding factor that a layout must reach.</summary>
    public double Factor { get; }

    /// <summary>Name of the loose piece of the blank that this is about; null for the part.</summary>
    public string? Piece { get; }

    /// <summary>What the cutter may do to it, with the passes that do it.</summary>
    public CutterLoads CutterLoads { get; }

    /// <summary>The origin of all that follows, in the drawing's coordinates, mm.</summary>
    public Point2 Middle { get; }

    /// <summary>Area of the part's wood, mm².</summary>
    public double AreaMm2 { get; }

    /// <summary>The finished part's centre of mass, with all that is cut out of it gone.</summary>
    public Point2 CentreOfMass { get; }

    /// <summary>The centre of mass as the part is put down: only what was cut into its underside before is gone.</summary>
    public Point2 StandingCentre { get; }

    /// <summary>The part's weight, N.</summary>
    public double WeightN { get; }

    /// <summary>What the cutter may do to the part.</summary>
    public ImmutableArray<CutterForce> Loads { get; }

    /// <summary>A length of the size of the part, mm.</summary>
    public double LengthMm { get; }

    /// <summary>
    /// A few of the forces that are likely to be the worst whatever the pods: the farthest in a number of directions spread over
    /// the space of forces and moments. The same for every layout, so that the search does not depend on its course.
    /// </summary>
    public ImmutableArray<int> Telling { get; }

    /// <summary>The grip of each kind of pod.</summary>
    public ImmutableArray<PodGrip> Grips { get; }

    /// <summary>The most vacuum that each kind of pod can have in a layout of at least some pods, kPa.</summary>
    public ImmutableArray<double> MostKPa(int pods) => _mostKPa.GetOrAdd(
        Math.Max(1, pods), (count, shop) => [.. shop.Pods.Select(p => VacuumNetwork.MostKPa(shop, p, count))], Shop);

    /// <summary>What the part's weight does.</summary>
    public Wrench Weight => Wrench.Of(new(0, 0, -WeightN), CentreOfMass.X, CentreOfMass.Y, 0);

    /// <summary>The ground of a part; null when nothing is known of the cutter.</summary>
    /// <param name="part">The part with its loads.</param>
    /// <param name="shop">The shop.</param>
    /// <param name="factor">The holding factor that layouts must reach.</param>
    public static HoldingGround? Of(Part part, Shop shop, double factor) =>
        part.Loads.Points.IsEmpty ? null : new(part, shop, factor, null);

    /// <summary>
    /// The grounds of the loose pieces that pods are to hold and that some cut runs along: the same axes about the same middle as
    /// the part's.
    /// </summary>
    /// <param name="part">The part with its pieces and their loads.</param>
    /// <param name="shop">The shop.</param>
    /// <param name="factor">The holding factor that layouts must reach.</param>
    public static ImmutableArray<HoldingGround> OfPieces(Part part, Shop shop, double factor) =>
        [.. part.Shape.Held.Where(p => !p.Loads.Points.IsEmpty).Select(p => new HoldingGround(part, shop, factor, p))];

    /// <summary>The most that all spots together can be pressed, N, with a number of pods, at so many times the factor.</summary>
    public double MostPushN(int pods, double times = 1) => WeightN
        + pods * Grips.Select((g, i) => g.AreaMm2 * MostKPa(1)[i] * 1e-3).DefaultIfEmpty(0).Max()
        + times * Factor * Loads.Max(l => Math.Max(0, -l.Force.ZN));

    /// <summary>The part on some pods.</summary>
    public PartOnPods On(ImmutableArray<HeldPod> pods) => new(pods, Weight, LengthMm);

    /// <summary>
    /// The same, leaning besides on spots that pull nothing and have no friction: what it then gives way to is a motion in which
    /// none of those spots sinks.
    /// </summary>
    public PartOnPods On(ImmutableArray<HeldPod> pods, ImmutableArray<Contact> besides) => new(pods, Weight, LengthMm, besides);

    private static ImmutableArray<int> Farthest(Wrench[] wrenches, double lengthMm)
    {
        var telling = new SortedSet<int>();
        for (var d = 0; d < Directions; d++)
        {
            // Directions by the fractional parts of multiples of roots: spread evenly and always the same.
            double Spread(int prime) => 2 * (Math.Sqrt(prime) * (d + 1) % 1) - 1;
            var motion = new Motion(
                Spread(2), Spread(3), Math.Abs(Spread(5)), Spread(7) / lengthMm, Spread(11) / lengthMm, Spread(13) / lengthMm);
            telling.Add(Enumerable.Range(0, wrenches.Length).MaxBy(i => motion.Work(wrenches[i])));
        }

        return [.. telling];
    }

    // Volume and centre of mass of the part, less what cuts take out of it. No part is all cuts: where their sum says so some of
    // them tell of the same wood, and a tenth is taken to be left.
    private static (double VolumeMm3, Point2 Centre) Left(
        Ring outline, ImmutableArray<Ring> holes, double thicknessMm, ImmutableArray<CutAway> cuts, Point2 middle, Func<CutAway, bool> isGone)
    {
        const double LeastShare = 0.1;
        var (area, centre) = Mass(outline, holes, middle);
        var whole = area * thicknessMm;
        var gone = cuts.Where(isGone).ToList();
        var volume = whole - gone.Sum(c => c.VolumeMm3);
        return gone.Count == 0 ? (whole, centre) : volume < LeastShare * whole ? (LeastShare * whole, centre)
            : (volume, gone.Aggregate(centre * whole, (sum, c) => sum - (c.Centroid - middle) * c.VolumeMm3) * (1 / volume));
    }

    // Area and centre of mass of the outline less the holes.
    private static (double AreaMm2, Point2 Centre) Mass(Ring outline, ImmutableArray<Ring> holes, Point2 middle)
    {
        double area = 0;
        var moment = new Point2(0, 0);
        foreach (var (ring, sign) in holes.Select(h => (h, -1.0)).Prepend((outline, 1.0)))
        {
            double twice = 0;
            var sum = new Point2(0, 0);
            for (var i = 0; i < ring.Points.Length; i++)
            {
                Point2 a = ring.Points[i] - middle, b = ring.Points[(i + 1) % ring.Points.Length] - middle;
                var cross = a.Cross(b);
                twice += cross;
                sum += (a + b) * (cross / 3);
            }

            var turn = twice < 0 ? -sign : sign;
            area += turn * twice / 2;
            moment += sum * (turn / 2);
        }

        return (area, area > 0 ? moment * (1 / area) : default);
    }
}
