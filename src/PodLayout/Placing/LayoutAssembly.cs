using System.Collections.Immutable;
using PodLayout.Geometry;
using PodLayout.Jobs;
using PodLayout.Layouts;
using PodLayout.Seats;
using PodLayout.Support;

namespace PodLayout.Placing;

/// <summary>Turns what the search found into a layout in board coordinates.</summary>
internal static class LayoutAssembly
{
    /// <summary>The layout: pods row by row from the datum, ports to open, and how each point is supported.</summary>
    public static Layout Of(Job job, ReachMap reach, FoundLayout found, Proof proof)
    {
        var board = job.Shop.Board;
        var frame = found.Frame;
        ImmutableArray<FrameSeat> seats =
        [
            .. found.Seats.Select(s => frame.Plain(s, found.Offset)).OrderBy(s => s.Row).ThenBy(s => s.Column).ThenBy(s => s.Pose),
        ];
        var shift = new Point2(found.Columns * board.PitchMm, found.Rows * board.PitchMm);
        var pivotOnBoard = found.Offset + shift;
        var zero = pivotOnBoard - Turn.FromDegrees(frame.AngleDeg).Apply(frame.Pivot);
        ImmutableArray<PlacedPod> pods =
        [
            .. seats.Select(seat =>
            {
                var pose = frame.Poses[seat.Pose];
                int column = seat.Column + found.Columns, row = seat.Row + found.Rows;
                var ports = BoardSeats.FeedingPorts(pose, board, column, row).Take(pose.Type.PortsNeeded);
                return new PlacedPod(pose.Type, pose.Turned, column, row, pose.BodyOn(board, column, row).Centre, [.. ports])
                {
                    Holds = frame.PieceOver(seat.Pose)?.Name,
                };
            }),
        ];
        return new(new(zero, frame.AngleDeg), pods, Points(reach, found with { Seats = seats }), proof);
    }

    // Of the points that were given up those that some pod happens to support.
    private static ImmutableArray<SupportPoint> Points(ReachMap reach, FoundLayout found)
    {
        var frame = found.Frame;
        var turned = frame.Reach.PointCount == reach.Points.Length ? frame.Reach : new(reach, Turn.FromDegrees(frame.AngleDeg), frame.Pivot);
        Point2[] centres = [.. found.Seats.Select(s => frame.CentreOf(s, found.Offset))];
        var points = ImmutableArray.CreateBuilder<SupportPoint>(reach.Points.Length);
        for (var p = 0; p < reach.Points.Length; p++)
        {
            var shares = found.Seats.Select((s, i) => frame.PieceOver(s.Pose) is null
                ? turned.Share(p, frame.Faces[s.Pose], centres[i]) : double.PositiveInfinity).ToArray();
            var nearest = Array.IndexOf(shares, shares.Min());
            if (double.IsFinite(shares[nearest]))
            {
                points.Add(new(reach.Points[p].OnPart, reach.Points[p].Limit, shares[nearest], nearest));
            }
        }

        return points.ToImmutable();
    }
}
