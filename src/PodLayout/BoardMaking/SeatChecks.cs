using System.Collections.Immutable;
using PodLayout.Findings;
using PodLayout.Shops;

namespace PodLayout.BoardMaking;

/// <summary>Every seat of every pod: ports under it.</summary>
internal static class SeatChecks
{
    public static ImmutableArray<SeatCount> Make(BoardRequest request, GridBoard board, CheckList checks)
    {
        ImmutableArray<SeatCount> counts =
        [
            .. SeatCounting.Poses(request.Shop).Select(p =>
                SeatCounting.Of(p, board, SeatCounting.Standing(p, board), request.PortSpacing)),
        ];
        foreach (var count in counts)
        {
            var what = $"seats of {count.Pod}{(count.Turned ? ", turned" : "")}";
            var ports = count.FewestPorts == count.MostPorts ? Figure.Count(count.MostPorts) : $"{Figure.Count(count.FewestPorts)} to {Figure.Count(count.MostPorts)}";
            var value = $"{Figure.Count(count.Seats)}, each over {ports} port{(ports == "1" ? "" : "s")}; dead: {Figure.Count(count.Dead)} ({Share(count)})";
            if (count.Seats == 0)
            {
                checks.Add(what, "0", "1", Severity.Warning, "pod-without-seat", "$.board.usableArea",
                    $"{count.Pod}{(count.Turned ? ", turned" : "")} can stand nowhere on the board.", "Make the usable area larger, or take the pod out of this shop.");
            }
            else if (count.CoversLattice && count.Dead > 0)
            {
                checks.Add(what, value, "0 dead", Severity.Warning, "seat-without-port", "$.board.ports",
                    $"{Figure.Count(count.Dead)} of {Figure.Count(count.Seats)} seats of {count.Pod} ({Share(count)}) have no port inside the lower seal, although the pod is as wide as the port spacing.",
                    "Add the ports that are missing, move the lattice to the middle of the lands, or keep those seats out of the usable area.");
            }
            else
            {
                checks.Tell(what, value, count.CoversLattice ? "0 dead" : "");
            }
        }

        return counts;
    }

    private static string Share(SeatCount count) => Figure.Tenth(100.0 * count.Dead / count.Seats) + " %";
}
