using PodLayout.Geometry;

namespace PodLayout.Seats;

/// <summary>Where the centre of a pod may be under the part, whatever the board: seal under sound wood, body clear of cuts.</summary>
/// <param name="Pose">The pod as it stands.</param>
/// <param name="Centres">Allowed centres, in the frame of the part as turned.</param>
public sealed record SeatRegion(PodPose Pose, Region Centres)
{
    /// <summary>The seat region of a pod under a part that has been turned into the board's directions.</summary>
    /// <param name="wood">The part's wood, turned, not moved.</param>
    /// <param name="pose">The pod.</param>
    /// <param name="slackMm">
    /// How far seals and bodies may pass their lines: <see cref="Tolerances.ContactMm"/> for a placement; more for a bound
    /// that must hold for all angles near this one.
    /// </param>
    public static SeatRegion Of(ClearWood wood, PodPose pose, double slackMm)
    {
        var centres = Erode(wood.ForBodies, pose, 0, slackMm);
        // Where the body's clearance already keeps the seal in the wood, one erosion does for both.
        if (pose.Type.SealInsetAboveMm + wood.SealIsLooser < 0)
        {
            centres = centres.Intersect(Erode(wood.ForSeals, pose, pose.Type.SealInsetAboveMm, slackMm));
        }

        if (wood.TooThin.TryGetValue(pose.Type.Name, out var tooThin))
        {
            centres = centres.Minus(Dilate(tooThin, pose, pose.Type.SealInsetAboveMm, slackMm));
        }

        return new(pose, wood.Unsound.IsEmpty
            ? centres : centres.Minus(Dilate(wood.Unsound, pose, pose.Type.SealInsetAboveMm, slackMm)));
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
