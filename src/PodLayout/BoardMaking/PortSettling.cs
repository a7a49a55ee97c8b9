using System.Collections.Immutable;
using PodLayout.Findings;
using PodLayout.Geometry;
using PodLayout.Shops;
using PodLayout.Shops.Written;

namespace PodLayout.BoardMaking;

/// <summary>Settles where the ports are: as given, or at the offset that serves most seats.</summary>
internal static class PortSettling
{
    private const string LatticePath = "$.board.ports.lattice.firstMm";

    /// <summary>The text of <c>board.json</c> and the board read from it, so that the two cannot differ; null after a refusal.</summary>
    public static (string Text, GridBoard Board)? Settle(BoardRequest request, ImmutableArray<ZonePart> parts, CheckList checks, List<Finding> read)
    {
        var asGiven = Read(BoardFile.Text(request, null, []), request, read);
        if (asGiven is not { } given)
        {
            return null;
        }

        if (request.Offset == PortOffset.AsGiven)
        {
            // No pod reaches a port beside the usable area: where one cannot be bored there, nothing is lost.
            ImmutableArray<Point2> beside =
            [
                .. given.Board.Ports.Where(p => !given.Board.UsableArea.Contains(p.Centre) && PortPlaces.Trouble(request, parts, p.Centre) is not null)
                    .Select(p => p.Centre),
            ];
            if (beside.IsEmpty || beside.Length == given.Board.Ports.Length || request.PortSpacing is null)
            {
                Bored(request, parts, given.Board, checks);
                return given;
            }

            checks.Tell("ports beside the usable area left out", Figure.Count(beside.Length));
            var settled = Read(BoardFile.Text(request, null, beside), request, read);
            if (settled is { } without)
            {
                Bored(request, parts, without.Board, checks);
            }

            return settled;
        }

        if (request.PortSpacing is not { } spacing || Marked(request))
        {
            checks.Refuse("port offset", "search", "a lattice without marks", "offset-without-lattice", "$.making.portBore.offset",
                "a search for the offset needs a lattice of ports without a list, missing, dead or stuckOpen beside it.",
                "Write \"asGiven\", or leave only the lattice in $.board.ports.");
            return null;
        }

        // The least change from what was given, among the best.
        var all = OffsetSearch.All(request, parts, given.Board);
        var best = all.MinBy(o => (o.DeadWide, o.Dead, (o.First - request.PortFirst).Length))!;
        var places = PortPlaces.OnLattice(given.Board, spacing, best.First).ToList();
        ImmutableArray<Point2> missing = [.. places.Where(at => PortPlaces.Trouble(request, parts, at) is not null)];
        if (missing.Length == places.Count)
        {
            checks.Refuse("ports", "0", "1", "ports-none", LatticePath,
                "at no offset of the lattice can a port be bored: all lie outside the zones' areas of channels, or on pins.",
                "Make the zones larger, the gasket's inset smaller, or the channels narrower.");
            return null;
        }

        checks.Tell("port lattice counted from", Figure.At(best.First), $"best of {Figure.Count(all.Length)} offsets");
        if (!missing.IsEmpty)
        {
            checks.Tell("ports of the lattice left out near edges and pins", Figure.Count(missing.Length));
        }

        return Read(BoardFile.Text(request, best.First, missing), request, read);
    }

    private static bool Marked(BoardRequest request)
    {
        var ports = request.Document["board"]!["ports"]!.AsObject();
        return ports["list"] is not null || ports["missing"] is not null || ports["dead"] is not null || ports["stuckOpen"] is not null;
    }

    private static (string Text, GridBoard Board)? Read(string text, BoardRequest request, List<Finding> read)
    {
        var shop = ShopReading.Read(request.File, BoardFile.Bytes(text));
        read.AddRange(shop.Findings);
        return shop.Succeeded ? (text, shop.Value.Board) : null;
    }

    /// <summary>Every port as given can be bored; and whether another offset would serve more seats.</summary>
    private static void Bored(BoardRequest request, ImmutableArray<ZonePart> parts, GridBoard board, CheckList checks)
    {
        var troubles = board.Ports
            .Select(p => (Port: p, Trouble: PortPlaces.Trouble(request, parts, p.Centre)))
            .Where(t => t.Trouble is not null).ToList();
        if (troubles.Count > 0)
        {
            var (port, trouble) = troubles[0];
            var others = troubles.Count == 1 ? "" : $" ({Figure.Count(troubles.Count - 1)} more: {string.Join(", ", troubles.Skip(1).Take(8).Select(t => t.Port.Name))}{(troubles.Count > 9 ? ", ..." : "")})";
            checks.Refuse("ports that can be bored", Figure.Count(board.Ports.Length - troubles.Count), Figure.Count(board.Ports.Length),
                trouble!.Value.Code, "$.board.ports",
                $"port {port.Name} at {Figure.At(port.Centre)}: {trouble.Value.What}; it misses by {Figure.Mm(trouble.Value.MissingMm)} mm{others}.",
                "Add such ports to $.board.ports.missing, move the lattice, or set $.making.portBore.offset to \"search\".");
        }

        var all = OffsetSearch.All(request, parts, board);
        if (all.Length == 0)
        {
            return;
        }

        var (first, best) = (all[0], all.MinBy(o => (o.DeadWide, o.Dead, (o.First - request.PortFirst).Length))!);
        checks.Tell("dead seats of all pods, lattice as given", Figure.Count(first.Dead), $"best of {Figure.Count(all.Length)} offsets: {Figure.Count(best.Dead)}");
        if (troubles.Count == 0 && !Marked(request) && (best.DeadWide, best.Dead).CompareTo((first.DeadWide, first.Dead)) < 0)
        {
            checks.Add("port offset", Figure.Count(first.Dead), Figure.Count(best.Dead), Severity.Note, "port-offset", LatticePath,
                $"the lattice as given leaves {Figure.Count(first.Dead)} seats without a port; counted from {Figure.At(best.First)} it would leave {Figure.Count(best.Dead)}.",
                "Move the lattice there, or set $.making.portBore.offset to \"search\".");
        }
    }
}
