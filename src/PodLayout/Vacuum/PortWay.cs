using PodLayout.Geometry;
using PodLayout.Shops;

namespace PodLayout.Vacuum;

/// <summary>The way from a port to the pump: which channel it draws on, and how far it is.</summary>
/// <param name="Zone">Index of the table's zone; -1 where none is known.</param>
/// <param name="Line">Where the channel lies across its run, mm; 0 for a comb, which all ports of a zone share.</param>
/// <param name="Side">On which side of the place where it draws: -1 or 1, or 0 for a comb.</param>
/// <param name="LengthMm">Length of the way in the channel, mm.</param>
internal readonly record struct PortWay(int Zone, double Line, int Side, double LengthMm)
{
    // A port over the table's own vacuum has hardly any channel; no channel at all would divide by zero.
    private const double ShortestMm = 1;

    /// <summary>The way of a port.</summary>
    public static PortWay Of(Shop shop, Port port)
    {
        var (channels, at) = (shop.Vacuum.Channels, port.Centre);
        var zone = -1;
        for (var i = 0; i < channels.Zones.Length && zone < 0; i++)
        {
            zone = channels.Zones[i].Area.Contains(at) ? i : -1;
        }

        var middle = zone >= 0 ? channels.Zones[zone].VacuumExtent.Centre : new Point2(shop.Board.WidthMm / 2, shop.Board.LengthMm / 2);
        double alongX = Math.Abs(at.X - middle.X), alongY = Math.Abs(at.Y - middle.Y);
        var (line, side, length) = channels.Wish switch
        {
            ChannelWish.Columns => (at.X, at.Y < middle.Y ? -1 : 1, alongY),
            ChannelWish.CombOfRows or ChannelWish.CombOfColumns => (0, 0, alongX + alongY),
            _ => (at.Y, at.X < middle.X ? -1 : 1, alongX),
        };
        return new(zone, line, side, Math.Max(ShortestMm, channels.LengthMm ?? length));
    }

    /// <summary>Whether two ports draw on one channel.</summary>
    public bool Shares(PortWay other) => Zone == other.Zone && Side == other.Side && Math.Abs(Line - other.Line) <= Tolerances.ContactMm;
}
