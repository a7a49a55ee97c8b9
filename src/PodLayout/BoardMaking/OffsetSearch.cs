using System.Collections.Immutable;
using PodLayout.Geometry;
using PodLayout.Seats;
using PodLayout.Shops;

namespace PodLayout.BoardMaking;

/// <summary>Finds where the port lattice leaves the fewest seats without a port.</summary>
/// <param name="First">The port the lattice is counted from.</param>
/// <param name="DeadWide">Dead seats of pods as wide as the spacing, which need have none.</param>
/// <param name="Dead">Dead seats of all pods.</param>
internal sealed record OffsetSearch(Point2 First, int DeadWide, int Dead)
{
    /// <summary>
    /// The best offset. All of them differ from the given one by whole pitches, so that ports keep their place in the land;
    /// past the spacing they repeat. Ports that cannot be bored count as not there.
    /// </summary>
    public static ImmutableArray<OffsetSearch> All(BoardRequest request, ImmutableArray<ZonePart> parts, GridBoard board)
    {
        if (request.PortSpacing is not { } spacing)
        {
            return [];
        }

        ImmutableArray<(PodPose Pose, bool[,] Standing)> poses =
            [.. SeatCounting.Poses(request.Shop).Select(p => (p, SeatCounting.Standing(p, board)))];
        int columns = Offsets(spacing.X, board.PitchMm), rows = Offsets(spacing.Y, board.PitchMm);
        return
        [
            .. from j in Enumerable.Range(0, rows)
               from i in Enumerable.Range(0, columns)
               let first = request.PortFirst + new Point2(i * board.PitchMm, j * board.PitchMm)
               select Judge(request, parts, board, spacing, first, poses),
        ];
    }

    private static OffsetSearch Judge(
        BoardRequest request, ImmutableArray<ZonePart> parts, GridBoard board, Point2 spacing, Point2 first,
        ImmutableArray<(PodPose Pose, bool[,] Standing)> poses)
    {
        ImmutableArray<Port> ports =
        [
            .. PortPlaces.OnLattice(board, spacing, first)
                .Where(at => PortPlaces.Trouble(request, parts, at) is null)
                .Select(at => new Port("", at, PortState.Working)),
        ];
        var with = board with { Ports = ports };
        var counts = poses.Select(p => SeatCounting.Of(p.Pose, with, p.Standing, spacing)).ToList();
        return new(first, counts.Where(c => c.CoversLattice).Sum(c => c.Dead), counts.Sum(c => c.Dead));
    }

    // More offsets than this one way are a slip of the spacing; the search would only cost time.
    private static int Offsets(double spacingMm, double pitchMm) => Math.Clamp((int)Math.Ceiling(spacingMm / pitchMm - 1e-6), 1, 40);
}
