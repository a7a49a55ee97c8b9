using PodLayout.Geometry;
using PodLayout.Shops;

namespace PodLayout.Handover.Picture;

/// <summary>The small signs of the picture, the same in the drawing and in the legend.</summary>
internal static class Symbols
{
    /// <summary>Radius of a port's sign: true to scale, but never too small to see.</summary>
    public static double PortRadius(SheetDraft draft, double diameterMm) => Math.Max(diameterMm / 2, draft.LeastPortMm * draft.Scale);

    /// <summary>A plugged port, a dead one (crossed), or one that cannot be plugged (in a square).</summary>
    public static void Port(SheetDraft draft, string layer, Point2 at, double radius, PortState state)
    {
        switch (state)
        {
            case PortState.Dead:
                draft.Add(layer, new Primitive.Disc("port-dead", at, radius));
                Cross(draft, layer, "port-dead", at, radius * 0.72);
                break;
            case PortState.StuckOpen:
                draft.AddBox(layer, "port-dead", new(at.X - radius, at.Y - radius, at.X + radius, at.Y + radius));
                draft.Add(layer, new Primitive.Disc("port-open", at, radius * 0.5));
                break;
            default:
                draft.Add(layer, new Primitive.Disc("port-plugged", at, radius * 0.7));
                break;
        }
    }

    /// <summary>A port to open: a filled disc in a ring.</summary>
    public static void OpenPort(SheetDraft draft, string layer, Point2 at, double radius)
    {
        draft.Add(layer, new Primitive.Disc("port-open-ring", at, radius * 1.25));
        draft.Add(layer, new Primitive.Disc("port-open", at, radius * 0.75));
    }

    /// <summary>A port that is open now and is to be plugged: a bar across its ring.</summary>
    public static void PortToPlug(SheetDraft draft, string layer, Point2 at, double radius)
    {
        draft.Add(layer, new Primitive.Disc("port-open-ring", at, radius * 1.25));
        draft.AddLine(layer, "port-to-plug", at - new Point2(radius * 1.25, 0), at + new Point2(radius * 1.25, 0));
    }

    /// <summary>The zero of the program: a filled triangle that stands with its point on the place. Pins and ports are round.</summary>
    public static void Zero(SheetDraft draft, string layer, Point2 at)
    {
        var u = draft.Scale;
        draft.Add(layer, new Primitive.Area("zero", [new([at, at + new Point2(1.5 * u, 2.9 * u), at + new Point2(-1.5 * u, 2.9 * u)])]));
    }

    /// <summary>What that sign covers.</summary>
    public static Box2 ZeroBox(SheetDraft draft, Point2 at) =>
        new(at.X - 1.6 * draft.Scale, at.Y - 0.1 * draft.Scale, at.X + 1.6 * draft.Scale, at.Y + 3 * draft.Scale);

    public static void Cross(SheetDraft draft, string layer, string style, Point2 at, double half) => draft.Add(
        layer, new Primitive.Strokes(
            style,
            [at + new Point2(-half, -half), at + new Point2(half, half), at + new Point2(-half, half), at + new Point2(half, -half)]));

    /// <summary>A line with a head at its end, or at both.</summary>
    public static void Arrow(SheetDraft draft, string layer, string line, string head, Point2 from, Point2 to, bool both)
    {
        draft.AddLine(layer, line, from, to);
        Head(draft, layer, head, from, to);
        if (both)
        {
            Head(draft, layer, head, to, from);
        }
    }

    /// <summary>The sign of a turned pod: a filled corner.</summary>
    /// <param name="draft">The sheet.</param>
    /// <param name="layer">The layer.</param>
    /// <param name="corner">The corner.</param>
    /// <param name="inwards">From there to the corner opposite, of the square that the sign fills half of.</param>
    public static void Turned(SheetDraft draft, string layer, Point2 corner, Point2 inwards) => draft.Add(
        layer, new Primitive.Area(
            "pod-turned", [new([corner, corner + new Point2(0, inwards.Y), corner + new Point2(inwards.X, 0)])]));

    /// <summary>Size of the type in a flag, mm of paper.</summary>
    public const double FlagTypeMm = 2.8;

    /// <summary>A number in a circle, or a closer one; its capitals are 2 mm high in both, or a share of that.</summary>
    public static void Flag(SheetDraft draft, string layer, Point2 at, string number, bool isClose = false, double share = 1)
    {
        draft.Add(layer, new Primitive.Disc("stretch-flag", at, FlagMm(number, isClose) * share * draft.Scale));
        draft.AddText(layer, "stretch-number", at, number, FlagTypeMm * share, TextAnchor.Middle);
    }

    /// <summary>Radius of that circle, mm of paper.</summary>
    public static double FlagMm(string number, bool isClose) => (number.Length > 2 ? 3 : 2.4) - (isClose ? 0.3 : 0);

    private static void Head(SheetDraft draft, string layer, string style, Point2 from, Point2 to)
    {
        // Of a short arrow smaller heads, so that a shaft is seen between two of them.
        var length = (to - from).Length;
        var along = (to - from) * (1 / length);
        var across = new Point2(-along.Y, along.X);
        var head = Math.Min(2.2 * draft.Scale, 0.34 * length);
        var back = to - along * head;
        draft.Add(layer, new Primitive.Area(
            style, [new([to, back + across * (0.36 * head), back - across * (0.36 * head)])]));
    }
}
