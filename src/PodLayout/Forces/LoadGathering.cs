using System.Collections.Immutable;
using PodLayout.Geometry;
using PodLayout.Parts;

namespace PodLayout.Forces;

/// <summary>Collects the loads of passes, those near each other as one.</summary>
/// <remarks>
/// Points of a pass within one square of a lattice, and one of three layers of the part, become one: at the place of the strongest, of
/// those as strong at the one farthest from the part's middle, where it twists most; as high as the highest, with the hull of all their forces. So no force is lost, whatever the number of moves. Where there would be too many points, the squares
/// are made larger. Forces that act higher up in the same square are taken to stand for the same forces below.
/// </remarks>
/// <param name="thicknessMm">Thickness of the part: points are kept apart by a third of it.</param>
/// <param name="middle">The part's middle.</param>
internal sealed class LoadGathering(double thicknessMm, Point2 middle)
{
    /// <summary>Points of a path are this far apart, mm, where there are not too many.</summary>
    public const double StepMm = 10;

    private const int MostPoints = 1500;

    // Forces are as strong as each other within this share: an even cut's differ in their last digits only.
    private const double SameShare = 0.01;

    // The same force tips the more the higher it acts: points that lie one above the other are told apart.
    private const int Layers = 3;

    private readonly record struct Gathered(Point2 At, double HeightMm, CutForces Forces, double DepthMm);

    private readonly List<(string Name, string Source, bool FollowsFeed)> _passes = [];
    private readonly SortedDictionary<(int Pass, long Column, long Row, double RadiusMm), Gathered> _freeing = [];
    private readonly SortedDictionary<(int Pass, long Column, long Row, int Layer), Gathered> _points = [];
    private readonly List<string> _assumptions = [];

    /// <summary>Begins a pass.</summary>
    /// <returns>Its index.</returns>
    public int Begin(string name, string source, bool followsFeed)
    {
        _passes.Add((name, source, followsFeed));
        return _passes.Count - 1;
    }

    /// <summary>Names a pass's source anew.</summary>
    public void Rename(int pass, string source) => _passes[pass] = _passes[pass] with { Source = source };

    /// <summary>Notes what was assumed; said once.</summary>
    public void Assume(string? sentence)
    {
        if (sentence is not null && !_assumptions.Contains(sentence))
        {
            _assumptions.Add(sentence);
        }
    }

    /// <summary>Adds a load.</summary>
    /// <param name="pass">Its pass.</param>
    /// <param name="at">Where.</param>
    /// <param name="heightMm">How high above the underside.</param>
    /// <param name="forces">The forces there.</param>
    /// <param name="depthMm">Depth of the cut that they are proportional to, mm; 0 for none.</param>
    public void Add(int pass, Point2 at, double heightMm, CutForces forces, double depthMm)
    {
        if (forces.PeakN > 0)
        {
            Put(
                _points, (pass, Cell(at.X, StepMm), Cell(at.Y, StepMm), Math.Clamp((int)(heightMm / thicknessMm * Layers), 0, Layers - 1)),
                new(at, heightMm, forces, depthMm));
        }
    }

    /// <summary>Adds a load of a tool that goes through the last layer of wood.</summary>
    public void AddFreeing(int pass, Point2 at, double radiusMm, double heightMm, CutForces forces, double depthMm)
    {
        if (forces.PeakN > 0)
        {
            Put(_freeing, (pass, Cell(at.X, StepMm), Cell(at.Y, StepMm), radiusMm), new(at, heightMm, forces, depthMm));
        }
    }

    /// <summary>All that was collected. Passes without any load are left out.</summary>
    public CutterLoads Done()
    {
        var points = Topmost();
        for (var step = 2 * StepMm; points.Count > MostPoints; step *= 2)
        {
            var coarser = new SortedDictionary<(int Pass, long Column, long Row, int Layer), Gathered>();
            foreach (var (key, point) in points)
            {
                Put(coarser, (key.Pass, Cell(point.At.X, step), Cell(point.At.Y, step), key.Layer), point);
            }

            points = coarser;
        }

        var used = points.Keys.Select(k => k.Pass).Distinct().Order().ToArray();
        ImmutableArray<PathLoad> loads = [.. points.Select(p => Load(p.Value, Array.BinarySearch(used, p.Key.Pass)))];
        return new(
            loads,
            [.. used.Select((pass, i) => new CutterPass(
                _passes[pass].Name, _passes[pass].Source,
                loads.Where(l => l.Pass == i).SelectMany(l => l.Forces).Max(f => f.SizeN),
                points.Where(p => p.Key.Pass == pass).Max(p => p.Value.Forces.LeastPeakN))
            {
                FollowsFeed = _passes[pass].FollowsFeed,
            })],
            [.. _assumptions])
        {
            Freeing =
            [
                .. _freeing.Where(f => Array.BinarySearch(used, f.Key.Pass) >= 0)
                    .Select(f => new FreeingLoad(Load(f.Value, Array.BinarySearch(used, f.Key.Pass)), f.Key.RadiusMm)),
            ],
        };
    }

    private static PathLoad Load(Gathered point, int pass) => new(point.At, point.HeightMm, Corners(point.Forces), pass) { DepthMm = point.DepthMm };

    // The same forces lower down tip less: where a higher point of the same square has them all, the lower one is left out.
    private SortedDictionary<(int Pass, long Column, long Row, int Layer), Gathered> Topmost()
    {
        var kept = new SortedDictionary<(int Pass, long Column, long Row, int Layer), Gathered>();
        foreach (var (key, point) in _points)
        {
            var isCovered = false;
            for (var layer = key.Layer + 1; layer < Layers && !isCovered; layer++)
            {
                isCovered = _points.TryGetValue(key with { Layer = layer }, out var above) && above.Forces.Covers(point.Forces);
            }

            if (!isCovered)
            {
                kept.Add(key, point);
            }
        }

        return kept;
    }

    // The last digits of a drawing are not to decide where an even cut's force stands for its square.
    private Point2 Stronger(Gathered a, Gathered b) =>
        a.Forces.PeakN > b.Forces.PeakN * (1 + SameShare) ? a.At : b.Forces.PeakN > a.Forces.PeakN * (1 + SameShare) ? b.At
        : (a.At - middle).Length > (b.At - middle).Length ? a.At : b.At;

    private void Put<TKey>(SortedDictionary<TKey, Gathered> points, TKey key, Gathered point)
        where TKey : notnull =>
        points[key] = points.TryGetValue(key, out var known)
            ? new(
                Stronger(point, known),
                Math.Max(known.HeightMm, point.HeightMm),
                known.Forces.And(point.Forces),
                Math.Max(known.DepthMm, point.DepthMm))
            : point;

    private static long Cell(double mm, double step) => (long)Math.Floor(mm / step);

    private static ImmutableArray<Force> Corners(CutForces forces)
    {
        double[] axial = forces.DownN == forces.UpN ? [forces.UpN] : [forces.DownN, forces.UpN];
        Point2[] inPlane = forces.InPlane.IsEmpty ? [default] : [.. forces.InPlane];
        return [.. from z in axial from p in inPlane select new Force(p.X, p.Y, z)];
    }
}
