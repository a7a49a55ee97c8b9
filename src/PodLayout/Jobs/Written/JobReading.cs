using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json.Nodes;
using PodLayout.Findings;
using PodLayout.Geometry;
using PodLayout.JsonFiles;
using PodLayout.Parts;
using PodLayout.Reading;
using PodLayout.Shops;

namespace PodLayout.Jobs.Written;

/// <summary>From <c>job.json</c>, or from options alone, to what is asked.</summary>
public static class JobReading
{
    /// <summary>Reads and checks a job file.</summary>
    /// <param name="file">Its name, for messages.</param>
    /// <param name="content">Its bytes.</param>
    /// <param name="overrides">Members given as options, which go before those in the file.</param>
    public static Outcome<JobRequest> Read(string file, byte[] content, ImmutableArray<MemberOverride> overrides) =>
        RequestFile.Read<WrittenJob>(file, content, overrides).Then(
            written => From(written, new FileRefusals(file) { Overrides = overrides }));

    /// <summary>A job without a job file: every member is an option or its default.</summary>
    /// <param name="overrides">The options; drawing and thickness at least.</param>
    public static Outcome<JobRequest> FromOptions(ImmutableArray<MemberOverride> overrides)
    {
        JsonObject bare = new() { ["version"] = RequestFile.Version };
        return Read("(options)", System.Text.Encoding.UTF8.GetBytes(bare.ToJsonString()), overrides);
    }

    private static Outcome<JobRequest> From(WrittenJob written, FileRefusals refusals)
    {
        List<Finding> notes = [];
        var (placement, wrong) = Placement(written.Placement, refusals, notes);
        if (placement is null)
        {
            return Outcome<JobRequest>.Refuse(wrong!);
        }

        if (written.OutlineLayer is { } outline
            && written.Layers.FirstOrDefault(l => string.Equals(l.Key, outline, StringComparison.OrdinalIgnoreCase)) is { Key: not null } role
            && role.Value != LayerRole.Outline)
        {
            return Outcome<JobRequest>.Refuse(refusals.At(
                "layer-twice",
                JsonWords.Child("$.layers", role.Key),
                $"layer \"{role.Key}\" is the outline layer, but is given here as \"{JsonWords.MemberName(role.Value.ToString())}\".",
                "Keep one of the two."));
        }

        var (avoid, badArea) = AvoidReading.Areas(written.Avoid, "$.avoid", refusals);
        var (avoidOnPart, badSpot) = AvoidReading.Areas(written.AvoidOnPart, "$.avoidOnPart", refusals);
        if ((badArea ?? badSpot) is { } wrongArea)
        {
            return Outcome<JobRequest>.Refuse(wrongArea);
        }

        var cuts = CutReading.From(written, refusals);
        if (!cuts.Succeeded)
        {
            return Outcome<JobRequest>.Refuse(cuts.Findings);
        }

        var holding = HoldingReading.From(written, refusals);
        if (!holding.Succeeded)
        {
            return Outcome<JobRequest>.Refuse(holding.Findings);
        }

        notes.AddRange(holding.Findings);
        var (along, across) = written.OverhangMm switch
        {
            WrittenOverhang.Same same => (same.Mm, same.Mm),
            WrittenOverhang.ByGrain byGrain => (byGrain.AlongGrainMm, byGrain.AcrossGrainMm),
            _ => throw new InvalidOperationException("Unknown form of the overhang."),
        };
        return Outcome<JobRequest>.Of(
            new JobRequest(
                written.Name is { Length: > 0 } name ? name : NameOfFile(written.Drawing),
                written.Drawing,
                written.Shop,
                new ReadingOptions(
                    written.Units is { } unit ? LengthUnit.TryParse(unit.ToString()) : null, written.ChordToleranceMm, written.JoinGapMm),
                new LayerRoles(written.OutlineLayer, CutReading.Layers(written))
                {
                    Part = written.Part,
                    OfCuts = [.. CutReading.Layers(written).Keys.Except(written.Layers.Keys, StringComparer.Ordinal)],
                },
                written.ThicknessMm,
                written.Species,
                written.GrainDeg,
                new Margins(written.SealMarginMm, written.CutClearanceMm),
                new SupportRules(along, across, written.InteriorSpanMm, written.EdgeStepMm, written.InteriorStepMm)
                {
                    ThinFloorSpanMm = written.ThinFloorSpanMm,
                    MustSupportAll = written.MustSupportAll,
                },
                placement)
            {
                Cuts = cuts.Value,
                Holding = holding.Value,
                File = refusals.File,
                Keep = [.. written.Keep.Select(k => new RequestedPod(k.Pod, k.Turned, k.Column - 1, k.Row - 1))],
                Avoid = [.. avoid.Select(a => new Obstacle(a.Name, ObstacleKind.Avoided, a.Shape, 0))],
                AvoidOnPart = [.. avoidOnPart.Select(a => new AvoidedSpot(a.Name, AvoidReading.RingOf(a.Shape)))],
            },
            notes);
    }

