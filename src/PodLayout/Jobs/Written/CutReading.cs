using System.Collections.Immutable;
using PodLayout.Findings;
using PodLayout.JsonFiles;
using PodLayout.Parts;
using PodLayout.Programs;

namespace PodLayout.Jobs.Written;

/// <summary>From the written cuts, program and blank to what is asked; checks what the schema cannot say.</summary>
internal static class CutReading
{
    /// <summary>What the job says of cuts.</summary>
    public static Outcome<CutRequest> From(WrittenJob written, FileRefusals refusals)
    {
        var operations = ImmutableArray.CreateBuilder<CutOperation>();
        for (var i = 0; i < written.Cuts.Length; i++)
        {
            var path = JsonWords.Child("$.cuts", i);
            if (Wrong(written.Cuts[i], path, written.ThicknessMm, refusals) is { } wrong)
            {
                return Outcome<CutRequest>.Refuse(wrong);
            }

            var (cutter, unclear) = HoldingReading.Cutter(
                written.Cuts[i].Cutter, path + ".cutter", written.Cuts[i].ToolDiameterMm is not null, written.ThicknessMm, refusals);
            if (unclear is not null)
            {
                return Outcome<CutRequest>.Refuse(unclear);
            }

            operations.Add(Operation(written.Cuts[i], path) with { Cutter = cutter });
        }

        var (all, refusal) = HoldingReading.Cutter(written.Cutter, "$.cutter", false, written.ThicknessMm, refusals);
        var (program, wrongProgram) = written.Program is { } given ? Program(given, written.ThicknessMm, refusals) : (null, null);
        refusal ??= wrongProgram ?? WrongBlank(written.Blank, refusals);
        return refusal is not null ? Outcome<CutRequest>.Refuse(refusal) : Outcome<CutRequest>.Of(new(
            operations.ToImmutable(),
            program,
            written.LowestTipMm,
            written.BoardClearanceMm,
            written.Blank is { } blank ? Blank(blank) : null)
        {
            Cutter = all,
            ThinFloorMm = written.ThinFloorMm,
            FloorLimits = new(written.FloorSagMm, written.FloorStressFactor),
        });
    }

    /// <summary>Layers whose lines an operation follows are no edges of the part, unless it cuts through or the job says otherwise.</summary>
    public static ImmutableSortedDictionary<string, LayerRole> Layers(WrittenJob written)
    {
        var layers = written.Layers;
        var named = written.Cuts
            .Where(c => c.Operation is not (CutKind.ThroughProfile or CutKind.Drill or CutKind.EdgeProfile)).Select(c => c.Layer)
            .Append(written.Blank?.Layer);
        foreach (var layer in named.OfType<string>().Where(name => !layers.Keys.Any(k => string.Equals(k, name, StringComparison.OrdinalIgnoreCase))))
        {
            layers = layers.SetItem(layer, LayerRole.Cut);
        }

        return layers;
    }

    private static BlankRequest Blank(WrittenBlank blank) => new(blank.Layer, blank.GrownByMm ?? 0, blank.DensityKgPerM3)
    {
        HoldOverKg = blank.HoldOverKg,
        MustHold = blank.MustHold,
    };

    private static CutOperation Operation(WrittenCut cut, string path) => new(
        cut.Operation,
        cut.Layer is { } layer ? new CutLines.OfLayer(layer) : cut.Along == WrittenEdges.Holes ? new CutLines.Holes() : new CutLines.Outline(),
        path)
    {
        Name = cut.Name,
        Side = cut.Side ?? CutSide.On,
        ToolDiameterMm = cut.ToolDiameterMm ?? 0,
        DiameterMm = cut.DiameterMm,
        LowestTipMm = cut.Operation switch
        {
            CutKind.ThroughProfile or CutKind.Drill or CutKind.EdgeProfile => cut.SkinMm ?? -(cut.DepthBelowUndersideMm ?? 0),
            CutKind.PocketFromFace => cut.FloorLeftMm!.Value,
            _ => 0,
        },
        ReachMm = cut.ReachMm ?? 0,
        DepthMm = cut.DepthMm,
        Tabs = cut.Tabs,
    };

