using System.Collections.Immutable;
using PodLayout.Geometry;

namespace PodLayout.BoardMaking;

/// <summary>Everything that is cut lies within the machine's travel, on both sides.</summary>
internal static class TravelChecks
{
    public static void Make(
        BoardRequest request, ImmutableArray<Piece> pieces, ImmutableArray<Groove> grooves, ImmutableArray<ZoneChannels> channels,
        ImmutableArray<ZonePart> parts, CheckList checks)
    {
        const string turned = "or set the pins about the middle of each piece, so that it stays in its place when it is turned over";
        var tool = request.Cutting.Perimeter.ToolDiameterMm / 2;
        Side("perimeter and pin holes", pieces.Select(p => p.Outline.Grow(tool)), "or make it smaller");
        Side("grooves with their run-out", grooves.Select(g => g.Run.Box), "make it smaller, or give a shorter run-out");
        Side("channels in the back", channels.SelectMany(c => c.Runs.Select(r => pieces[c.Part.Piece].Over.Apply(r.Box))), turned);
        Side("gasket grooves in the back", parts.Where(p => p.GasketLine is not null).Select(p => pieces[p.Piece].Over.Apply(p.GasketLine!.Value)), turned);

        void Side(string what, IEnumerable<Box2> boxes, string remedy)
        {
            var all = boxes.ToList();
            if (all.Count == 0)
            {
                return;
            }

            var reach = Box2.Around(all.SelectMany(b => new[] { new Point2(b.MinX, b.MinY), new Point2(b.MaxX, b.MaxY) }));
            var travel = request.Travel;
            var inside = Math.Min(
                Math.Min(reach.MinX - travel.MinX, travel.MaxX - reach.MaxX), Math.Min(reach.MinY - travel.MinY, travel.MaxY - reach.MaxY));
            checks.Least(
                $"{what}: inside the machine's travel by", inside, 0, null, "outside-travel", "$.making.table.travel",
                $"The tool's middle goes over {Figure.Box(reach)}: lay the board elsewhere, {remedy}.");
        }
    }
}
