using System.Collections.Immutable;
using PodLayout.Geometry;
using PodLayout.Seats;
using PodLayout.Shops;

namespace PodLayout.BoardMaking;

/// <summary>Every seat of every pod type, and the ports under it.</summary>
internal static class SeatCounting
{
    // Sums of pitches carry rounding.
    private const double RoundingMm = 1e-6;

    public static ImmutableArray<PodPose> Poses(Shop shop) =>
        [.. shop.Pods.Select(p => p.HeightMm).Distinct().SelectMany(h => PodPose.Of(shop, h)).OrderBy(p => p.TypeIndex)];

    /// <summary>Which seats there are, whatever the ports: column, then row.</summary>
    public static bool[,] Standing(PodPose pose, GridBoard board)
    {
        var columns = Count(board.WidthMm - board.FirstGroove.X, board.PitchMm);
        var rows = Count(board.LengthMm - board.FirstGroove.Y, board.PitchMm);
        var standing = new bool[columns, rows];
        for (var c = 0; c < columns; c++)
        {
            for (var r = 0; r < rows; r++)
            {
                var body = pose.BodyOn(board, c, r);
                standing[c, r] = board.UsableArea.Grow(RoundingMm).Contains(body)
                    && board.Obstacles.All(o => Clearance.ToObstacle(pose, body, o.Shape) >= o.ClearanceMm - RoundingMm);
            }
        }

        return standing;
    }

    /// <summary>The ports inside the lower seal at every seat.</summary>
    public static int[,] PortsUnder(PodPose pose, GridBoard board, bool[,] standing)
    {
        var under = new int[standing.GetLength(0), standing.GetLength(1)];

        // From the port to the seats that could cover it: far fewer than asking every seat about every port.
        foreach (var port in board.Ports)
        {
            var (column, row) = (Cell(port.Centre.X, board.FirstGroove.X, board.PitchMm), Cell(port.Centre.Y, board.FirstGroove.Y, board.PitchMm));
            for (var c = Math.Max(0, column - pose.Columns); c <= Math.Min(column + 1, under.GetLength(0) - 1); c++)
            {
                for (var r = Math.Max(0, row - pose.Rows); r <= Math.Min(row + 1, under.GetLength(1) - 1); r++)
                {
                    under[c, r] += BoardSeats.Feeds(port, pose, pose.BodyOn(board, c, r), board) ? 1 : 0;
                }
            }
        }

        return under;
    }

    public static SeatCount Of(PodPose pose, GridBoard board, bool[,] standing, Point2? spacing)
    {
        var under = PortsUnder(pose, board, standing);
        int seats = 0, dead = 0, fewest = int.MaxValue, most = 0;
        for (var c = 0; c < under.GetLength(0); c++)
        {
            for (var r = 0; r < under.GetLength(1); r++)
            {
                if (standing[c, r])
                {
                    seats++;
                    dead += under[c, r] < pose.Type.PortsNeeded ? 1 : 0;
                    fewest = Math.Min(fewest, under[c, r]);
                    most = Math.Max(most, under[c, r]);
                }
            }
        }

        var covers = spacing is { } s && pose.ExtentXMm >= s.X - RoundingMm && pose.ExtentYMm >= s.Y - RoundingMm
            && !pose.IsRound && pose.Type.PortsNeeded == 1;
        return new(pose.Type.Name, pose.Turned, pose.Type.PortsNeeded, covers, seats, dead, seats == 0 ? 0 : fewest, most);
    }

    private static int Count(double lengthMm, double pitchMm) => Math.Max(0, (int)Math.Floor(lengthMm / pitchMm + RoundingMm) + 1);

    private static int Cell(double at, double first, double pitchMm) => (int)Math.Floor((at - first) / pitchMm);
}
