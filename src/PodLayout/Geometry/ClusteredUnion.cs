using NetTopologySuite.Geometries;

namespace PodLayout.Geometry;

/// <summary>Unites many shapes of which most lie apart: only those whose boxes touch are given to the engine together.</summary>
/// <remarks>
/// The engine's tree of unions goes through every edge again at each level; five thousand separate holes would pass through
/// it thirteen times for nothing.
/// </remarks>
internal static class ClusteredUnion
{
    private const int ManyShapes = 256;

    private const int StripCount = 8;

    /// <summary>The union.</summary>
    public static NetTopologySuite.Geometries.Geometry Of(
        IReadOnlyList<NetTopologySuite.Geometries.Geometry> shapes, GeometryFactory factory)
    {
        var cluster = Clusters([.. shapes.Select(s => s.EnvelopeInternal)]);
        var united = shapes.Select((shape, i) => (shape, i)).GroupBy(s => cluster[s.i], s => s.shape)
            .Select(group => group.ToList())
            .Select(group => group.Count == 1 ? group[0] : United(group, factory))
            .ToList();
        if (united.Count == 1)
        {
            return united[0];
        }

        var polygons = united.SelectMany(g => Enumerable.Range(0, g.NumGeometries).Select(g.GetGeometryN)).OfType<Polygon>();
        return factory.CreateMultiPolygon([.. polygons.Where(p => !p.IsEmpty)]);
    }

    // Many shapes of one cluster are united strip by strip, side by side; the strips do not depend on the machine.
    private static NetTopologySuite.Geometries.Geometry United(
        List<NetTopologySuite.Geometries.Geometry> shapes, GeometryFactory factory)
    {
        if (shapes.Count < ManyShapes)
        {
            return SureOverlay.Union(factory.BuildGeometry(shapes));
        }

        var strips = shapes.OrderBy(s => s.EnvelopeInternal.MinX).Chunk((shapes.Count + StripCount - 1) / StripCount).ToArray();
        var united = new NetTopologySuite.Geometries.Geometry[strips.Length];
        Parallel.For(0, strips.Length, i => united[i] = SureOverlay.Union(factory.BuildGeometry(strips[i])));
        return SureOverlay.Union(factory.BuildGeometry(united));
    }

    // For each box the least index of those that it hangs together with.
    private static int[] Clusters(Envelope[] boxes)
    {
        var parent = Enumerable.Range(0, boxes.Length).ToArray();
        var active = new List<int>();
        foreach (var i in Enumerable.Range(0, boxes.Length).OrderBy(i => boxes[i].MinX))
        {
            active.RemoveAll(j => boxes[j].MaxX < boxes[i].MinX);
            foreach (var j in active.Where(j => boxes[j].Intersects(boxes[i])))
            {
                int a = Root(i), b = Root(j);
                parent[Math.Max(a, b)] = Math.Min(a, b);
            }

            active.Add(i);
        }

        return [.. Enumerable.Range(0, boxes.Length).Select(Root)];

        int Root(int i)
        {
            while (parent[i] != i)
            {
                parent[i] = parent[parent[i]];
                i = parent[i];
            }

            return i;
        }
    }
}
