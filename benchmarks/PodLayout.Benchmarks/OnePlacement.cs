using System.Collections.Immutable;
using PodLayout.Choice;
using PodLayout.Geometry;
using PodLayout.Jobs;
using PodLayout.Placing;
using PodLayout.Seats;
using PodLayout.Support;

namespace PodLayout.Benchmarks;

/// <summary>A job at one placement, ready for the layout model.</summary>
internal sealed record OnePlacement(Job Job, SearchGround Ground, PlacementModel Model)
{
    /// <summary>The part with its drawing's zero at a point of the board, not turned.</summary>
    public static OnePlacement At(Job job, Point2 zero)
    {
        var poses = PodPose.Of(job.Shop, job.Shop.Pods[0].HeightMm);
        var frame = new PlacingFrame(job, ReachMap.Of(job.Part, job.Support), poses, 0, 0);
        ImmutableArray<BoardSeats> board = [.. poses.Select(pose => BoardSeats.Of(pose, job.Shop.Board))];
        var (offset, columns, rows) = GivenPlacement.Locate(job, new(zero, 0));
        var ground = SearchGround.At(frame, board, new OffsetBox(offset, 0, 0), columns, rows);
        return new(job, ground, PlacementModel.At(job, ground, ground.Classes[0], offset));
    }

    /// <summary>The part where a search laid it.</summary>
    public static OnePlacement Of(Job job, FoundLayout found)
    {
        ImmutableArray<BoardSeats> board = [.. found.Frame.Poses.Select(pose => BoardSeats.Of(pose, job.Shop.Board))];
        var ground = SearchGround.At(found.Frame, board, new OffsetBox(found.Offset, 0, 0), found.Columns, found.Rows);
        return new(job, ground, PlacementModel.At(job, ground, ground.Classes[0], found.Offset));
    }

    /// <summary>The model as a question, rows made as needed.</summary>
    public CoverQuestion Question => Model.Within(1);

    /// <summary>The model with all its rows.</summary>
    public CoverProblem Whole()
    {
        var question = Question;
        return new(
            question.SeatCount, [.. Enumerable.Range(0, question.PointCount).Select(question.SupportersOf)], question.Rooms.Value, question.Stocks);
    }
}
