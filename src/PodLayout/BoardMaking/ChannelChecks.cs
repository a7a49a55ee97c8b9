using System.Collections.Immutable;
using PodLayout.Air;

namespace PodLayout.BoardMaking;

/// <summary>The channels: every port joined, webs, and the vacuum they lose.</summary>
internal static class ChannelChecks
{
    public static void Make(BoardRequest request, ImmutableArray<ZonePart> parts, ImmutableArray<ZoneChannels> channels, CheckList checks)
    {
        foreach (var laid in channels)
        {
            Joined(laid, checks);
            var web = ChannelLaying.LeastWebMm(laid.Runs, request.ChannelWidthMm);
            if (!double.IsPositiveInfinity(web))
            {
                checks.Least(
                    $"{laid.Part.Zone.Name}: web between channels", web, request.Limits.WebMm, null, "web-thin", "$.making.channels.widthMm",
                    $"Make the channels at most {Figure.Mm(Math.Max(0, web + request.ChannelWidthMm - request.Limits.WebMm))} mm wide, or set the ports farther apart.");
            }

            OffPins(request, laid, checks);
            Inside(request, laid, checks);
            Loss(request, laid, checks);
        }

        foreach (var part in parts.Where(p => !channels.Any(c => c.Part == p)))
        {
            checks.Refuse($"{part.Zone.Name}: ports", "0", "1", "zone-without-ports", "$.board.ports",
                $"no port lies over {part.Zone.Name}, inside {Figure.Box(part.ChannelArea)}.", "Add ports there, or take the zone out.");
        }
    }

    private static void Joined(ZoneChannels laid, CheckList checks)
    {
        var what = $"{laid.Part.Zone.Name}: ports joined to the table's vacuum ({InWords(laid.Kind)})";
        var value = $"{Figure.Count(laid.Network.Joined.Length)} of {Figure.Count(laid.Ports.Length)}";
        if (laid.Network.Unjoined.IsEmpty)
        {
            checks.Tell(what, value, "all");
            return;
        }

        var first = laid.Network.Unjoined[0];
        checks.Refuse(what, value, "all", "port-not-joined", "$.making.channels.layout",
            $"{Figure.Count(laid.Network.Unjoined.Length)} of {Figure.Count(laid.Ports.Length)} ports of {laid.Part.Zone.Name} cannot be joined to the table's vacuum at {Figure.Box(laid.Part.Zone.VacuumExtent)} by {InWords(laid.Kind)}; the first is {first.Name} at {Figure.At(first.Centre)}.",
            "Set the layout to \"best\", move the pin that is in the way, or give the extent of the table's grooves as it is.");
    }

    private static void OffPins(BoardRequest request, ZoneChannels laid, CheckList checks)
    {
        if (request.Pins.IsEmpty)
        {
            return;
        }

        var (web, pin) = request.Pins
            .Select(p => (Web: laid.Runs.Min(r => r.DistanceTo(p.At)) - p.HoleDiameterMm / 2 - request.ChannelWidthMm / 2, Pin: p))
            .MinBy(w => w.Web);
        checks.Least(
            $"{laid.Part.Zone.Name}: web between a channel and a pin hole", web, request.Limits.WebMm, $"at {pin.Name}", "channel-through-pin",
            "$.making.table.pins", "Move the pin or the ports near it, or make the channels narrower.");
    }

    private static void Inside(BoardRequest request, ZoneChannels laid, CheckList checks)
    {
        var seal = laid.Part.GasketLine is { } line ? line.Grow(-request.Gasket!.WidthMm / 2) : laid.Part.Area;
        var half = request.ChannelWidthMm / 2;
        var left = laid.Runs.Min(r => Math.Min(PieceMaking.Inside(seal, r.From), PieceMaking.Inside(seal, r.To))) - half;
        checks.Least(
            $"{laid.Part.Zone.Name}: from a channel to the {(laid.Part.GasketLine is null ? "edge of the zone" : "gasket groove")}", left,
            laid.Part.GasketLine is null ? request.Limits.EdgeMm : request.Limits.WebMm, null, "channel-outside-zone", "$.board.ports",
            "Keep the ports farther from the edge, or make the channels narrower.");
    }

