using PodLayout.Geometry;
using PodLayout.Handover.Picture;
using PodLayout.Shops;

namespace PodLayout.Handover.Setup;

/// <summary>The zones of the table and their names.</summary>
internal static class ZoneNames
{
    public static void Draw(SheetDraft draft, Shop shop)
    {
        const double sizeMm = 2.6;
        foreach (var zone in shop.Zones)
        {
            draft.AddLine(
                SheetDraft.Zones, "zone", [.. SheetDraft.RingOf(zone.Area).Points, new(zone.Area.MinX, zone.Area.MinY)]);
            var words = TextMeasure.Cut(zone.Name, Math.Max(8, zone.Area.Width / draft.Scale - 4), sizeMm, true);
            var box = draft.TextBox(default, words, sizeMm, true);
            var places =
                from down in Enumerable.Range(1, 12)
                from across in Enumerable.Range(0, 9)
                select box.Moved(new(
                    zone.Area.MinX + (zone.Area.Width - box.Width) * across / 8 + (across == 0 ? 1 : across == 8 ? -1 : 0) * draft.Scale + box.Width / 2,
                    zone.Area.MaxY - down * 4 * draft.Scale));
            // Off the lines of the part where that can be: a name on its outline would look like an opening in it.
            List<Box2> free = [.. places.Where(p => zone.Area.Contains(p) && draft.IsFree(p.Grow(0.5 * draft.Scale)))];
            foreach (var place in free.Where(p => !draft.IsCrossed(p.Grow(0.5 * draft.Scale)) && !draft.HasWord(p)).Concat(free))
            {
                draft.AddName(place, words, sizeMm);
                break;
            }
        }
    }
}
