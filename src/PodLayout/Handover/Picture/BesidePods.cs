using PodLayout.Geometry;
using PodLayout.Layouts;
using PodLayout.Shops;

namespace PodLayout.Handover.Picture;

/// <summary>Places for words off the pods that they belong to: near them, off everything else, with a line to what they name.</summary>
/// <param name="draft">The sheet.</param>
/// <param name="board">The board.</param>
/// <param name="layout">The layout.</param>
/// <param name="sizes">How far from its pod a word may stand, and how close.</param>
internal sealed class BesidePods(SheetDraft draft, GridBoard board, Layout layout, LetterSizes sizes)
{
    // How far from its pod a word is looked for, mm of paper; at the first it stands against its pod.
    private static readonly double[] Apart = [0.4, 1.8, 3, 4.5, 6.5, 9, 12, 16, 21, 27, 34];

    /// <summary>How much longer the line to words is for each step that they are larger, mm of paper.</summary>
    public const double WorthMm = 2.5;

    private const int Steps = 40;

    // A word on a port that stays plugged hides it, and a line over one is not clear: this is worth so many mm of line.
    private const double OverPort = 5;

    private const double ClearMm = 0.35;

    // A number as near to another pod as to its own, or hardly nearer to its own, is taken for the other's; a port's name rather stands
    // nowhere than there.
    private const double NearerMm = 0.4;
    private const double AtOther = 15;

    // So near to another pod, and nearer to it than to its own, a number would be read as the other's whatever line it has.
    private const double AgainstOtherMm = 1.2;

    // So much clearer is a number that is farther from another pod than from its own by a millimetre.
    private const double ClearlyMm = 1;
    private const double Unclear = 2;

    // Of two places that are as good the one above: numbers of many pods then stand on one side of them.
    private const double Below = 0.3;

    // So far from its corners a line ends on the edge of a pod, as a share of that side.
    private const double OffCorner = 0.25;

    // So far off other pods a line runs, mm of paper: along their edges it would be lost.
    private const double OffOthersMm = 0.3;

    // Words one above the other that are no farther apart than this are read as one pod's, mm of paper.
    private const double TwinsMm = 1;

    // Of places that are as near, the one whose middle is nearer to what it names.
    private const double OffMiddle = 0.1;

    /// <summary>How near to pods that are not theirs words may stand.</summary>
    public enum Closeness
    {
        /// <summary>As near as there is room, with a line to their own.</summary>
        Any,

        /// <summary>Nearer to their own, or off the others, with a line.</summary>
        OffOthers,

        /// <summary>Nearer to their own.</summary>
        AtOwn,
    }

    /// <summary>A place for words of a size.</summary>
    /// <param name="Box">The place.</param>
    /// <param name="Leader">The line to what they name; null where they stand against it.</param>
    /// <param name="Cost">How long the line is, mm of paper, and what it costs to stand on a port.</param>
    public sealed record Place(Box2 Box, (Point2 From, Point2 To)? Leader, double Cost);

    /// <summary>The best place of the sizes that words may have: smaller ones for the sake of a much shorter line only.</summary>
    /// <param name="pod">The pod.</param>
    /// <param name="port">The port; null for the pod itself.</param>
    /// <param name="sizes">The words' boxes about zero, the most welcome first.</param>
    /// <param name="worthMm">How much longer the line may be for each step that the words are larger, mm of paper.</param>
    /// <param name="closeness">How near to other pods they may stand.</param>
    public (int Index, Place Place)? Best(PlacedPod pod, Port? port, IReadOnlyList<Box2> sizes, double worthMm = WorthMm, Closeness closeness = Closeness.Any)
    {
        (int Index, Place Place)? best = null;
        var near = draft.Near(Reach(Around(pod, port), sizes.Max(s => Math.Max(s.Width, s.Height)), anywhere: false));
        for (var i = 0; i < sizes.Count; i++)
        {
            if (Find(pod, port, sizes[i], near, anywhere: false, closeness) is { } place && !(best is var (index, other) && other.Cost <= place.Cost + worthMm * (i - index)))
            {
                best = (i, place);
            }
        }

        return best;
    }

