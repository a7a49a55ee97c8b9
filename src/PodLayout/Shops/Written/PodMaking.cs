using PodLayout.Findings;
using PodLayout.JsonFiles;

namespace PodLayout.Shops.Written;

/// <summary>From a written pod type to a checked one.</summary>
internal static class PodMaking
{
    public static Outcome<PodType> From(WrittenPod written, string path, GridBoard board, FileRefusals refusals)
    {
        PodFootprint? footprint = written switch
        {
            { WidthMm: { } width, LengthMm: { } length, DiameterMm: null } => new PodFootprint.Rectangle(width, length),
            { WidthMm: null, LengthMm: null, DiameterMm: { } diameter } => new PodFootprint.Round(diameter),
            _ => null,
        };
        if (footprint is null)
        {
            var found = ShopMaking.Members(
                ("widthMm", written.WidthMm is not null), ("lengthMm", written.LengthMm is not null), ("diameterMm", written.DiameterMm is not null));
            return Refuse(refusals.At(
                "pod-footprint",
                path,
                $"pod \"{written.Name}\": found {found}; expected the size of its body.",
                "Give widthMm and lengthMm for a rectangular pod, or diameterMm for a round one."));
        }

        var finding = (footprint is PodFootprint.Round
                ? OffPitch(footprint.ExtentXMm, path + ".diameterMm", board.PitchMm, refusals)
                : OffPitch(footprint.ExtentXMm, path + ".widthMm", board.PitchMm, refusals)
                    ?? OffPitch(footprint.ExtentYMm, path + ".lengthMm", board.PitchMm, refusals))
            ?? SealLeavesNothing(written, footprint, path, board, refusals);
        return finding is not null
            ? Refuse(finding)
            : Outcome<PodType>.Of(new PodType(
                written.Name,
                footprint,
                written.SealInsetAboveMm,
                written.SealInsetBelowMm,
                written.HeightMm,
                written.MayTurn,
                written.Stock,
                written.PortsNeeded)
            {
                SealStiffnessNPerMm2 = written.SealStiffnessNPerMm2 ?? PodType.UsualSealStiffnessNPerMm2,
            });
    }

    /// <summary>What is wrong with the pods as a set.</summary>
    public static Finding? WrongTogether(IReadOnlyList<PodType> pods, FileRefusals refusals)
    {
        for (var i = 0; i < pods.Count; i++)
        {
            var path = JsonWords.Child("$.pods", i);
            for (var j = 0; j < i; j++)
            {
                if (string.Equals(pods[i].Name, pods[j].Name, StringComparison.OrdinalIgnoreCase))
                {
                    return refusals.At(
                        "pod-name-twice",
                        path + ".name",
                        $"found \"{pods[i].Name}\", which is also the name of pod {JsonWords.Number(j + 1)}.",
                        "Give each pod type a name of its own; the card tells them apart by it.");
                }
            }
        }

        return pods.All(p => p.Stock == 0)
            ? refusals.At("pods-none", "$.pods", "the stock of every pod type is 0.", "Give the number of pods there are as stock.")
            : null;
    }

    /// <summary>
    /// The pods with heights that differ by no more than contact made the same: the part lies on them as on one height.
    /// </summary>
    public static IEnumerable<PodType> Levelled(IReadOnlyList<PodType> pods) => pods.Select(pod => pod with
    {
        HeightMm = pods.First(p => Math.Abs(p.HeightMm - pod.HeightMm) <= Tolerances.ContactMm).HeightMm,
    });

    private static Finding? OffPitch(double sizeMm, string path, double pitchMm, FileRefusals refusals)
    {
        var pitches = Math.Max(1, Math.Round(sizeMm / pitchMm));
        return Math.Abs(sizeMm - pitches * pitchMm) <= Tolerances.PodSizeMm ? null : refusals.At(
            "pod-off-pitch",
            path,
            $"found {JsonWords.Number(sizeMm)} mm, which is not a whole number of pitches of {JsonWords.Number(pitchMm)} mm; a pod's gasket ribs stand in the grooves.",
            $"The nearest size is {JsonWords.Number(pitches * pitchMm)} mm; or mend $.board.pitchMm.");
    }

    private static Finding? SealLeavesNothing(
        WrittenPod written, PodFootprint footprint, string path, GridBoard board, FileRefusals refusals)
    {
        var smaller = Math.Min(footprint.ExtentXMm, footprint.ExtentYMm);
        if (2 * written.SealInsetAboveMm >= smaller)
        {
            return refusals.At(
                "seal-inset-too-large",
                path + ".sealInsetAboveMm",
                $"found {JsonWords.Number(written.SealInsetAboveMm)} mm from each edge of a body {JsonWords.Number(smaller)} mm across: nothing is left to hold the part.",
                $"Give less than {JsonWords.Number(smaller / 2)} mm.");
        }

        var inside = smaller - 2 * written.SealInsetBelowMm;
        var needed = board.PortDiameterMm + 2 * board.PortMarginMm;
        return inside >= needed ? null : refusals.At(
            "seal-inset-too-large",
            path + ".sealInsetBelowMm",
            $"found {JsonWords.Number(written.SealInsetBelowMm)} mm from each edge of a body {JsonWords.Number(smaller)} mm across, which leaves {JsonWords.Number(Math.Max(0, inside))} mm inside the lower seal; a port with its margin needs {JsonWords.Number(needed)} mm.",
            "Give a smaller inset, or mend $.board.ports.diameterMm or marginMm.");
    }

    private static Outcome<PodType> Refuse(Finding finding) => Outcome<PodType>.Refuse(finding);
}
