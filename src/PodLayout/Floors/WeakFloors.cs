using System.Collections.Immutable;
using PodLayout.Geometry;
using PodLayout.Jobs;
using PodLayout.Parts;
using PodLayout.Vacuum;

namespace PodLayout.Floors;

/// <summary>Which floors of a part do not bear the vacuum of which pods.</summary>
public sealed class WeakFloors
{
    /// <summary>What the part itself is called as a floor.</summary>
    public const string WholePart = "the part";

    // Narrower or smaller than this is what two passes leave between them by rounding, mm and mm².
    private const double NarrowestMm = 1;
    private const double SmallestMm2 = 4;

    // A thinner floor with a rim of less than this share about it, as of a plunge or a ramp, is not looked at again together with the rim.
    private const double LeastNewShare = 0.05;

    // Edges are made simpler by this, outward, mm: nothing beside what a seal is wide.
    private const double SimplerMm = 0.1;

    private readonly Part _part;
    private readonly FloorLimits _limits;
    private readonly ImmutableArray<Kind> _kinds;

    /// <summary>The floors of a job's part over the pods that its shop has in stock.</summary>
    public WeakFloors(Job job, FloorLimits limits)
    {
        (_part, _limits) = (job.Part, limits);
        _kinds =
        [
            .. from type in job.Shop.Pods
               where type.Stock > 0
               let cavity = PodCavity.Of(type)
               where cavity.ShortMm > 0
               select new Kind(
                   type.Name, cavity, VacuumNetwork.MostKPa(job.Shop, type), FloorBending.OfPart(job.Part.Wood.Plate, job.Part.ThicknessMm, cavity)),
        ];
        NeededMm = _kinds.Where(Bears).Select(k => k.Whole.NeededMm(k.MPa, limits)).DefaultIfEmpty(0).Max();
    }

    /// <summary>A floor of at least this thickness is borne by all pods under which the part itself is thick enough, mm.</summary>
    public double NeededMm { get; }

    /// <summary>Names of the kinds of pod that are looked at.</summary>
    public IEnumerable<string> Pods => _kinds.Select(k => k.Pod);

    /// <summary>The floors that some kind of pod would bend too far or break; first the part itself, where it is too thin as a whole.</summary>
    /// <param name="areas">Where cuts leave less than the whole thickness.</param>
    /// <param name="wood">The wood that pods may stand under, less what is cut through.</param>
    public ImmutableArray<WeakFloor> Of(IReadOnlyList<ThinnedArea> areas, Region wood)
    {
        var floors = ImmutableArray.CreateBuilder<WeakFloor>();
        ImmutableArray<FloorPull> tooThin = [.. _kinds.Where(k => !Bears(k)).Select(k => k.Pull(k.Whole, _part.ThicknessMm, _limits))];
        if (!tooThin.IsEmpty && !wood.IsEmpty)
        {
            floors.Add(new(WholePart, "its thickness", Simple(wood), _part.ThicknessMm, tooThin));
        }

        List<ThinnedArea> thin = wood.IsEmpty ? [] : [
            .. areas.Where(a => a.LeftMm < NeededMm).Select(a => a with { Area = Sound(Simple(a.Area.Near(wood.Bounds)).Intersect(wood)) })
                .Where(a => !a.Area.IsEmpty)];
        List<Floor> thinner = [];
        var lower = Region.Empty;
        foreach (var level in thin.Select(a => a.LeftMm).Distinct().Order())
        {
            List<ThinnedArea> own = [
                .. thin.Where(a => a.LeftMm == level).Select(a => a with { Area = Sound(a.Area.Minus(lower)) }).Where(a => !a.Area.IsEmpty)];
            if (own.Count == 0)
            {
                continue;
            }

            lower = Region.UnionOf(own.Select(a => a.Area).Append(lower));
            List<Floor> found = [];
            foreach (var piece in Joined(lower, wood).Pieces)
            {
                var makers = own.Select(a => (Area: a, Mm2: a.Area.Near(piece.Bounds).Intersect(piece).AreaMm2)).ToList();
                if (makers.Sum(m => m.Mm2) > LeastNewShare * piece.AreaMm2)
                {
                    found.Add(Sized(piece, makers.MaxBy(m => m.Mm2).Area, thinner, wood, thin));
                }
            }

            floors.AddRange(found.Select(Judged).OfType<WeakFloor>());
            thinner.AddRange(found);
        }

        return floors.ToImmutable();
    }

    private bool Bears(Kind kind) => kind.Whole.Bears(kind.MPa, _part.ThicknessMm, _limits);

