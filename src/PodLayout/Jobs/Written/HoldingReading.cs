using PodLayout.Findings;
using PodLayout.JsonFiles;
using PodLayout.Woods;

namespace PodLayout.Jobs.Written;

/// <summary>From the written wood, cutter and holding rules to what is asked.</summary>
internal static class HoldingReading
{
    /// <summary>What the job says of its wood and of holding; a warning for a wood that is not known.</summary>
    public static Outcome<HoldingRequest> From(WrittenJob written, FileRefusals refusals)
    {
        var holding = written.Holding ?? new();
        if (holding.AcceptLessBecause is { } reason && string.IsNullOrWhiteSpace(reason))
        {
            return Outcome<HoldingRequest>.Refuse(refusals.At(
                "reason-empty", "$.holding.acceptLessBecause", "found no words.", "Say why this job may be held less firmly, or take the member out."));
        }

        List<Finding> findings = [];
        return Outcome<HoldingRequest>.Of(
            new(
                WoodOf(written, refusals, findings),
                written.Underside == WrittenUnderside.Rough,
                holding.TargetFactor,
                holding.LeastFactor,
                holding.AcceptLessBecause,
                holding.Friction),
            findings);
    }

    /// <summary>A cutter; null when none is written.</summary>
    /// <param name="written">As written.</param>
    /// <param name="path">Where it stands.</param>
    /// <param name="hasDiameter">Whether its diameter stands beside it.</param>
    /// <param name="thicknessMm">Thickness of the part.</param>
    /// <param name="refusals">The file.</param>
    public static (CutterSetup? Setup, Finding? Refusal) Cutter(
        WrittenCutter? written, string path, bool hasDiameter, double thicknessMm, FileRefusals refusals)
    {
        if (written is null)
        {
            return (null, null);
        }

        (string Member, string Message, string Remedy)? wrong = written switch
        {
            { DiameterMm: not null } when hasDiameter => ("diameterMm", "the diameter is given twice.", "Take it out here."),
            { Helix: CutterHelix.Straight, HelixDeg: > 0 } => ("helixDeg", "found an angle on straight flutes.", "Take it out, or mend helix."),
            { DiameterMm: { } diameter, WidthMm: { } width } when width > diameter =>
                ("widthMm", $"found {JsonWords.Number(width)} mm, more than the cutter's diameter.", "Give the width that one pass takes."),
            { PassDepthMm: { } depth } when depth > thicknessMm =>
                ("passDepthMm", $"found {JsonWords.Number(depth)} mm, more than the part's thickness of {JsonWords.Number(thicknessMm)} mm.", "Give the depth that one pass takes."),
            { TangentialN: null, NormalN: not null } => ("normalN", "found without tangentialN.", "Give tangentialN as well, or take it out."),
            { TangentialN: null, AxialN: not null } => ("axialN", "found without tangentialN.", "Give tangentialN as well, or take it out."),
            _ => null,
        };
        return wrong is { } w
            ? (null, refusals.At(w.Member == "passDepthMm" ? "depth-above-thickness" : "cutter-unclear", $"{path}.{w.Member}", w.Message, w.Remedy))
            : (new CutterSetup(path)
            {
                DiameterMm = written.DiameterMm,
                Flutes = written.Flutes,
                Helix = written.Helix,
                HelixDeg = written.HelixDeg,
                SpindleRpm = written.SpindleRpm,
                FeedMmPerMin = written.FeedMmPerMin,
                PassDepthMm = written.PassDepthMm,
                WidthMm = written.WidthMm,
                Milling = written.Milling,
                CuttingForceNPerMm2 = written.CuttingForceNPerMm2,
                TangentialN = written.TangentialN,
                NormalN = written.NormalN,
                AxialN = written.AxialN,
            }, null);
    }

    private static Wood WoodOf(WrittenJob written, FileRefusals refusals, List<Finding> findings)
    {
        var own = written.Wood ?? new();
        var species = WoodTable.Find(written.Species);
        var wood = species is null ? Wood.Unknown(written.Species) : Wood.Of(species);
        if (own.DensityKgPerM3 is { } density)
        {
            wood = wood.WithDensity(density);
        }
        else if (species is null && !string.IsNullOrWhiteSpace(written.Species))
        {
            var near = WoodTable.Near(written.Species).Select(n => $"\"{n}\"");
            findings.Add(refusals.At(
                "species-unknown", "$.species",
                $"found \"{written.Species}\", which is not one wood of the table. {wood.Assumptions[0]}",
                $"Write {string.Join(" or ", near)} if that is the wood, or give its density in wood.densityKgPerM3.",
                Severity.Warning));
        }

        return wood with
        {
            AlongGrainMPa = own.AlongGrainGPa * 1000 ?? wood.AlongGrainMPa,
            Plate = own.AlongGrainGPa is { } gPa ? wood.Plate.WithAlong(gPa * 1000) : wood.Plate,
            LeakLPerMinPerM2 = own.LeakLPerMinPerM2 ?? wood.LeakLPerMinPerM2,
        };
    }
}