    /// <summary>The best place for the words of a pod, or of one of its ports; null where there is none.</summary>
    /// <param name="pod">The pod.</param>
    /// <param name="port">The port; null for the pod itself.</param>
    /// <param name="size">The words' box about zero.</param>
    /// <param name="anywhere">Whether they may stand far off, with a line that runs over the signs of ports.</param>
    /// <param name="closeness">How near to other pods they may stand.</param>
    public Place? Find(PlacedPod pod, Port? port, Box2 size, bool anywhere = false, Closeness closeness = Closeness.Any) =>
        Find(pod, port, size, draft.Near(Reach(Around(pod, port), Math.Max(size.Width, size.Height), anywhere)), anywhere, closeness);

    // A port that its pod has left behind is named where it is.
    private static Box2 Around(PlacedPod pod, Port? port) => port is null || pod.BodyBox.Contains(port.Centre)
        ? pod.BodyBox : new(port.Centre.X, port.Centre.Y, port.Centre.X, port.Centre.Y);

    private Box2 Reach(Box2 body, double widestMm, bool anywhere) =>
        body.Grow((Math.Min(Apart[^1], anywhere ? Apart[^1] : sizes.FarthestMm) + 1) * draft.Scale + widestMm);

    private Place? Find(PlacedPod pod, Port? port, Box2 size, Nearby near, bool anywhere, Closeness closeness)
    {
        var u = draft.Scale;
        var body = Around(pod, port);

        // Small words stand closer.
        var close = Math.Min(1, size.Height / u / 2.2);
        double clear = close * ClearMm * u, against = close * Apart[0];
        var reach = body.Grow((Apart[^1] + 1) * u + Math.Max(size.Width, size.Height));
        var others = layout.Pods.Where(p => p != pod || body != pod.BodyBox).Select(p => p.BodyBox).Where(b => b.Touches(reach)).ToList();
        (double Cost, Place Place)? best = null;
        foreach (var apart in Apart.TakeWhile(a => (anywhere || a <= sizes.FarthestMm) && (best is not var (cost, _) || a < cost)))
        {
            foreach (var box in Ring(body.Grow((apart == Apart[0] ? against : apart) * u), size))
            {
                // What costs more than the best already is looked at no further.
                var leader = Leader(pod, port, box);
                var off = (box.Centre - (port?.Centre ?? pod.Centre)).Length;
                var cost = ((leader.To - leader.From).Length + OffMiddle * off) / u;
                if (best is var (shortest, _) && cost >= shortest || !near.IsFree(box.Grow(clear)))
                {
                    continue;
                }

                var nearest = Nearest(others, box);
                var farther = nearest - Between(body, box);
                var isAtOther = farther <= close * NearerMm * u;
                if (isAtOther && (port is not null || closeness == Closeness.AtOwn || (closeness == Closeness.OffOthers && nearest < AgainstOtherMm * u)))
                {
                    continue;
                }

                cost += (near.IsOnPort(box) ? OverPort : 0) + (isAtOther ? AtOther : 0);
                if (sizes.IsTight && port is null)
                {
                    cost += Unclear * Math.Max(0, 1 - farther / (ClearlyMm * u)) + (box.Centre.Y < body.MinY ? Below : 0)
                        + (near.HasWord(Higher(box)) ? Unclear : 0);
                }

                if (best is var (least, _) && cost >= least || near.IsCrossed(box.Grow(clear)))
                {
                    continue;
                }

                // Along a side of its pod, and no nearer to another, the number needs no line.
                if (apart == Apart[0] && port is null)
                {
                    best = IsAlong(body, box.Centre) && !others.Exists(o => o.Touches(box.Grow(1.6 * against * u))) ? (cost, new(box, null, cost)) : best;
                }
                else if (IsClear(leader.From, leader.To, others, near, anywhere) && !near.HasWord(box))
                {
                    best = (cost, new(box, leader, cost));
                }
            }
        }

        return best?.Place;
    }

    /// <summary>Whether words here stand so close above or below others that both are read as one pod's.</summary>
    public bool IsAtWords(Box2 box) => draft.HasWord(Higher(box));

    private Box2 Higher(Box2 box) => new(box.MinX, box.MinY - TwinsMm * draft.Scale, box.MaxX, box.MaxY + TwinsMm * draft.Scale);