    private static Finding? Wrong(WrittenCut cut, string path, double thicknessMm, FileRefusals refusals)
    {
        if (cut.Layer is null == cut.Along is null)
        {
            return refusals.At("cut-unclear", path, "found an operation with both layer and along, or with neither.", "Give layer, or along: outline or holes.");
        }

        // Member, whether it stands here, for which operations it is needed, and for which else it is allowed.
        (string Name, bool Stands, CutKind[] Needed, CutKind[] Allowed)[] members =
        [
            ("side", cut.Side is not null, [CutKind.ThroughProfile], []),
            ("toolDiameterMm", cut.ToolDiameterMm is not null, [CutKind.ThroughProfile, CutKind.EdgeProfile], [CutKind.GrooveInUnderside]),
            ("diameterMm", cut.DiameterMm is not null, [], [CutKind.Drill]),
            ("depthBelowUndersideMm", cut.DepthBelowUndersideMm is not null, [], [CutKind.ThroughProfile, CutKind.Drill, CutKind.EdgeProfile]),
            ("skinMm", cut.SkinMm is not null, [], [CutKind.ThroughProfile, CutKind.Drill]),
            ("tabs", cut.Tabs > 0, [], [CutKind.ThroughProfile]),
            ("floorLeftMm", cut.FloorLeftMm is not null, [CutKind.PocketFromFace], []),
            ("depthMm", cut.DepthMm is not null, [], [CutKind.GrooveInUnderside, CutKind.PocketInUnderside]),
            ("reachMm", cut.ReachMm is not null, [], [CutKind.EdgeProfile]),
        ];
        var word = JsonWords.MemberName(cut.Operation.ToString());
        foreach (var (name, stands, needed, allowed) in members)
        {
            if (!stands && needed.Contains(cut.Operation))
            {
                return refusals.At("cut-unclear", JsonWords.Child(path, name), $"this member is missing; {word} needs it.", "Add it.");
            }

            if (stands && !needed.Contains(cut.Operation) && !allowed.Contains(cut.Operation))
            {
                return refusals.At("cut-unclear", JsonWords.Child(path, name), $"this member means nothing for {word}.", "Take it out.");
            }
        }

        foreach (var (name, left) in new[] { ("floorLeftMm", cut.FloorLeftMm), ("skinMm", cut.SkinMm) })
        {
            if (left >= thicknessMm)
            {
                return refusals.At(
                    "cut-unclear", JsonWords.Child(path, name),
                    $"found {JsonWords.Number(left.Value)} mm of wood left in a part {JsonWords.Number(thicknessMm)} mm thick: nothing would be cut.",
                    "Give the thickness of the wood that stays at the bottom.");
            }
        }

        if (cut.DepthMm >= thicknessMm)
        {
            return refusals.At(
                "cut-unclear", JsonWords.Child(path, "depthMm"),
                $"found {JsonWords.Number(cut.DepthMm.Value)} mm in a part {JsonWords.Number(thicknessMm)} mm thick: that goes through.",
                "Give the depth of the groove or pocket, or make it a through cut.");
        }

        return cut is { SkinMm: not null, DepthBelowUndersideMm: not null }
            ? refusals.At("cut-unclear", path, "found skinMm together with depthBelowUndersideMm.", "Keep the one that is real.") : null;
    }

    private static (ProgramRequest? Program, Finding? Refusal) Program(WrittenProgram written, double thicknessMm, FileRefusals refusals)
    {
        var cutters = ImmutableSortedDictionary.CreateBuilder<int, CutterSetup>();
        var tools = ImmutableSortedDictionary.CreateBuilder<int, Tool>();
        for (var i = 0; i < written.Tools.Length; i++)
        {
            var tool = written.Tools[i];
            var path = JsonWords.Child("$.program.tools", i);
            if (WrongTool(tool) is { } wrong)
            {
                return (null, refusals.At("tool-unclear", path, wrong, "Mend the tool."));
            }

            var (cutter, unclear) = HoldingReading.Cutter(tool.Cutter, path + ".cutter", true, thicknessMm, refusals);
            if (unclear is not null)
            {
                return (null, unclear);
            }

            if (cutter is not null)
            {
                cutters[tool.Number] = cutter;
            }

            if (!tools.TryAdd(tool.Number, new Tool(tool.Number, tool.DiameterMm, Form(tool))))
            {
                return (null, refusals.At("tool-twice", path, $"tool {JsonWords.Number(tool.Number)} stands here twice.", "Keep one of them."));
            }
        }

        return (new ProgramRequest(
            written.File, tools.ToImmutable(), written.ZZero, written.OffsetMm, written.ArcToleranceMm, written.SlashLinesLeftOut)
        {
            Cutters = cutters.ToImmutable(),
        }, null);
    }

    private static string? WrongTool(WrittenTool tool) => tool switch
    {
        { CornerForm: WrittenCutterForm.Bull, CornerRadiusMm: null } => "found a bull-nosed tool without cornerRadiusMm.",
        { CornerForm: WrittenCutterForm.Vee, AngleDeg: null } => "found a vee tool without angleDeg.",
        { CornerRadiusMm: { } corner } when tool.CornerForm != WrittenCutterForm.Bull || corner > tool.DiameterMm / 2 =>
            "found cornerRadiusMm on a tool that is not bull-nosed, or larger than half its diameter.",
        { AngleDeg: not null } when tool.CornerForm != WrittenCutterForm.Vee => "found angleDeg on a tool that is no vee.",
        _ => null,
    };

    private static CutterForm Form(WrittenTool tool) => tool.CornerForm switch
    {
        WrittenCutterForm.Ball => new CutterForm.Ball(),
        WrittenCutterForm.Bull => new CutterForm.Bull(tool.CornerRadiusMm!.Value),
        WrittenCutterForm.Vee => new CutterForm.Vee(tool.AngleDeg!.Value),
        _ => new CutterForm.Flat(),
    };

    private static Finding? WrongBlank(WrittenBlank? blank, FileRefusals refusals) =>
        blank is not null && blank.Layer is null == blank.GrownByMm is null
            ? refusals.At("blank-unclear", "$.blank", "found a blank with both layer and grownByMm, or with neither.", "Give one of the two.")
            : blank is { MustHold: true, HoldOverKg: null }
            ? refusals.At("blank-unclear", "$.blank.mustHold", "found mustHold without holdOverKg.", "Say in holdOverKg which pieces are to be held.") : null;
}
