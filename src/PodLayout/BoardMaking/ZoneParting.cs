using System.Collections.Immutable;
using PodLayout.Geometry;
using PodLayout.JsonFiles;
using PodLayout.Seats;

namespace PodLayout.BoardMaking;

/// <summary>Zones under pieces: where gaskets and channels may run, and whether the table's vacuum stays inside.</summary>
internal static class ZoneParting
{
    public static ImmutableArray<ZonePart> Of(BoardRequest request, ImmutableArray<Piece> pieces, CheckList checks)
    {
        var parts = ImmutableArray.CreateBuilder<ZonePart>();
        for (var z = 0; z < request.Zones.Length; z++)
        {
            var (zone, path) = (request.Zones[z], JsonWords.Child("$.making.table.zones", z));
            for (var y = 0; y < z; y++)
            {
                var shared = Common(request.Zones[y].Area, zone.Area);
                if (shared is { Width: > 0.01, Height: > 0.01 })
                {
                    checks.Refuse("zones apart", Figure.Mm(-Math.Min(shared.Width, shared.Height)) + " mm", "0 mm", "zones-overlap", path + ".area",
                        $"{zone.Name} and {request.Zones[y].Name} overlap in {Figure.Box(shared)}.", "Mend the zones' areas: each has a valve of its own.");
                }
            }

            var before = parts.Count;
            for (var p = 0; p < pieces.Length; p++)
            {
                var area = Common(zone.Area, pieces[p].Outline);
                if (area.Width > 0.01 && area.Height > 0.01)
                {
                    parts.Add(PartOf(request, zone, path, p, area, checks));
                }
            }

            if (parts.Count == before)
            {
                checks.Refuse("zone on the board", "0 mm", "some of it", "zone-off-board", path + ".area",
                    $"{zone.Name} {Figure.Box(zone.Area)} does not lie under the board.", "Give its area in board coordinates, or take the zone out.");
            }
        }

        return parts.ToImmutable();
    }

    private static ZonePart PartOf(BoardRequest request, Zone zone, string path, int piece, Box2 area, CheckList checks)
    {
        var half = request.ChannelWidthMm / 2;
        var gasket = request.Gasket;
        Box2? line = gasket is null ? null : area.Grow(-gasket.InsetMm - gasket.WidthMm / 2);
        var sealInside = line is { } l ? l.Grow(-gasket!.WidthMm / 2) : area.Grow(-request.Limits.EdgeMm);
        var channels = line is null ? sealInside.Grow(-half) : sealInside.Grow(-request.Limits.WebMm - half);
        var room = Math.Min(channels.Width, channels.Height);
        checks.Least(
            $"{zone.Name}: room for the middle of a channel", room, 0, null, "zone-too-small",
            gasket is null ? "$.making.limits.edgeMm" : "$.making.gasket.insetMm",
            gasket is null ? "Give a smaller edgeMm or a narrower channel." : "Give a smaller inset or narrower grooves, or leave the gasket out.");

        // Where the table's own grooves reach past the seal, the pump draws air from the open edge.
        var extent = zone.VacuumExtent;
        var inside = Math.Min(Math.Min(extent.MinX - sealInside.MinX, sealInside.MaxX - extent.MaxX), Math.Min(extent.MinY - sealInside.MinY, sealInside.MaxY - extent.MaxY));
        checks.Least(
            $"{zone.Name}: table's grooves inside {(gasket is null ? "the edge that seals" : "the gasket")} by", inside, 0, null,
            "vacuum-outside-gasket", path + ".vacuumExtent",
            gasket is null
                ? $"Close the table's grooves outside {Figure.Box(sealInside)}, give a smaller limits.edgeMm, or make the board larger."
                : $"Close the table's grooves outside {Figure.Box(sealInside)}, or give a smaller gasket inset.");
        if (gasket is not null)
        {
            GasketOffPins(request, zone, line!.Value, checks);
        }
        else
        {
            foreach (var pin in request.Pins.Where(p => PieceMaking.Inside(area, p.At) >= 0))
            {
                checks.Least(
                    $"{zone.Name}: from the table's grooves to the hole of {pin.Name}",
                    Clearance.ToPoint(extent, pin.At) - pin.HoleDiameterMm / 2, request.Limits.WebMm, null, "pin-over-vacuum",
                    path + ".vacuumExtent", "Close the table's grooves near the pin, or move the pin: its hole goes through the board and lets air in.");
            }
        }

        return new(zone, piece, area, line, channels);
    }

    private static void GasketOffPins(BoardRequest request, Zone zone, Box2 line, CheckList checks)
    {
        // A pin hole goes through the board: inside the gasket, or in its groove, it is a leak.
        foreach (var pin in request.Pins)
        {
            var outside = -PieceMaking.Inside(line, pin.At) - request.Gasket!.WidthMm / 2 - pin.HoleDiameterMm / 2;
            if (PieceMaking.Inside(line.Grow(request.Gasket.InsetMm + request.Gasket.WidthMm / 2), pin.At) < 0)
            {
                continue;
            }

            checks.Least(
                $"{zone.Name}: web between the gasket groove and the hole of {pin.Name}", outside, request.Limits.WebMm, null,
                "gasket-over-pin", "$.making.gasket.insetMm",
                $"Give an inset of at least {Figure.Mm(request.Gasket.InsetMm + request.Limits.WebMm - outside)} mm, or move the pin nearer to the edge: its hole must lie outside the gasket.");
        }
    }

    private static Box2 Common(Box2 a, Box2 b) => new(
        Math.Max(a.MinX, b.MinX), Math.Max(a.MinY, b.MinY), Math.Min(a.MaxX, b.MaxX), Math.Min(a.MaxY, b.MaxY));
}
