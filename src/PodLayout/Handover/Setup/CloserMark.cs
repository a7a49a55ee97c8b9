using System.Collections.Immutable;
using PodLayout.Geometry;
using PodLayout.Handover.Picture;

namespace PodLayout.Handover.Setup;

/// <summary>Heavy corners around a part of the picture that is shown larger elsewhere, with its name and where that is.</summary>
internal static class CloserMark
{
    private const double LegMm = 4;
    private const double WordsMm = 2.6;
    private const double ApartMm = 0.5;

    // Round words, mm of paper.
    private const double RoundMm = 0.45;

    /// <param name="draft">The picture of the whole, with its words.</param>
    /// <param name="parts">Each part with what is said of it, and its name for where there is no room for that.</param>
    public static void Draw(SheetDraft draft, ImmutableArray<(Box2 Window, string Words, string Name)> parts)
    {
        foreach (var (window, _, _) in parts)
        {
            // Under pods and words a thin line all round; the corners are seen where it is not.
            draft.AddBox(SheetDraft.Before, "rule", window);
            Corners(draft, window);
        }

        foreach (var (window, words, name) in parts)
        {
            // In another part, or on its edge, a name would be taken for that one's.
            Box2[] others = [.. parts.Select(p => p.Window).Where(w => w != window)];
            (string, int)[] ways = [(words, 1), (words, 2), (words, 3), (name, 1), (name, -1), (name, 2)];
            var found = from places in new (bool AtOthers, bool OnLine)[] { (false, false), (false, true), (true, false), (true, true) }
                        from way in ways
                        let place = Place(draft, window, way.Item1, way.Item2, places.OnLine, places.AtOthers ? [] : others)
                        where place is not null
                        select (Box: place.Value, Text: way.Item1);
            foreach (var (box, text) in found.Take(1))
            {
                draft.AddName(box, text, WordsMm);
            }
        }
    }

    /// <summary>How much of the corners of a part words would hide, as a share; half of what lies on pods counts too.</summary>
    /// <param name="near">What is drawn there.</param>
    /// <param name="window">The part.</param>
    /// <param name="scale">Board millimetres for a millimetre of paper.</param>
    public static double Hidden(Nearby near, Box2 window, double scale)
    {
        const int steps = 10;
        var points = Legs(window, scale).SelectMany(leg => Enumerable.Range(0, steps).Select(i => leg.From + leg.Way * ((i + 0.5) / steps)));
        return points.Average(at => near.HasWord(Around(at, RoundMm * scale)) ? 1 : near.IsUntaken(Around(at, 0)) && !near.IsCrossed(Around(at, 0.3 * scale)) ? 0 : 0.5);
    }

    // Not over words.
    private static void Corners(SheetDraft draft, Box2 window)
    {
        const int steps = 40;
        foreach (var (from, way) in Legs(window, draft.Scale))
        {
            for (var step = 0; step < steps; step++)
            {
                var start = step;
                while (step < steps && IsClear(draft, from + way * ((step + 0.5) / steps)))
                {
                    step++;
                }

                if (step > start)
                {
                    draft.AddLine(SheetDraft.Labels, "closer-corner", from + way * ((double)start / steps), from + way * ((double)step / steps));
                }
            }
        }
    }

    private static bool IsClear(SheetDraft draft, Point2 at) => Around(at, RoundMm * draft.Scale) is var round && !draft.HasWord(round) && !draft.HasDot(round);

    // Two from each corner.
    private static IEnumerable<(Point2 From, Point2 Way)> Legs(Box2 window, double scale)
    {
        var corners = SheetDraft.RingOf(window).Points;
        return from i in Enumerable.Range(0, corners.Length)
               from to in new[] { corners[(i + 1) % corners.Length], corners[(i + corners.Length - 1) % corners.Length] }
               select (corners[i], (to - corners[i]) * Math.Min(0.4, LegMm * scale / (to - corners[i]).Length));
    }

    // So many rows off the part's edge, or inside it; rather off ports.
    private static Box2? Place(SheetDraft draft, Box2 window, string words, int rows, bool isOnLine, Box2[] others)
    {
        const int steps = 24;
        var u = draft.Scale;
        var size = draft.TextBox(default, words, WordsMm, true).Grow(0.2 * u);
        double Off(double length) => Math.Sign(rows) * (ApartMm * u + length / 2 + (Math.Abs(rows) - 1) * size.Height);
        var (apart, wide) = (Off(size.Height), Off(size.Width));
        var places = (from i in Enumerable.Range(0, steps + 1)
                      from p in new Point2[]
                      {
                          new(window.MinX + (window.Width - size.Width) * i / steps + size.Width / 2, window.MaxY + apart),
                          new(window.MinX + (window.Width - size.Width) * i / steps + size.Width / 2, window.MinY - apart),
                          new(window.MaxX + wide, window.MaxY - (window.Height - size.Height) * i / steps - size.Height / 2),
                          new(window.MinX - wide, window.MaxY - (window.Height - size.Height) * i / steps - size.Height / 2),
                      }
                      select size.Moved(p)).Where(b => draft.IsFree(b) && !draft.HasWord(b) && (isOnLine || !draft.IsCrossed(b)) && !others.Any(o => o.Touches(b.Grow(ApartMm * u))));
        return places.OrderBy(b => draft.IsOnPort(b) ? 1 : 0).Select(b => (Box2?)b).FirstOrDefault();
    }

    private static Box2 Around(Point2 middle, double half) => new Box2(middle.X, middle.Y, middle.X, middle.Y).Grow(half);
}