    private static void Loss(BoardRequest request, ZoneChannels laid, CheckList checks)
    {
        var (network, zone) = (laid.Network, laid.Part.Zone.Name);
        var most = Math.Min(request.OpenAtOnce, laid.Ports.Length);
        var assumed = $"{Figure.Tenth(request.FlowPerPortLPerMin)} L/min at each of {Figure.Count(most)} open ports";
        var value = $"{Figure.Tenth(network.WorstLossPa)} Pa{(network.WorstPort is { } p ? $" at port {p.Name}" : "")}, {assumed}";
        var limit = $"at most {Figure.Tenth(request.Limits.PressureLossPa)} Pa";
        if (network.WorstLossPa > request.Limits.PressureLossPa)
        {
            checks.Refuse($"{zone}: vacuum lost in the channels", value, limit, "channel-too-narrow", "$.making.channels",
                $"{zone}: the channels lose {value}; expected {limit}.",
                $"{Wider(request, laid)}; a layout with a header may lose less.");
        }
        else
        {
            checks.Tell($"{zone}: vacuum lost in the channels", value, limit);
        }

        var reynolds = DuctFlow.Reynolds(request.ChannelWidthMm, request.ChannelDepthMm, network.MostFlowLPerMin);
        var (what, number) = ($"{zone}: Reynolds number of the strongest flow", Figure.Tenth(reynolds));
        if (reynolds > DuctFlow.LaminarUpTo)
        {
            checks.Add(what, number, $"at most {Figure.Tenth(DuctFlow.LaminarUpTo)}", Findings.Severity.Warning, "channel-flow-turbulent", "$.making.channels",
                $"{zone}: {Figure.Tenth(network.MostFlowLPerMin)} L/min in one channel is Reynolds number {number}; above {Figure.Tenth(DuctFlow.LaminarUpTo)} the formula for slow flow gives too small a loss.",
                "Make the channels wider or deeper, or lay a comb, so that less air goes through one of them.");
        }
        else
        {
            checks.Tell(what, number, $"at most {Figure.Tenth(DuctFlow.LaminarUpTo)} for the formula");
        }
    }

    // The loss falls as the channel grows: by halving, to a tenth of a millimetre, upwards.
    private static string Wider(BoardRequest request, ZoneChannels laid)
    {
        double low = request.ChannelDepthMm, high = request.Stock.ThicknessMm - request.Shop.Board.GrooveDepthMm - request.Limits.FloorMm;
        if (!(high > low) || At(request.ChannelWidthMm, high) > request.Limits.PressureLossPa)
        {
            double width = request.ChannelWidthMm, most = 200;
            return Halved(width, most, w => At(w, request.ChannelDepthMm)) is { } wide
                ? $"Make the channels at least {Figure.Tenth(wide)} mm wide (as far as the webs allow)"
                : "Make the channels much wider and deeper, or let fewer ports be open";
        }

        return $"Make the channels at least {Figure.Tenth(Halved(low, high, d => At(request.ChannelWidthMm, d))!.Value)} mm deep";

        double At(double width, double depth) => ChannelNetwork.Of(
            laid.Runs, laid.Ports, laid.Part.Zone.VacuumExtent, width, depth, request.FlowPerPortLPerMin, request.OpenAtOnce).WorstLossPa;

        double? Halved(double from, double to, Func<double, double> loss)
        {
            if (loss(to) > request.Limits.PressureLossPa)
            {
                return null;
            }

            while (to - from > 0.05)
            {
                var middle = (from + to) / 2;
                (from, to) = loss(middle) > request.Limits.PressureLossPa ? (middle, to) : (from, middle);
            }

            return Math.Ceiling(to * 10) / 10;
        }
    }

    /// <summary>How channels are laid, in words.</summary>
    public static string InWords(ChannelKind kind) => kind switch
    {
        ChannelKind.Rows => "rows",
        ChannelKind.Columns => "columns",
        ChannelKind.CombOfRows => "a comb of rows with a header",
        ChannelKind.CombOfColumns => "a comb of columns with a header",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Unknown kind."),
    };
}
