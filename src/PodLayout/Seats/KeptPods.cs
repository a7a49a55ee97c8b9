using System.Globalization;
using PodLayout.Findings;
using PodLayout.Jobs;
using PodLayout.Layouts;
using PodLayout.Shops;

namespace PodLayout.Seats;

/// <summary>Whether the pods that a job keeps can stand on its board, whatever lies on them.</summary>
public static class KeptPods
{
    /// <summary>The job, or what stands against one of its kept pods.</summary>
    /// <param name="job">The job.</param>
    /// <param name="file">Name of its file, for messages.</param>
    public static Outcome<Job> Check(Job job, string file)
    {
        for (var i = 0; i < job.Keep.Length; i++)
        {
            var fault = Alone(job.Keep[i], job.Shop) ?? BesideOthers(job, i);
            if (fault is var (code, member, message, remedy))
            {
                var path = string.Create(CultureInfo.InvariantCulture, $"$.keep[{i}]{member}");
                return Outcome<Job>.Refuse(new Finding(
                    code, Severity.Refused, FindingKind.Request, message, new Place.InJson(file, path), remedy));
            }
        }

        return Outcome<Job>.Of(job);
    }

    /// <summary>A kept pod as it stands, fed by the ports nearest to its centre.</summary>
    public static PlacedPod Placed(KeptPod kept, GridBoard board)
    {
        var pose = PoseOf(kept);
        var ports = BoardSeats.FeedingPorts(pose, board, kept.Column, kept.Row).Take(kept.Type.PortsNeeded);
        return new(kept.Type, kept.Turned, kept.Column, kept.Row, pose.BodyOn(board, kept.Column, kept.Row).Centre, [.. ports]);
    }

    private static (string Code, string Member, string Message, string Remedy)? Alone(KeptPod kept, Shop shop)
    {
        var (board, pose) = (shop.Board, PoseOf(kept));
        var body = pose.BodyOn(board, kept.Column, kept.Row);
        var area = board.UsableArea;
        if (kept.Turned && !kept.Type.MayTurn)
        {
            return ("kept-pod-turned", ".turned", $"\"{kept.Type.Name}\" may not be turned.", "Take turned out, or set mayTurn in the shop file.");
        }

        if (!area.Grow(Tolerances.ContactMm).Contains(body))
        {
            var isAcross = body.MinX < area.MinX - Tolerances.ContactMm || body.MaxX > area.MaxX + Tolerances.ContactMm;
            return ("kept-pod-off-board", isAcross ? ".column" : ".row",
                Said($"A \"{kept.Type.Name}\" there would reach from ({body.MinX:0.##}, {body.MinY:0.##}) to ({body.MaxX:0.##}, {body.MaxY:0.##}) mm, off the usable area, which reaches from ({area.MinX:0.##}, {area.MinY:0.##}) to ({area.MaxX:0.##}, {area.MaxY:0.##}) mm."),
                "Columns and rows are counted from 1 at the first groove from the datum.");
        }

        foreach (var obstacle in board.Obstacles)
        {
            var mm = Clearance.ToObstacle(pose, body, obstacle.Shape);
            if (mm < obstacle.ClearanceMm - Tolerances.ContactMm)
            {
                return ("kept-pod-on-obstacle", "", Said($"The pod {(mm < 0 ? Said($"overlaps \"{obstacle.Name}\" by {-mm:0.##} mm") : Said($"is {mm:0.##} mm from \"{obstacle.Name}\""))}; it must stay {obstacle.ClearanceMm:0.##} mm away."),
                    "Keep a pod elsewhere, or take one of the two out.");
            }
        }

        var feeding = BoardSeats.FeedingPorts(pose, board, kept.Column, kept.Row).Length;
        if (feeding < kept.Type.PortsNeeded)
        {
            return ("kept-pod-without-port", "",
                Said($"{feeding} working port(s) lie inside the pod's lower seal there; it needs {kept.Type.PortsNeeded}."), "Keep a pod where a port lies under it.");
        }

        return BoardSeats.Of(pose, board).Allows(kept.Column, kept.Row) ? null
            : ("kept-pod-on-port", "", "The pod's lower seal would stand on a port that cannot be plugged.", "Keep a pod elsewhere.");
    }

    private static (string Code, string Member, string Message, string Remedy)? BesideOthers(Job job, int index)
    {
        var (kept, shop) = (job.Keep[index], job.Shop);
        var pose = PoseOf(kept);
        var body = pose.BodyOn(shop.Board, kept.Column, kept.Row);
        for (var i = 0; i < index; i++)
        {
            var other = job.Keep[i];
            var otherPose = PoseOf(other);
            var mm = Clearance.BetweenPods(pose, body, otherPose, otherPose.BodyOn(shop.Board, other.Column, other.Row));
            if (mm < shop.PodGapMm - Tolerances.ContactMm)
            {
                return ("kept-pods-overlap", "",
                    mm < 0 ? Said($"The pod overlaps the one at $.keep[{i}] by {-mm:0.##} mm.")
                        : Said($"The pod is {mm:0.##} mm from the one at $.keep[{i}]; the pod gap is {shop.PodGapMm:0.##} mm."),
                    "Move one of them.");
            }

            if (other.Type.HeightMm != kept.Type.HeightMm)
            {
                return ("kept-heights-mixed", ".pod",
                    Said($"\"{kept.Type.Name}\" is {kept.Type.HeightMm:0.##} mm high, the pod at $.keep[{i}] {other.Type.HeightMm:0.##} mm: the part cannot lie flat on both."),
                    "Keep pods of one height.");
            }
        }

        var used = job.Keep.Take(index + 1).Count(k => k.Type == kept.Type);
        return used <= kept.Type.Stock ? null : ("kept-pods-stock", ".pod",
            Said($"{used} pods \"{kept.Type.Name}\" are kept; the shop has {kept.Type.Stock}."), "Keep fewer, or mend the stock in the shop file.");
    }

    private static PodPose PoseOf(KeptPod kept) => new(0, kept.Type, kept.Turned, 0, 0);

    private static string Said(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
