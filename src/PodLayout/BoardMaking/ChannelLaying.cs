using System.Collections.Immutable;
using PodLayout.Geometry;
using PodLayout.Shops;

namespace PodLayout.BoardMaking;

/// <summary>Lays the back channels of a zone in the ways there are, and takes the one that the checks prefer.</summary>
internal static class ChannelLaying
{
    public static ImmutableArray<ZoneChannels> Of(BoardRequest request, ImmutableArray<ZonePart> parts, ImmutableArray<Port> ports) =>
    [
        .. from part in parts
           let own = ports.Where(p => PieceMaking.Inside(part.ChannelArea, p.Centre) >= -1e-9).ToImmutableArray()
           where own.Length > 0
           select Kinds(request.ChannelWish).SelectMany(kind => Laid(request, part, own, kind))
               .MinBy(laid => Rank(request, laid))!,
    ];

    /// <summary>Distance between the sides of two channels that do not meet, the least there is; infinite when all meet.</summary>
    public static double LeastWebMm(ImmutableArray<Run> runs, double widthMm)
    {
        var least = double.PositiveInfinity;
        for (var i = 0; i < runs.Length; i++)
        {
            for (var j = 0; j < i; j++)
            {
                var apart = runs[i].DistanceTo(runs[j]);
                least = apart < 1e-6 ? least : Math.Min(least, apart - widthMm);
            }
        }

        return least;
    }

    // What is wrong weighs most: ports without vacuum, then thin webs, then vacuum lost beyond the limit. Of those that are
    // right, the one with the least to cut; the order of the kinds, then the vacuum lost, decides between equals.
    private static (int Unjoined, bool Thin, bool Loses, double LengthMm, ChannelKind Kind, double LossPa) Rank(BoardRequest request, ZoneChannels laid) => (
        laid.Network.Unjoined.Length,
        LeastWebMm(laid.Runs, request.ChannelWidthMm) < request.Limits.WebMm - 1e-9,
        laid.Network.WorstLossPa > request.Limits.PressureLossPa,
        Math.Round(laid.LengthMm, 3),
        laid.Kind,
        Math.Round(laid.Network.WorstLossPa, 3));

    private static ImmutableArray<ChannelKind> Kinds(ChannelWish wish) => wish switch
    {
        ChannelWish.Rows => [ChannelKind.Rows],
        ChannelWish.Columns => [ChannelKind.Columns],
        ChannelWish.CombOfRows => [ChannelKind.CombOfRows],
        ChannelWish.CombOfColumns => [ChannelKind.CombOfColumns],
        _ => [ChannelKind.Rows, ChannelKind.Columns, ChannelKind.CombOfRows, ChannelKind.CombOfColumns],
    };

    private static IEnumerable<ZoneChannels> Laid(BoardRequest request, ZonePart part, ImmutableArray<Port> ports, ChannelKind kind)
    {
        var turned = kind is ChannelKind.Columns or ChannelKind.CombOfColumns;
        var ground = ChannelGround.Of(request, part, turned);
        ImmutableArray<Point2> places = [.. ports.Select(p => turned ? Turned(p.Centre) : p.Centre)];
        var layings = kind is ChannelKind.Rows or ChannelKind.Columns ? [ground.Rows(places)] : ground.Combs(places);
        foreach (var laying in layings)
        {
            ImmutableArray<Run> runs = turned ? [.. laying.Select(r => new Run(Turned(r.From), Turned(r.To)))] : laying;
            yield return new(part, kind, runs, ports, ChannelNetwork.Of(
                runs, ports, part.Zone.VacuumExtent, request.ChannelWidthMm, request.ChannelDepthMm, request.FlowPerPortLPerMin, request.OpenAtOnce));
        }
    }

    /// <summary>X and Y exchanged: columns are laid as rows of the turned board.</summary>
    public static Point2 Turned(Point2 p) => new(p.Y, p.X);
}