    private static (PlacementWish? Wish, Finding? Refusal) Placement(WrittenPlacement written, FileRefusals refusals, List<Finding> notes)
    {
        const string Path = "$.placement";
        if (written is not WrittenPlacement.InFull full)
        {
            return (new PlacementWish.Search([0]), null);
        }

        switch (full)
        {
            case { ZeroOnBoardMm: null, AngleDeg: null, SearchAnglesDeg.IsDefault: true, SearchAngle: { } interval }:
                return interval.ToDeg > interval.FromDeg && interval.ToDeg - interval.FromDeg <= 360
                    ? (new PlacementWish.SearchInterval(interval.FromDeg, interval.ToDeg), null)
                    : (null, refusals.At(
                        "interval-wrong",
                        Path + ".searchAngle.toDeg",
                        string.Create(
                            CultureInfo.InvariantCulture,
                            $"found {interval.ToDeg}; expected more than fromDeg ({interval.FromDeg}), by at most 360."),
                        "Write the smaller angle in fromDeg and the larger in toDeg; for one angle write searchAnglesDeg: [angle]."));
            case { ZeroOnBoardMm: { } zero, SearchAnglesDeg.IsDefault: true, SearchAngle: null }:
                return (new PlacementWish.Given(zero, full.AngleDeg ?? 0), null);
            case { ZeroOnBoardMm: null, AngleDeg: null, SearchAnglesDeg: { IsDefault: false } angles, SearchAngle: null }:
                ImmutableArray<double> distinct = [.. angles.DistinctBy(a => Turn.FromDegrees(a) is var t ? (t.Cos, t.Sin) : default)];
                if (distinct.Length < angles.Length)
                {
                    notes.Add(refusals.At(
                        "angle-twice", Path + ".searchAnglesDeg", "an angle stands here twice; it is tried once.", "Take it out.", Severity.Mended));
                }

                return (new PlacementWish.Search(distinct), null);
            case { ZeroOnBoardMm: null, AngleDeg: not null, SearchAnglesDeg.IsDefault: true, SearchAngle: null }:
                return (null, refusals.At(
                    "placement-unclear",
                    Path,
                    "found angleDeg alone; expected the place as well.",
                    "Add zeroOnBoardMm: [x, y] for an exact place, or write searchAnglesDeg: [angle] to search the place at that angle."));
            default:
                return (null, refusals.At(
                    "placement-unclear",
                    Path,
                    full is { ZeroOnBoardMm: null, SearchAnglesDeg.IsDefault: true, SearchAngle: null }
                        ? "found neither zeroOnBoardMm nor searchAnglesDeg nor searchAngle."
                        : "found several of zeroOnBoardMm (with angleDeg), searchAnglesDeg and searchAngle; expected one.",
                    "Give zeroOnBoardMm (with angleDeg) for an exact place, or searchAnglesDeg to search at those angles, or searchAngle for an interval of angles."));
        }
    }

    private static string NameOfFile(string path)
    {
        // Both separators on every system: a job file travels.
        var name = path[(path.LastIndexOfAny(['/', '\\']) + 1)..];
        var dot = name.LastIndexOf('.');
        return dot > 0 ? name[..dot] : name;
    }
}
