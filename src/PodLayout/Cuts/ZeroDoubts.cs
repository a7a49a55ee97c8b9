using System.Collections.Immutable;
using System.Globalization;
using PodLayout.Findings;
using PodLayout.Geometry;
using PodLayout.Jobs;
using PodLayout.JsonFiles;
using PodLayout.Parts;
using PodLayout.Programs;

namespace PodLayout.Cuts;

/// <summary>
/// Whether the depths of a program make sense with where its Z zero is said to lie, and if not, with which zero they would.
/// </summary>
/// <remarks>
/// Five things speak against a zero: that no cut reaches the part; that the deepest tip goes farther below its underside than cuts
/// do; that most of the fed way lies in the air above its face; that the program runs around the part and does no more than scratch
/// it; that rapid moves across pass below its face. A zero is only named when nothing speaks against it.
/// </remarks>
internal static class ZeroDoubts
{
    // Through cuts go a few tenths to a few millimetres below the underside; a bearing below a moulded edge some more. Common
    // practice, no source.
    private const double DeepestMm = 12;

    // Of the fed way along X and Y.
    private const double MostInAir = 0.5;

    // What runs mostly beyond the outline is meant to cut the part out, not to engrave it: shallower than this is a scratch, mm.
    // Common practice, no source.
    private const double ScratchMm = 3;

    private const double HairMm = 1e-6;

    /// <summary>A refusal where no cut reaches the part, a warning where the depths speak against the zero that is stated.</summary>
    /// <param name="path">The program.</param>
    /// <param name="request">What the job says.</param>
    /// <param name="podHeightsMm">Heights of the pods in stock.</param>
    /// <param name="part">The part.</param>
    public static Finding? Of(ToolPath path, CutRequest request, IReadOnlyList<double> podHeightsMm, Part part)
    {
        var fed = path.Stretches.Where(s => s.Kind is StretchKind.Line or StretchKind.Arc).ToList();
        if (fed.Count == 0 || request.Program is not { } program)
        {
            return null;
        }

        Way way = Ways(path, fed, request, part);
        var thicknessMm = part.ThicknessMm;
        var heights = podHeightsMm.Count == 0 ? [0] : podHeightsMm;
        var lowest = fed.MinBy(s => s.LowestZMm);
        var stated = heights.Select(h => Look(way, program.ZZero, thicknessMm, h)).MinBy(l => l.Against.Length)!;
        if (stated.Against.IsEmpty)
        {
            return null;
        }

        // Underside and pod face are the same height: one of them stands for both.
        var fitting = new[] { ZZero.PartFace, ZZero.PartUnderside, ZZero.BoardFace }
            .Where(z => z != program.ZZero && !(z == ZZero.PartUnderside && program.ZZero == ZZero.PodFace))
            .SelectMany(z => (z == ZZero.BoardFace ? heights : [.. heights.Take(1)]).Select(h => Look(way, z, thicknessMm, h)))
            .Where(l => l.Against.IsEmpty).ToList();
        var isOut = lowest.LowestZMm >= stated.UndersideZMm + thicknessMm;
        // One low rapid, or a slow way through the air, is no doubt about the zero unless another one explains it.
        if (!isOut && !stated.IsTooDeep && fitting.Count == 0)
        {
            return null;
        }

        var makesSense = fitting.Count == 0 ? "no other zero makes sense of its depths either"
            : string.Join("; ", fitting.Select(l => Text($"zZero {Words(l.Zero)} would make sense{(l.Zero == ZZero.BoardFace && heights.Count > 1 ? Text($" on pods of {l.HeightMm:0.##} mm") : "")}: {Deepest(lowest.LowestZMm - l.UndersideZMm)}")));
        return new(
            "zero-unlikely", isOut ? Severity.Refused : Severity.Warning, FindingKind.Program,
            Text($"with zZero {JsonWords.MemberName(program.ZZero.ToString())}, {string.Join(", and ", stated.Against)} (lowest Z {lowest.LowestZMm:0.###}, part {thicknessMm:0.##} mm thick); {makesSense}."),
            new Place.InFile(path.FileName, lowest.Line), "Correct zZero of the job's program, or the part's thickness.");
    }

    private sealed record Looked(ZZero Zero, double HeightMm, double UndersideZMm, ImmutableArray<string> Against, bool IsTooDeep);

    // What the heights are held against: the lowest tip, the fed moves across, how much of them runs beyond the outline, and the
    // lowest rapid move across.
    private sealed record Way(double LowestZMm, ImmutableArray<(double LowestZMm, double LengthMm)> Across, double ShareBeyond, double RapidZMm);

    private static Way Ways(ToolPath path, List<Stretch> fed, CutRequest request, Part part)
    {
        var inside = new RegionIndex(Region.Inside(part.Shape.Outline));
        var across = fed.Where(IsAcross).ToList();
        double beyond = 0, whole = 0;
        foreach (var stretch in across)
        {
            var middle = stretch.At(0.5);
            whole += stretch.LengthMm;
            beyond += inside.Contains(new Point2(middle.XMm, middle.YMm) + request.Program!.Offset) ? 0 : stretch.LengthMm;
        }

        return new(
            fed.Min(s => s.LowestZMm), [.. across.Select(s => (s.LowestZMm, s.LengthMm))], whole > 0 ? beyond / whole : 0,
            path.Stretches.Where(s => s.Kind == StretchKind.Rapid && IsAcross(s)).Select(s => s.LowestZMm).DefaultIfEmpty(double.PositiveInfinity).Min());
    }

    private static Looked Look(Way way, ZZero zero, double thickness, double height)
    {
        ProgramSetting setting = new(ImmutableSortedDictionary<int, Tool>.Empty, zero, thickness, height, 0, default);
        var tip = way.LowestZMm - setting.UndersideZMm;
        var against = ImmutableArray.CreateBuilder<string>();
        if (tip >= thickness)
        {
            against.Add(Text($"no cut reaches the part: the deepest tip stays {tip - thickness:0.##} mm above its face"));
        }

        if (tip < -DeepestMm)
        {
            against.Add(Text($"the deepest tip goes {-tip:0.##} mm below the underside"));
        }

        var whole = way.Across.Sum(s => s.LengthMm);
        var inAir = way.Across.Sum(s => s.LowestZMm >= setting.FaceZMm - HairMm ? s.LengthMm : 0);
        if (tip < thickness && inAir > MostInAir * whole)
        {
            against.Add(Text($"{100 * inAir / whole:0} % of the fed way lies in the air above the face"));
        }

        if (tip < thickness && tip > thickness - ScratchMm && tip > 0 && way.ShareBeyond > MostInAir)
        {
            against.Add(Text($"the way around the part is cut only {thickness - tip:0.##} mm deep"));
        }

        if (way.RapidZMm < setting.FaceZMm - HairMm)
        {
            against.Add(Text($"rapid moves across pass {setting.FaceZMm - way.RapidZMm:0.##} mm below the face"));
        }

        return new(zero, height, setting.UndersideZMm, against.ToImmutable(), tip < -DeepestMm);
    }

    private static bool IsAcross(Stretch s) => s.From.XMm != s.To.XMm || s.From.YMm != s.To.YMm || s.TurnRad != 0;

    private static string Words(ZZero zero) =>
        zero == ZZero.PartUnderside ? "partUnderside (or podFace)" : JsonWords.MemberName(zero.ToString());

    private static string Deepest(double tip) => tip < 0
        ? Text($"the deepest tip is then {-tip:0.##} mm below the underside") : Text($"the deepest tip is then {tip:0.##} mm above the underside");

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
