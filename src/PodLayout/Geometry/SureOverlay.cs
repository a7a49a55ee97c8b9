using NetTopologySuite.Geometries;
using NetTopologySuite.Geometries.Utilities;
using NetTopologySuite.Operation.Overlay;
using NetTopologySuite.Operation.OverlayNG;

namespace PodLayout.Geometry;

/// <summary>Unions, differences and common parts that always come out.</summary>
/// <remarks>
/// The engine's overlay of full precision, which tries several ways itself, still gives up on rare inputs whose edges touch
/// along each other, and on shapes that touch themselves. Mended and rounded to a grid of a nanometre they come out (snap
/// rounding; Hobby 1999, doi:10.1016/S0925-7721(99)00021-8).
/// </remarks>
internal static class SureOverlay
{
    private static readonly PrecisionModel Nanometres = new(1e6);

    /// <summary>Everything in at least one of the shapes.</summary>
    public static NetTopologySuite.Geometries.Geometry Union(NetTopologySuite.Geometries.Geometry shapes)
    {
        try
        {
            return OverlayNGRobust.Union(shapes);
        }
        catch (TopologyException)
        {
            return OneByOne(shapes);
        }
    }

    /// <summary>The difference or common part of two shapes.</summary>
    public static NetTopologySuite.Geometries.Geometry Of(
        NetTopologySuite.Geometries.Geometry a, NetTopologySuite.Geometries.Geometry b, SpatialFunction function)
    {
        try
        {
            return OverlayNGRobust.Overlay(a, b, function);
        }
        catch (TopologyException)
        {
            return OverlayNG.Overlay(Areas(GeometryFixer.Fix(a)), Areas(GeometryFixer.Fix(b)), function, Nanometres);
        }
    }

    // In the order given: the tree of unions would go by full precision again.
    private static NetTopologySuite.Geometries.Geometry OneByOne(NetTopologySuite.Geometries.Geometry shapes)
    {
        var sum = Areas(GeometryFixer.Fix(shapes.GetGeometryN(0)));
        for (var i = 1; i < shapes.NumGeometries; i++)
        {
            sum = Areas(OverlayNG.Overlay(sum, Areas(GeometryFixer.Fix(shapes.GetGeometryN(i))), SpatialFunction.Union, Nanometres));
        }

        return sum;
    }

    // Mending or rounding may leave lines beside the areas, and the engine refuses such a mixture.
    private static NetTopologySuite.Geometries.Geometry Areas(NetTopologySuite.Geometries.Geometry shape) => shape is Polygon or MultiPolygon ? shape
        : shape.Factory.CreateMultiPolygon([.. PolygonExtracter.GetPolygons(shape).Cast<Polygon>()]);
}
