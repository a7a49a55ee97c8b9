using System.Collections.Immutable;
using PodLayout.Jobs;

namespace PodLayout.Placing;

/// <summary>
/// Pods that must stand enter the model as rows of their own: one more point each, which only the seat of that pod supports.
/// </summary>
internal static class KeptRows
{
    /// <summary>The seat of a kept pod in a frame, for a part shifted by whole pitches; null when no pose of the frame is its.</summary>
    public static FrameSeat? SeatOf(KeptPod kept, PlacingFrame frame, int columns, int rows)
    {
        for (var pose = 0; pose < frame.Poses.Length; pose++)
        {
            if (frame.Poses[pose].Type.Name == kept.Type.Name && frame.Poses[pose].Turned == kept.Turned)
            {
                return new(pose, kept.Column - columns, kept.Row - rows);
            }
        }

        return null;
    }

    /// <summary>For each kept pod the numbers of the seats that are it with one of some shifts, rising.</summary>
    public static ImmutableArray<int[]> Of(
        Job job, PlacingFrame frame, ImmutableArray<FrameSeat> seats, IEnumerable<ShiftClass> shifts) =>
    [
        .. job.Keep.Select(kept =>
        {
            var wanted = shifts.Select(s => SeatOf(kept, frame, s.Columns, s.Rows)).OfType<FrameSeat>().ToHashSet();
            return Enumerable.Range(0, seats.Length).Where(s => wanted.Contains(seats[s])).ToArray();
        }),
    ];
}