    // Ribs between floors stiffen the wood over a pod like the whole thickness only where there is enough of them: a rib bears the
    // pull on half the cavity's width at most, with a section that grows with its width and the square of its height. Floors with
    // narrower ones between them count as one.
    private Region Joined(Region floors, Region wood)
    {
        var most = MostShortMm;
        var thickShare = NeededMm / _part.ThicknessMm;
        var by = most / 4 * Math.Min(1, thickShare * thickShare);
        return by < NarrowestMm / 2 ? floors : Region.UnionOf([floors, floors.Grow(by, isCoarse: true).Shrink(by).Intersect(wood)]);
    }

    private double MostShortMm => _kinds.Select(k => k.Cavity.ShortMm).DefaultIfEmpty(0).Max();

    private Floor Sized(Region piece, ThinnedArea maker, List<Floor> thinner, Region wood, List<ThinnedArea> thin)
    {
        var simple = Simple(piece);
        var width = FloorSize.WidthMm(simple, MostShortMm);
        // A floor within it that is half as wide or more makes all of it as thin: the plate is not much stiffer for the rest.
        var left = thinner.Where(t => t.WidthMm >= width / 2 && t.Area.Near(piece.Bounds).Intersect(piece).AreaMm2 > t.Area.AreaMm2 / 2)
            .Select(t => t.LeftMm).Append(maker.LeftMm).Min();
        return new(maker, simple, left, width, FloorSize.ExtentMm(simple), new(() => IsWalled(simple, wood, thin)));
    }

    // Walls of the whole thickness, as wide as the part is thick, all round.
    private bool IsWalled(Region piece, Region wood, List<ThinnedArea> thin)
    {
        var walls = piece.Grow(Math.Max(_part.ThicknessMm, NarrowestMm), isCoarse: true).Minus(piece.Grow(SimplerMm));
        return walls.Minus(wood).AreaMm2 < SmallestMm2
            && thin.All(a => a.Area.Near(walls.Bounds).Intersect(walls).AreaMm2 < SmallestMm2);
    }

    private WeakFloor? Judged(Floor floor)
    {
        ImmutableArray<FloorPull> pulls = [.. _kinds.Where(Bears).Select(kind => Failing(kind, floor)).OfType<FloorPull>()];
        return pulls.IsEmpty ? null : new(
            floor.Maker.Name, floor.Maker.Source, Settled(floor.Area), floor.LeftMm, pulls)
        {
            Path = floor.Maker.Path,
        };
    }

    private FloorPull? Failing(Kind kind, Floor floor)
    {
        var bending = Bending(false);
        if (bending.Bears(kind.MPa, floor.LeftMm, _limits))
        {
            return null;
        }

        if (floor.ExtentMm <= kind.Cavity.ShortMm && Bending(true) is var clamped && floor.IsWalled.Value)
        {
            return clamped.Bears(kind.MPa, floor.LeftMm, _limits) ? null : kind.Pull(clamped, floor.LeftMm, _limits);
        }

        return kind.Pull(bending, floor.LeftMm, _limits);

        FloorBending Bending(bool isWalled) => new(
            _part.Wood.Plate, _part.ThicknessMm, kind.Cavity, floor.WidthMm, floor.ExtentMm, isWalled);
    }

    private static Region Simple(Region area) => area.IsIntricate ? area.SimplifiedOutward(SimplerMm) : area;

    // Clefts and touches are closed, so that no edges cross when corners are put into the steps of files; a seal's width matters more.
    private static Region Settled(Region area) =>
        Region.UnionOf([area.Grow(SimplerMm, isCoarse: true).Shrink(SimplerMm / 2).Rounded(Tolerances.CoordinateMm)]);

    private static Region Sound(Region area) =>
        Region.UnionOf(area.Pieces.Where(p => p.AreaMm2 >= SmallestMm2 && !p.Shrink(NarrowestMm / 2).IsEmpty));

    private sealed record Floor(ThinnedArea Maker, Region Area, double LeftMm, double WidthMm, double ExtentMm, Lazy<bool> IsWalled);

    private sealed record Kind(string Pod, PodCavity Cavity, double VacuumKPa, FloorBending Whole)
    {
        public double MPa => VacuumKPa / 1000;

        public FloorPull Pull(FloorBending bending, double leftMm, FloorLimits limits) => new(
            Pod, VacuumKPa, leftMm > 0 ? bending.SagMm(MPa, leftMm) : double.PositiveInfinity,
            leftMm > 0 ? bending.StrengthFactor(MPa, leftMm) : 0, bending.NeededMm(MPa, limits));
    }
}
