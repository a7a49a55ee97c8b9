using System.Collections.Immutable;
using PodLayout.Geometry;
using PodLayout.Jobs;
using PodLayout.Parts;
using PodLayout.Support;

namespace PodLayout.Placing;

/// <summary>
/// Pods that must stand, and loose pieces that pods must hold, enter the model as rows of their own: one more point each, which
/// only the seat of that pod, or any seat under that piece, supports.
/// </summary>
internal static class AskedRows
{
    private const double RoundingMm = 1e-6;

    /// <summary>The seats of a kept pod in a frame, for a part shifted by whole pitches: one under the part and each piece.</summary>
    public static IEnumerable<FrameSeat> SeatsOf(KeptPod kept, PlacingFrame frame, int columns, int rows) =>
        Enumerable.Range(0, frame.Poses.Length)
            .Where(pose => frame.Poses[pose].Type.Name == kept.Type.Name && frame.Poses[pose].Turned == kept.Turned)
            .Select(pose => new FrameSeat(pose, kept.Column - columns, kept.Row - rows));

    /// <summary>
    /// For each kept pod the numbers of the seats that are it with one of some shifts, then for each piece to hold those under
    /// it, or, where it is to rest on them in balance, in each direction those that reach beyond its centre of mass; rising.
    /// </summary>
    /// <param name="job">The job.</param>
    /// <param name="frame">The part at its angle or angles.</param>
    /// <param name="seats">The seats.</param>
    /// <param name="shifts">Whole-pitch shifts of the part.</param>
    /// <param name="box">The offsets: a row holds every seat that could serve from one of them.</param>
    public static ImmutableArray<int[]> Of(
        Job job, PlacingFrame frame, ImmutableArray<FrameSeat> seats, IEnumerable<ShiftClass> shifts, OffsetBox box) =>
    [
        .. job.Keep.Select(kept =>
        {
            var wanted = shifts.SelectMany(s => SeatsOf(kept, frame, s.Columns, s.Rows)).ToHashSet();
            return Enumerable.Range(0, seats.Length).Where(s => wanted.Contains(seats[s])).ToArray();
        }),
        .. job.Part.Shape.Held.SelectMany(piece => Under(piece, frame, seats, box)),
    ];

    /// <summary>Whether every piece has the pods that it asks for when the part lies at an offset.</summary>
    public static bool ArePiecesHeld(PlacingFrame frame, ImmutableArray<FrameSeat> seats, Point2 offset) =>
        frame.Held.All(piece => Under(piece, frame, seats, new(offset, 0, 0)).All(row => row.Length > 0));

    private static IEnumerable<int[]> Under(HeldPiece piece, PlacingFrame frame, ImmutableArray<FrameSeat> seats, OffsetBox box)
    {
        int[] under = [.. Enumerable.Range(0, seats.Length).Where(s => frame.PieceOver(seats[s].Pose)?.Name == piece.Name)];
        if (!piece.IsBalanced)
        {
            return [under];
        }

        var known = new Dictionary<(int, int), PodFace>();
        var stand = Array.ConvertAll(under, s =>
        {
            var centre = frame.CentreOf(seats[s], box.Centre);
            return (Seat: s, Centre: centre, Face: frame.SweptFace(seats[s].Pose, centre, box, known));
        });
        return HeldPiece.Directions.Select(d =>
        {
            var (mass, direction) = frame.Laid(piece.CentreOfMass, d);
            return stand.Where(p => direction.Dot(p.Centre - mass) + p.Face.ReachAlong(direction) >= -RoundingMm).Select(p => p.Seat).ToArray();
        });
    }
}
