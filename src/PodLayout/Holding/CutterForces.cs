using System.Collections.Immutable;
using PodLayout.Geometry;
using PodLayout.Parts;

namespace PodLayout.Holding;

/// <summary>Those forces of the cutter that can be the worst.</summary>
public static class CutterForces
{
    /// <summary>
    /// The forces, without those that cannot be the worst: how much of a load the part bears is a concave matter of the load, so
    /// of the places where one and the same force acts, at one height, only the corners of their convex hull can be the worst.
    /// </summary>
    /// <param name="loads">What the cutter does.</param>
    /// <param name="middle">The new origin, in the drawing.</param>
    public static ImmutableArray<CutterForce> Of(CutterLoads loads, Point2 middle)
    {
        var alike = new Dictionary<(Force, double), List<int>>();
        for (var p = 0; p < loads.Points.Length; p++)
        {
            foreach (var force in loads.Points[p].Forces.Distinct().Where(f => f != default))
            {
                var key = (force, loads.Points[p].HeightMm);
                if (!alike.TryGetValue(key, out var places))
                {
                    alike.Add(key, places = []);
                }

                places.Add(p);
            }
        }

        return
        [
            .. from kind in alike
               from p in Hull.Corners([.. kind.Value.Select(i => loads.Points[i].OnPart)])
               let point = kind.Value[p]
               orderby point, kind.Key.Item1.XN, kind.Key.Item1.YN, kind.Key.Item1.ZN
               let at = loads.Points[point].OnPart - middle
               select new CutterForce(at.X, at.Y, kind.Key.Item2, kind.Key.Item1, point),
        ];
    }
}
