using System.Collections.Immutable;
using System.Diagnostics;
using PodLayout.Geometry;
using PodLayout.Jobs;
using PodLayout.Placing;
using PodLayout.Seats;
using PodLayout.Support;

namespace PodLayout.Benchmarks;

/// <summary>Trying the offsets of a square grid within one pitch, instead of searching them all.</summary>
internal static class OffsetGrid
{
    /// <summary>
    /// The fewest pods over the grid, with every whole-pitch shift that makes a difference at each offset. It only asks whether one
    /// pod fewer will do, as the search does, on all processors.
    /// </summary>
    public static (int? Pods, int Offsets, double Ms, bool IsCut) Try(Job job, double stepMm, TimeSpan longest)
    {
        var clock = Stopwatch.StartNew();
        var reach = ReachMap.Of(job.Part, job.Support);
        var pitch = job.Shop.Board.PitchMm;
        var side = (int)Math.Round(pitch / stepMm);
        var most = job.Shop.Pods.Sum(p => Math.Min(p.Stock, 10_000)) + 1;
        var (pods, isCut) = (most, false);
        foreach (var height in SearchRun.Heights(job))
        {
            var poses = PodPose.Of(job, height);
            var frame = new PlacingFrame(job, reach, poses, SearchRun.AngleOf(job), 0);
            ImmutableArray<BoardSeats> board = [.. poses.Select(pose => BoardSeats.Of(pose, job.Shop.Board))];
            var ground = SearchGround.Over(frame, board, job, OffsetBox.WholePitch(pitch));
            var gate = new Lock();
            var options = new ParallelOptions { MaxDegreeOfParallelism = Environment.ProcessorCount };
            Parallel.For(0, side * side, options, k =>
            {
                if (clock.Elapsed > longest)
                {
                    isCut = true;
                    return;
                }

                var offset = new Point2(k % side * stepMm, k / side * stepMm);
                foreach (var shift in ground.Classes)
                {
                    if (NodeExamination.AtOffset(job, ground, shift, offset, Volatile.Read(ref pods) - 1, CancellationToken.None) is { } found)
                    {
                        lock (gate)
                        {
                            pods = Math.Min(pods, found.Seats.Length);
                        }
                    }
                }
            });
        }

        return (pods == most ? null : pods, side * side, clock.Elapsed.TotalMilliseconds, isCut);
    }
}
