using System.Collections.Immutable;
using PodLayout.Choice;
using PodLayout.Geometry;
using PodLayout.Jobs;
using PodLayout.Seats;

namespace PodLayout.Placing;

/// <summary>
/// Where nothing was found that holds: the layout that comes nearest, so that what is missing is told of the best there is and not of the
/// fewest pods. Found by adding pods, not proven to be the firmest.
/// </summary>
internal static class FirmestLayout
{
    // Seats that are looked at closely for each pod, pods that are added at most, and how many of them without any gain.
    private const int Closely = 4;
    private const int MostAdded = 10;
    private const int MostIdle = 2;
    private const int TriesAlongSide = 2;

    // Pods that are larger by so many hundredths of the largest are preferred where as many do.
    private const int Hundredths = 100;

    /// <summary>The firmest layout come upon; never one that holds less than the one given.</summary>
    /// <param name="job">The job.</param>
    /// <param name="holding">How the part is to be held.</param>
    /// <param name="frames">Frames of the part.</param>
    /// <param name="supporting">A layout that supports all that is to be supported.</param>
    /// <param name="cancellation">Cuts the work short.</param>
    public static FoundLayout Of(Job job, HoldingModel holding, Frames frames, FoundLayout supporting, CancellationToken cancellation)
    {
        if (holding.Bodies.Grounds.Length > 1)
        {
            return supporting;
        }

        ImmutableArray<BoardSeats> board = [.. frames.Poses.Select(pose => BoardSeats.Of(pose, job.Shop.Board))];
        var best = (Layout: supporting, Factor: Factor(holding, supporting));
        foreach (var start in Starts(job, frames, board, supporting, cancellation))
        {
            if (cancellation.IsCancellationRequested || best.Factor >= holding.Bodies.EnoughFactor)
            {
                break;
            }

            var grown = Grown(job, holding, board, start, cancellation);
            best = grown.Factor > best.Factor ? grown : best;
        }

        return best.Layout;
    }

    private static IEnumerable<FoundLayout> Starts(
        Job job, Frames frames, ImmutableArray<BoardSeats> board, FoundLayout supporting, CancellationToken cancellation)
    {
        yield return supporting;
        var spot = new OffsetBox(supporting.Offset, 0, 0);
        if (OfLargePods(job, SearchGround.At(supporting.Frame, board, spot, supporting.Columns, supporting.Rows), supporting.Offset, cancellation) is { } large)
        {
            yield return large;
        }

        if (job.Placement is PlacementWish.Given)
        {
            yield break;
        }

        var pitch = job.Shop.Board.PitchMm;
        foreach (var i in Enumerable.Range(0, TriesAlongSide * TriesAlongSide))
        {
            var offset = new Point2((i % TriesAlongSide + 0.5) * pitch / TriesAlongSide, (i / TriesAlongSide + 0.5) * pitch / TriesAlongSide);
            var frame = frames.Of(supporting.Frame.AngleDeg, 0);
            var ground = SearchGround.At(frame, board, new(offset, 0, 0), supporting.Columns, supporting.Rows);
            if (OfLargePods(job, ground, offset, cancellation) is { } elsewhere)
            {
                yield return elsewhere;
            }
        }
    }

    // As few pods as do there, the larger ones by preference.
    private static FoundLayout? OfLargePods(Job job, SearchGround ground, Point2 offset, CancellationToken cancellation)
    {
        var frame = ground.Frame.HeldBy(null);
        var model = PlacementModel.OfSupport(job, ground with { Frame = frame }, ground.Classes[0], offset);
        if (model.Seats.IsEmpty)
        {
            return null;
        }

        double Area(FrameSeat s) => frame.Poses[s.Pose].ExtentXMm * frame.Poses[s.Pose].ExtentYMm;
        var most = model.Seats.Max(Area);
        ImmutableArray<int> preference = [.. model.Seats.Select(s => (int)Math.Round(Hundredths * (1 - Area(s) / most)))];
        var pods = job.Shop.Pods.Sum(p => Math.Min(p.Stock, 1000));
        var answer = FewestPods.Preferred(model.Within(1), ground.FirstPoints, pods, preference, cancellation);
        return answer.HasChoice
            ? new(frame, offset, ground.Classes[0].Columns, ground.Classes[0].Rows, [.. answer.Filled.Select(s => model.Seats[s])], 1) : null;
    }

    private static (FoundLayout Layout, double Factor) Grown(
        Job job, HoldingModel holding, ImmutableArray<BoardSeats> board, FoundLayout start, CancellationToken cancellation)
    {
        var frame = start.Frame;
        var ground = SearchGround.At(frame, board, new OffsetBox(start.Offset, 0, 0), start.Columns, start.Rows);
        ImmutableArray<FrameSeat> all = [.. ground.Seats.Where((s, i) => ground.Classes[0].Available[i] && frame.IsPossible(s, start.Offset))];
        var best = (Layout: start, Factor: Factor(holding, start));
        var (layout, idle) = (start.Seats, 0);
        for (var added = 0; added < MostAdded && idle <= MostIdle && best.Factor < holding.Bodies.EnoughFactor && !cancellation.IsCancellationRequested; added++)
        {
            if (holding.Bodies.Strongest(frame, layout, OneMore.Free(job, frame, all, layout), start.Offset, start.Columns, start.Rows, Closely) is not var (seat, factor))
            {
                break;
            }

            layout = layout.Add(seat);
            idle = factor > best.Factor ? 0 : idle + 1;
            if (factor > best.Factor)
            {
                best = (start with { Seats = layout, WorstShare = OffsetFitting.WorstShare(frame, layout, start.Offset) }, factor);
            }
        }

        return best;
    }

    private static double Factor(HoldingModel holding, FoundLayout layout) =>
        holding.Bodies.Least(layout.Frame, layout.Seats, layout.Offset, layout.Columns, layout.Rows);
}
