using System.Collections.Immutable;
using System.Globalization;
using PodLayout.Findings;
using PodLayout.Geometry;
using PodLayout.Jobs;
using PodLayout.Layouts;
using PodLayout.Parts;
using PodLayout.Seats;

namespace PodLayout;

/// <summary>Layouts that hold loose pieces of the blank beside the part: all of them, or as many as go, the heaviest first.</summary>
internal static class OffcutPlanning
{
    /// <summary>
    /// The layout of a job with pieces to hold. The pods under the part and those under the pieces are one question, so that the
    /// fewest are proven over both together.
    /// </summary>
    /// <param name="job">The job.</param>
    /// <param name="plan">Plans a job whose pieces must all be held.</param>
    public static PlanResult Plan(Job job, Func<Job, PlanResult> plan)
    {
        var pieces = job.Part.Shape.Held;
        ImmutableArray<HeldPiece> fitting = [.. pieces.Where(p => CouldFit(job, p))];
        if (pieces.FirstOrDefault(p => p.IsDemanded && !fitting.Contains(p)) is { } misfit)
        {
            return new(job, null, [], [NotHeld(job, misfit, fits: false)], false, new(0, 0, 0));
        }

        // The part's own support comes before loose pieces.
        var all = Whole(job, fitting, plan);
        return all.IsUsable || all.Interrupted
            ? Told(all, job, fitting) : AsManyAsGo(job, fitting, plan);
    }

    private static PlanResult AsManyAsGo(Job job, ImmutableArray<HeldPiece> fitting, Func<Job, PlanResult> plan)
    {
        ImmutableArray<HeldPiece> held = [.. fitting.Where(p => p.IsDemanded).Select(p => p with { IsBalanced = false })];
        var best = Whole(job, held, plan);
        var alone = best.Layout is not null || best.Interrupted || held.IsEmpty ? best : Whole(job, [], plan);
        if (alone.Layout is null && !alone.Interrupted && !job.Support.MustSupportAll)
        {
            // Then the part cannot wholly be supported anyhow.
            best = plan(With(job, held));
        }

        if (!best.IsUsable)
        {
            // The part alone tells whether it or the pieces stand in the way. A layout that holds a piece too weakly says so itself.
            return held.IsEmpty || best.Interrupted || best.DoesNotHold || !alone.IsUsable
                ? best : best with { Unsupported = [], Findings = [.. held.Select(p => NotHeld(job, p, fits: true))] };
        }

        foreach (var piece in fitting.Where(p => !p.IsDemanded).OrderByDescending(p => p.MassKg))
        {
            if (!Take(piece) && !best.Interrupted)
            {
                Take(piece with { IsBalanced = false });
            }

            if (best.Interrupted)
            {
                break;
            }
        }

        foreach (var piece in held.Where(p => !p.IsBalanced && !best.Interrupted).ToList())
        {
            Take(piece with { IsBalanced = true });
        }

        return Told(best, job, held);

        // With one more piece, or the same one in balance.
        bool Take(HeldPiece piece)
        {
            var wanted = held.RemoveAll(p => p.Name == piece.Name).Add(piece);
            var more = best.IsPartial ? plan(With(job, wanted)) : Whole(job, wanted, plan);
            if (!more.IsUsable || more.Layout!.Proof.UnsupportedMm > best.Layout!.Proof.UnsupportedMm)
            {
                best = best with { Interrupted = best.Interrupted || more.Interrupted };
                return false;
            }

            (best, held) = (more, wanted);
            return true;
        }
    }

    // Wholly supported, or not at all.
    private static PlanResult Whole(Job job, ImmutableArray<HeldPiece> held, Func<Job, PlanResult> plan)
    {
        var result = plan(With(job, held) with { Support = job.Support with { MustSupportAll = true } });
        return result with { Job = result.Job with { Support = job.Support } };
    }

    private static PlanResult Told(PlanResult result, Job asked, ImmutableArray<HeldPiece> held) => result.Layout is null ? result : result with
    {
        Findings =
        [
            .. result.Findings,
            .. asked.Part.Shape.Held.Where(p => !held.Any(h => h.Name == p.Name)).Select(p => NotHeld(asked, p, CouldFit(asked, p))),
            .. held.Where(h => !h.IsBalanced).Select(NotBalanced),
        ],
    };

    private static Job With(Job job, ImmutableArray<HeldPiece> held) =>
        job with { Part = job.Part with { Shape = job.Part.Shape with { Held = held } } };

    // Whether some pod in stock could stand wholly under it, whatever the board: exactly at the angles asked for; over an interval
    // by the disc within the pod's seal, which no turn makes smaller.
    private static bool CouldFit(Job job, HeldPiece piece)
    {
        var ground = SeatGround.Of(With(job, [piece]).Part.Shape)[^1];
        var wood = ClearWood.Of(ground.Wood, job.Margins);
        var poses = job.Shop.Pods.Where(p => p.Stock > 0).Select(p => p.HeightMm).Distinct()
            .SelectMany(height => PodPose.Of(job.Shop, height)).ToList();
        return job.Placement switch
        {
            PlacementWish.Given given => FitsAt(given.AngleDeg),
            PlacementWish.Search search => search.AnglesDeg.Any(FitsAt),
            _ => poses.Exists(p => !wood.ForSeals.Shrink(
                Math.Min(p.ExtentXMm, p.ExtentYMm) / 2 - p.Type.SealInsetAboveMm - Tolerances.ContactMm).IsEmpty),
        };

        bool FitsAt(double angleDeg)
        {
            var turned = wood.Turned(Turn.FromDegrees(angleDeg), default);
            return poses.Exists(pose => !SeatRegion.Of(turned, pose, Tolerances.ContactMm).Centres.IsEmpty);
        }
    }

    private static Finding NotBalanced(HeldPiece piece) => new(
        "offcut-not-balanced", Severity.Warning, FindingKind.Request,
        $"{piece.Name} has a pod, but its pods do not lie about its centre of mass: once loose it rests on them by their vacuum alone.",
        null, "Leave tabs or a skin there too, or cut it into smaller pieces.");

    private static Finding NotHeld(Job job, HeldPiece piece, bool fits)
    {
        var box = piece.Outline.Bounds;
        var what = string.Create(
            CultureInfo.InvariantCulture, $"{piece.Name} ({box.Width:0.#} x {box.Height:0.#} mm, {piece.MassKg:0.###} kg, about ({box.Centre.X:0.#}, {box.Centre.Y:0.#}) of the drawing) is not held: ");
        var why = fits
            ? "no layout of the part leaves pods for it that hold it at the least factor against the cuts along it: the grooves, the ports, the board's edges, other pods or the stock stand in the way."
            : $"no pod of the shop fits wholly under it with the margins of {job.Margins.SealMarginMm.ToString("0.##", CultureInfo.InvariantCulture)} mm for seals and {job.Margins.CutClearanceMm.ToString("0.##", CultureInfo.InvariantCulture)} mm for bodies.";
        return new(
            "offcut-not-held", piece.IsDemanded ? Severity.Refused : Severity.Warning, piece.IsDemanded ? FindingKind.NoLayout : FindingKind.Request,
            what + why, null, "Leave tabs or a skin there, cut it to chips, bring smaller pods, or make the blank larger.");
    }
}
