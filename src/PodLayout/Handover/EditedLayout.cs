using System.Globalization;
using System.Text;
using PodLayout.Findings;
using PodLayout.Geometry;
using PodLayout.Handover.Format;
using PodLayout.Reading.Rings;

namespace PodLayout.Handover;

/// <summary>Reads a <c>layout.json</c> that a person may have changed, so that it can be checked.</summary>
public static class EditedLayout
{
    // More points than this on a part of any size are a slip of a step or of a coordinate, and would only cost time.
    private const double MostPoints = 1e6;

    private static readonly UTF8Encoding Utf8 = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    /// <summary>
    /// Reads it. Members that only repeat or follow from others may contradict them: pods are numbered anew in the order in which they
    /// stand, and the listed support is dropped. Figures that no board and no part has are refused.
    /// </summary>
    /// <param name="fileName">Name for messages.</param>
    /// <param name="content">The file's bytes.</param>
    public static Outcome<LayoutFile> Read(string fileName, byte[] content)
    {
        string json;
        try
        {
            json = Utf8.GetString(content).TrimStart('\uFEFF');
        }
        catch (DecoderFallbackException)
        {
            return Refuse(
                "layout-not-json", "This is not text in UTF-8.", new Place.InFile(fileName), "Give the layout.json that the plan command wrote.");
        }

        return LayoutJson.Read(fileName, json, isEdited: true).Then(file => Checkable(fileName, file));
    }

    private static Outcome<LayoutFile> Checkable(string fileName, LayoutFile file)
    {
        if (file.Placement is null || file.Support is null)
        {
            return Refuse(
                "layout-none", "The file says that no layout was found: there is nothing to check.", new Place.InJson(fileName, "$.placement"),
                "Check a file that holds a layout.");
        }

        var wrong = LayoutFileBounds.First(file) ?? Lines(file);
        if (wrong is var (path, message))
        {
            return Refuse("layout-bad-figure", message, new Place.InJson(fileName, path), "Mend it, or write the file again with the plan command.");
        }

        var renumbered = file with
        {
            Pods = [.. file.Pods.Select((p, i) => p with { Id = LayoutFiling.PodId(i) })],
            Support = file.Support with { Points = [] },
        };
        var first = Enumerable.Range(0, file.Pods.Length).FirstOrDefault(i => file.Pods[i].Id != renumbered.Pods[i].Id, -1);
        return first < 0 ? Outcome<LayoutFile>.Of(renumbered) : Outcome<LayoutFile>.Of(renumbered, new Finding(
            "layout-renumbered", Severity.Note, FindingKind.Request,
            $"Pods are named here by their place in the list; \"{file.Pods[first].Id}\" is {renumbered.Pods[first].Id}, and so on.",
            new Place.InJson(fileName, string.Create(CultureInfo.InvariantCulture, $"$.pods[{first}].id"))));
    }

    // Lines that cross enclose no wood of which it could be said what is inside.
    private static (string Path, string Message)? Lines(LayoutFile file)
    {
        const string Path = "$.part.inDrawing";
        var part = LayoutJson.ToPlan(file with { Support = file.Support! with { Points = [] }, Pods = [] }).Job.Part.Shape;
        List<Ring> rings = [part.Outline, .. part.Holes, .. part.Defects, .. part.Avoided.Select(a => a.Ring)];
        foreach (var ring in rings.Where(r => r.AreaMm2 <= 0))
        {
            return (Path, string.Create(CultureInfo.InvariantCulture, $"The ring that begins at ({ring.Points[0].X:0.###}, {ring.Points[0].Y:0.###}) encloses nothing."));
        }

        var bounds = part.Outline.Bounds;
        var points = rings.Sum(r => r.PerimeterMm) / file.Rules.EdgeStepMm
            + (file.Rules.InteriorSpanMm is null ? 0 : bounds.Width * bounds.Height / Math.Pow(file.Rules.InteriorStepMm, 2))
            + part.Floors.SelectMany(f => f.Area.Boundary).Sum(r => r.AreaMm2) / Math.Pow(Math.Min(file.Rules.InteriorStepMm, file.Rules.ThinFloorSpanMm / 4), 2);
        if (points > MostPoints)
        {
            return (Path, string.Create(CultureInfo.InvariantCulture, $"A part of {bounds.Width:0.#} x {bounds.Height:0.#} mm has more than {MostPoints:0} points at the steps in $.rules."));
        }

        var firstDefect = 1 + part.Holes.Length;
        foreach (var c in RingCrossings.Find(rings).Where(c => c.First == c.Second || Math.Max(c.First, c.Second) < firstDefect))
        {
            return (Path, string.Create(CultureInfo.InvariantCulture, $"The part's lines cross or touch at ({c.Point.X:0.###}, {c.Point.Y:0.###})."));
        }

        foreach (var hole in part.Holes.Where(h => !Containment.IsInside(h, part.Outline)))
        {
            return (Path, string.Create(CultureInfo.InvariantCulture, $"The hole that begins at ({hole.Points[0].X:0.###}, {hole.Points[0].Y:0.###}) lies outside the outline."));
        }

        return null;
    }

    private static Outcome<LayoutFile> Refuse(string code, string message, Place place, string remedy) =>
        Outcome<LayoutFile>.Refuse(new Finding(code, Severity.Refused, FindingKind.Request, message, place, remedy));
}
