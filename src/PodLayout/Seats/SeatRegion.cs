using System.Collections.Immutable;
using PodLayout.Geometry;
using PodLayout.Jobs;
using PodLayout.Parts;

namespace PodLayout.Seats;

/// <summary>Where the centre of a pod may be under the part, whatever the board: seal under sound wood, body clear of cuts.</summary>
/// <param name="Pose">The pod as it stands.</param>
/// <param name="Centres">Allowed centres, in the frame of the part as turned.</param>
public sealed record SeatRegion(PodPose Pose, Region Centres)
{
    /// <summary>Seat regions for a part that has been turned into the board's directions.</summary>
    /// <param name="turned">The part's shape, turned, not moved.</param>
    /// <param name="margins">Distances to keep.</param>
    /// <param name="poses">The pods.</param>
    /// <param name="slackMm">
    /// How far seals and bodies may pass their lines: <see cref="Tolerances.ContactMm"/> for a placement; more for a bound
    /// that must hold for all angles near this one.
    /// </param>
    public static ImmutableArray<SeatRegion> Of(
        PartShape turned, Margins margins, ImmutableArray<PodPose> poses, double slackMm)
    {
        var wood = Region.Inside(turned.Outline);
        var holes = Region.UnionOf(turned.Holes.Select(h => Region.Inside(h)));
        var defects = Region.UnionOf([
            .. turned.Defects.Select(d => Region.Inside(d)),
            .. turned.Hazards.Where(h => h.KeepsSealsOff).Select(h => h.Area)]).Grow(margins.SealMarginMm);
        var cuts = Region.UnionOf(turned.Hazards.Where(h => h.KeepsBodiesOff).Select(h => h.Area)).Grow(margins.CutClearanceMm);
        var clear = wood.Shrink(margins.CutClearanceMm).Minus(holes.Grow(margins.CutClearanceMm));
        var sound = wood.Shrink(margins.SealMarginMm).Minus(holes.Grow(margins.SealMarginMm));
        return
        [
            .. poses.Select(pose =>
            {
                var centres = Erode(clear, pose, 0, slackMm);
                // Where the body's clearance already keeps the seal in the wood, one erosion does for both.
                if (pose.Type.SealInsetAboveMm + margins.CutClearanceMm < margins.SealMarginMm)
                {
                    centres = centres.Intersect(Erode(sound, pose, pose.Type.SealInsetAboveMm, slackMm));
                }

                if (!defects.IsEmpty)
                {
                    centres = centres.Minus(Dilate(defects, pose, pose.Type.SealInsetAboveMm, slackMm));
                }

                if (!cuts.IsEmpty)
                {
                    centres = centres.Minus(Dilate(cuts, pose, 0, slackMm));
                }

                return new SeatRegion(pose, centres);
            }),
        ];
    }

    private static Region Erode(Region area, PodPose pose, double insetMm, double slackMm)
    {
        var inset = 2 * (insetMm + slackMm);
        return pose.IsRound
            ? area.Shrink((pose.ExtentXMm - inset) / 2)
            : area.ErodeByRectangle(Math.Max(0, pose.ExtentXMm - inset), Math.Max(0, pose.ExtentYMm - inset));
    }

    private static Region Dilate(Region area, PodPose pose, double insetMm, double slackMm)
    {
        var inset = 2 * (insetMm + slackMm);
        return pose.IsRound
            ? area.Grow((pose.ExtentXMm - inset) / 2)
            : area.DilateByRectangle(Math.Max(0, pose.ExtentXMm - inset), Math.Max(0, pose.ExtentYMm - inset));
    }
}
