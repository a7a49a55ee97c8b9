using System.Collections.Immutable;
using PodLayout.Geometry;
using PodLayout.Shops;

namespace PodLayout.BoardMaking;

/// <summary>What keeps a port from being bored at a place.</summary>
internal static class PortPlaces
{
    /// <summary>Nothing, or what is in the way and by how much it misses.</summary>
    public static (string Code, string What, double MissingMm)? Trouble(BoardRequest request, ImmutableArray<ZonePart> parts, Point2 at)
    {
        foreach (var pin in request.Pins)
        {
            var web = (pin.At - at).Length - pin.HoleDiameterMm / 2
                - Math.Max(request.Bore.CounterboreDiameterMm / 2, request.ChannelWidthMm / 2);
            if (web < request.Limits.WebMm - 1e-9)
            {
                return ("port-on-pin", $"{Figure.Mm(web)} mm are left between it (or the end of its channel) and the hole of {pin.Name}", request.Limits.WebMm - web);
            }
        }

        // Inside the area of one zone; else by how much it misses the nearest.
        var missing = parts.Length == 0 ? 0 : parts.Min(p => -PieceMaking.Inside(p.ChannelArea, at));
        if (missing <= 1e-9)
        {
            return null;
        }

        var nearest = parts.MinBy(p => -PieceMaking.Inside(p.ChannelArea, at))!;
        return ("port-outside-zone", $"it lies {Figure.Mm(missing)} mm outside the area of channels of {nearest.Zone.Name}, {Figure.Box(nearest.ChannelArea)}", missing);
    }

    /// <summary>The ports of a lattice whose holes lie on the board, by row, then column.</summary>
    public static IEnumerable<Point2> OnLattice(GridBoard board, Point2 spacing, Point2 first)
    {
        var inside = new Box2(0, 0, board.WidthMm, board.LengthMm).Grow(-board.PortDiameterMm / 2);
        for (var j = Math.Ceiling((inside.MinY - first.Y) / spacing.Y); first.Y + j * spacing.Y <= inside.MaxY; j++)
        {
            for (var i = Math.Ceiling((inside.MinX - first.X) / spacing.X); first.X + i * spacing.X <= inside.MaxX; i++)
            {
                yield return new(first.X + i * spacing.X, first.Y + j * spacing.Y);
            }
        }
    }
}