    /// <summary>Draws the line and the ground of words, and takes their place.</summary>
    public void Take(Place place)
    {
        if (place.Leader is var (from, to))
        {
            draft.AddLeader(from, to);
        }

        draft.AddBox(SheetDraft.Labels, "knockout", place.Box);
        draft.Take(place.Box);
        draft.AddWord(place.Box);
    }

    // Boxes of a size whose edges lie on those of a box, all round.
    private static IEnumerable<Box2> Ring(Box2 box, Box2 size)
    {
        var around = new Box2(box.MinX - size.Width / 2, box.MinY - size.Height / 2, box.MaxX + size.Width / 2, box.MaxY + size.Height / 2);
        var length = 2 * (around.Width + around.Height);
        for (var i = 0; i < Steps; i++)
        {
            var at = length * i / Steps;
            var middle = at < around.Width ? new Point2(around.MinX + at, around.MinY)
                : (at -= around.Width) < around.Height ? new(around.MaxX, around.MinY + at)
                : (at -= around.Height) < around.Width ? new(around.MaxX - at, around.MaxY)
                : new(around.MinX, around.MaxY - (at - around.Width));
            yield return size.Moved(middle);
        }
    }

    private static bool IsAlong(Box2 body, Point2 p) => (p.X > body.MinX && p.X < body.MaxX) || (p.Y > body.MinY && p.Y < body.MaxY);

    private (Point2 From, Point2 To) Leader(PlacedPod pod, Port? port, Box2 box)
    {
        var middle = port?.Centre ?? Nearest(pod.BodyBox, box.Centre);
        var to = Nearest(box, middle);
        if (port is null)
        {
            return (OnEdge(pod, to), to);
        }

        var ring = 1.25 * Symbols.PortRadius(draft, board.PortDiameterMm);
        var way = to - middle;
        return way.Length <= ring ? (middle, to) : (middle + way * (ring / way.Length), to);
    }

    // Where a line from a place ends on a pod's edge: off its corners, which another pod may share.
    private static Point2 OnEdge(PlacedPod pod, Point2 from)
    {
        if (pod.Type.Footprint is PodFootprint.Round round)
        {
            var way = from - pod.Centre;
            return pod.Centre + way * Math.Min(1, round.DiameterMm / 2 / way.Length);
        }

        var body = pod.BodyBox;
        double x = OffCorner * body.Width, y = OffCorner * body.Height;
        var ends = new List<Point2>();
        if (from.X < body.MinX || from.X > body.MaxX)
        {
            ends.Add(new(Math.Clamp(from.X, body.MinX, body.MaxX), Math.Clamp(from.Y, body.MinY + y, body.MaxY - y)));
        }

        if (from.Y < body.MinY || from.Y > body.MaxY)
        {
            ends.Add(new(Math.Clamp(from.X, body.MinX + x, body.MaxX - x), Math.Clamp(from.Y, body.MinY, body.MaxY)));
        }

        return ends.Count == 0 ? Nearest(body, from) : ends.MinBy(e => Math.Round((from - e).Length, 6));
    }

    private bool IsClear(Point2 from, Point2 to, List<Box2> others, Nearby near, bool overPorts) =>
        !near.HasWord(from, to) && !draft.IsAtDot(from, to) && !near.CrossesLeader(from, to) && !others.Exists(o => EdgePath.Touches(o.Grow(OffOthersMm * draft.Scale), from, to))
        && (overPorts || !near.IsOnPort(from, to));

    private static double Nearest(List<Box2> others, Box2 box)
    {
        var nearest = double.PositiveInfinity;
        foreach (var other in others)
        {
            nearest = Math.Min(nearest, Between(other, box));
        }

        return nearest;
    }

    private static double Between(Box2 a, Box2 b) => new Point2(
        Math.Max(0, Math.Max(a.MinX - b.MaxX, b.MinX - a.MaxX)), Math.Max(0, Math.Max(a.MinY - b.MaxY, b.MinY - a.MaxY))).Length;

    private static Point2 Nearest(Box2 box, Point2 p) =>
        new(Math.Clamp(p.X, box.MinX, box.MaxX), Math.Clamp(p.Y, box.MinY, box.MaxY));
}
