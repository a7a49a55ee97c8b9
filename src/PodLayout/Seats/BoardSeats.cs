using System.Collections.Immutable;
using PodLayout.Geometry;
using PodLayout.Shops;

namespace PodLayout.Seats;

/// <summary>
/// Which places of the board can take a pod, whatever the part: body inside the usable area and off every obstacle, enough
/// working ports inside the lower seal, no unpluggable port under it.
/// </summary>
public sealed class BoardSeats
{
    // Sums of pitches carry rounding; a billionth of a metre is far below anything drilled.
    private const double RoundingMm = 1e-6;

    private readonly bool[] _allowed;

    private BoardSeats(PodPose pose, int columns, int rows, bool[] allowed)
    {
        Pose = pose;
        Columns = columns;
        Rows = rows;
        _allowed = allowed;
    }

    /// <summary>The pod as it stands.</summary>
    public PodPose Pose { get; }

    /// <summary>Number of grooves along X that could carry its left edge.</summary>
    public int Columns { get; }

    /// <summary>Number of grooves along Y that could carry its lower edge.</summary>
    public int Rows { get; }

    /// <summary>Finds the seats of one pod on the board.</summary>
    public static BoardSeats Of(PodPose pose, GridBoard board)
    {
        var columns = Math.Max(0, (int)Math.Floor((board.WidthMm - board.FirstGroove.X) / board.PitchMm + RoundingMm) + 1);
        var rows = Math.Max(0, (int)Math.Floor((board.LengthMm - board.FirstGroove.Y) / board.PitchMm + RoundingMm) + 1);
        var allowed = new bool[columns * rows];
        for (var row = 0; row < rows; row++)
        {
            for (var column = 0; column < columns; column++)
            {
                allowed[row * columns + column] = IsClear(pose, board, column, row)
                    && CountFeeding(pose, board, column, row) >= pose.Type.PortsNeeded;
            }
        }

        return new(pose, columns, rows, allowed);
    }

    /// <summary>
    /// The working ports that feed a pod at a seat: wholly inside its lower seal by the board's margin, nearest to its centre
    /// first. More than it needs may be listed.
    /// </summary>
    public static ImmutableArray<Port> FeedingPorts(PodPose pose, GridBoard board, int column, int row)
    {
        var body = pose.BodyOn(board, column, row);
        return
        [
            .. from port in board.Ports
               where Feeds(port, pose, body, board)
               orderby Math.Round((port.Centre - body.Centre).Length, 6), port.Centre.Y, port.Centre.X
               select port,
        ];
    }

    /// <summary>Whether a pod of this kind can stand with its lower left corner on these grooves.</summary>
    public bool Allows(int column, int row) =>
        column >= 0 && row >= 0 && column < Columns && row < Rows && _allowed[row * Columns + column];

    /// <summary>The rule of the board that keeps a pod of this kind from standing there: the one that is mended first.</summary>
    internal static BoardLack LackOf(PodPose pose, GridBoard board, int column, int row)
    {
        var body = pose.BodyOn(board, column, row);
        return !board.UsableArea.Grow(RoundingMm).Contains(body) ? BoardLack.UsableArea
            : board.Obstacles.Any(o => Clearance.ToObstacle(pose, body, o.Shape) < o.ClearanceMm - RoundingMm) ? BoardLack.Obstacle
            : board.Ports.Any(p => p.State == PortState.StuckOpen && IsUnderSeal(pose, body, p.Centre, board)) ? BoardLack.StuckPort
            : CountFeeding(pose, board, column, row) < pose.Type.PortsNeeded ? BoardLack.Port : BoardLack.None;
    }

    // As FeedingPorts, without making a list of it: asked for every place of the board.
    private static int CountFeeding(PodPose pose, GridBoard board, int column, int row)
    {
        var body = pose.BodyOn(board, column, row);
        var count = 0;
        foreach (var port in board.Ports)
        {
            count += Feeds(port, pose, body, board) ? 1 : 0;
        }

        return count;
    }

    /// <summary>Whether a port lies inside the lower seal of a pod by the margin, and works.</summary>
    internal static bool Feeds(Port port, PodPose pose, Box2 body, GridBoard board) =>
        port.State == PortState.Working && body.Contains(port.Centre)
        && InsideSeal(pose, body, port.Centre) >= board.PortDiameterMm / 2 + board.PortMarginMm - RoundingMm;

    /// <summary>How far inside a pod's lower seal a point lies, mm; negative outside.</summary>
    internal static double InsideSeal(PodPose pose, Box2 body, Point2 p)
    {
        var inset = pose.Type.SealInsetBelowMm;
        return pose.IsRound
            ? pose.ExtentXMm / 2 - inset - (p - body.Centre).Length
            : Math.Min(
                Math.Min(p.X - body.MinX, body.MaxX - p.X) - inset,
                Math.Min(p.Y - body.MinY, body.MaxY - p.Y) - inset);
    }

    private static bool IsClear(PodPose pose, GridBoard board, int column, int row)
    {
        var body = pose.BodyOn(board, column, row);
        return board.UsableArea.Grow(RoundingMm).Contains(body)
            && board.Obstacles.All(o => Clearance.ToObstacle(pose, body, o.Shape) >= o.ClearanceMm - RoundingMm)
            && !board.Ports.Any(p => p.State == PortState.StuckOpen && IsUnderSeal(pose, body, p.Centre, board));
    }

    private static bool IsUnderSeal(PodPose pose, Box2 body, Point2 port, GridBoard board)
    {
        var radius = board.PortDiameterMm / 2;
        var outside = pose.IsRound
            ? (port - body.Centre).Length - pose.ExtentXMm / 2
            : Clearance.ToPoint(body, port);
        return outside < radius - RoundingMm
            && InsideSeal(pose, body, port) < radius + board.PortMarginMm - RoundingMm;
    }
}
