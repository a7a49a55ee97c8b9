using System.Globalization;
using PodLayout.Findings;
using PodLayout.Geometry;
using PodLayout.Jobs;
using PodLayout.Parts;
using PodLayout.Programs;

namespace PodLayout.Cuts;

/// <summary>
/// Whether a program is in the other unit than its G20 or G21 says: read as it is it is far too large or too small for the part, and
/// read in the other unit it runs around it.
/// </summary>
public static class UnitDoubts
{
    // By definition.
    private const double MmPerInch = 25.4;

    // A program that cuts a part out runs about as far as the part reaches, a tool and a blank's edge beyond it. Common practice, no
    // source.
    private const double LeastShare = 0.75;
    private const double MostShare = 1.25;
    private const double BeyondMm = 80;

    /// <summary>A warning that names the word that would make sense; null where the unit does, or no other makes more sense.</summary>
    /// <param name="path">The program.</param>
    /// <param name="request">What the job says of cuts.</param>
    /// <param name="part">The part.</param>
    public static Finding? Of(ToolPath path, CutRequest request, Part part)
    {
        if (request.Program is null || Extent(path) is not { } way)
        {
            return null;
        }

        var bounds = part.Shape.Outline.Bounds;
        var scale = path.InInches ? 1 / MmPerInch : MmPerInch;
        if (!Runs(way.Width * scale, bounds.Width) || !Runs(way.Height * scale, bounds.Height))
        {
            return null;
        }

        var (stated, other) = path.InInches ? ("G20 (inches)", "G21 (millimetres)") : ("G21 (millimetres)", "G20 (inches)");
        return new(
            "unit-unlikely", Severity.Warning, FindingKind.Program,
            Text($"read as {stated} the program runs over {way.Width:0.#} x {way.Height:0.#} mm, the part is {bounds.Width:0.#} x {bounds.Height:0.#} mm; {other} would make sense: {way.Width * scale:0.#} x {way.Height * scale:0.#} mm."),
            new Place.InFile(path.FileName, path.Stretches[0].Line), "Post it with the unit that its figures are in.");
    }

    /// <summary>The same where no part is known: in inches, larger than any machine of the kind.</summary>
    /// <param name="path">The program.</param>
    public static Finding? Alone(ToolPath path)
    {
        const double largestMm = 5000;
        return !path.InInches || Extent(path) is not { } way || Math.Max(way.Width, way.Height) <= largestMm ? null : new(
            "unit-unlikely", Severity.Warning, FindingKind.Program,
            Text($"read as G20 (inches) the program runs over {way.Width:0} x {way.Height:0} mm, more than such machines reach; G21 (millimetres) would make sense: {way.Width / MmPerInch:0.#} x {way.Height / MmPerInch:0.#} mm."),
            new Place.InFile(path.FileName, path.Stretches[0].Line), "Post it with the unit that its figures are in.");
    }

    private static bool Runs(double mm, double partMm) => mm >= LeastShare * partMm && mm <= MostShare * partMm + BeyondMm;

    private static Box2? Extent(ToolPath path)
    {
        var fed = path.Stretches.Where(s => s.Kind is StretchKind.Line or StretchKind.Arc).SelectMany(s => new[] { s.From, s.To }).ToList();
        return fed.Count == 0 ? null : new(fed.Min(p => p.XMm), fed.Min(p => p.YMm), fed.Max(p => p.XMm), fed.Max(p => p.YMm));
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
