using System.Collections.Immutable;
using PodLayout.Findings;
using PodLayout.Geometry;
using PodLayout.JsonFiles;
using PodLayout.Shops;
using PodLayout.Shops.Written;

namespace PodLayout.Jobs.Written;

/// <summary>From written areas to avoid to their shapes.</summary>
internal static class AvoidReading
{
    public static (ImmutableArray<(string Name, ObstacleShape Shape)> Areas, Finding? Refusal) Areas(
        ImmutableArray<WrittenAvoid> written, string path, FileRefusals refusals)
    {
        var areas = ImmutableArray.CreateBuilder<(string, ObstacleShape)>(written.Length);
        for (var i = 0; i < written.Length; i++)
        {
            var (shape, refusal) = AreaMaking.Of(
                "one area", written[i].CentreMm, written[i].DiameterMm, written[i].Area, JsonWords.Child(path, i), refusals);
            if (shape is null)
            {
                return ([], refusal);
            }

            areas.Add((written[i].Name, shape));
        }

        return (areas.ToImmutable(), null);
    }

    /// <summary>The shape as a ring: a disc becomes a polygon around it, so that a pod that keeps clear of it is clear of the disc.</summary>
    public static Ring RingOf(ObstacleShape shape)
    {
        if (shape is ObstacleShape.Rectangle { Extent: var box })
        {
            return new([new(box.MinX, box.MinY), new(box.MaxX, box.MinY), new(box.MaxX, box.MaxY), new(box.MinX, box.MaxY)]);
        }

        var disc = (ObstacleShape.Disc)shape;
        const int LeastSides = 16, MostSides = 720;
        var radius = disc.DiameterMm / 2;
        var sides = Math.Clamp((int)Math.Ceiling(Math.PI / Math.Acos(radius / (radius + Tolerances.ChordMm))), LeastSides, MostSides);
        var outer = radius / Math.Cos(Math.PI / sides);
        return new([.. Enumerable.Range(0, sides).Select(i => disc.Centre + Turn.FromDegrees(360.0 * i / sides).Apply(new(outer, 0)))]);
    }
}
