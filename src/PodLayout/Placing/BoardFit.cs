using System.Globalization;
using PodLayout.Findings;
using PodLayout.Geometry;
using PodLayout.Jobs;

namespace PodLayout.Placing;

/// <summary>Whether the part is small enough for the board at all: asked first, since a wrong unit makes a part 25 times too large.</summary>
internal static class BoardFit
{
    /// <summary>
    /// The finding that the part reaches beyond the usable area by more than it may overhang, wherever it lies; null when it
    /// need not.
    /// </summary>
    public static Finding? TooLarge(Job job)
    {
        var usable = job.Shop.Board.UsableArea;
        var overhang = Math.Max(job.Support.OverhangAlongGrainMm, job.Support.OverhangAcrossGrainMm);
        double width = usable.Width + 2 * overhang, length = usable.Height + 2 * overhang;
        var fits = job.Placement switch
        {
            PlacementWish.Given given => Fits(given.AngleDeg) && LiesOnBoard(given),
            PlacementWish.Search search => search.AnglesDeg.Any(Fits),
            // At some angle: a longest side no longer than the board's diagonal is all that is asked here.
            _ => Math.Max(job.Part.Shape.Outline.Bounds.Width, job.Part.Shape.Outline.Bounds.Height)
                <= new Point2(width, length).Length,
        };
        if (fits)
        {
            return null;
        }

        var part = job.Part.Shape.Outline.Bounds;
        return new(
            "part-larger-than-board", Severity.Refused, FindingKind.NoLayout,
            string.Create(
                CultureInfo.InvariantCulture,
                $"The part, {part.Width:0.#} x {part.Height:0.#} mm, reaches too far off the board: pods stand within {usable.Width:0.#} x {usable.Height:0.#} mm of the board, and an edge may reach {overhang:0.#} mm beyond that at most."),
            null, "Check the drawing's unit (--units), lay or turn the part otherwise, or take a larger board.");

        bool LiesOnBoard(PlacementWish.Given given) => usable.Grow(overhang).Contains(
            job.Part.Shape.Outline.Laid(Turn.FromDegrees(given.AngleDeg), given.ZeroOnBoard).Bounds);

        bool Fits(double angleDeg)
        {
            var turned = job.Part.Shape.Outline.Laid(Turn.FromDegrees(angleDeg), default).Bounds;
            return turned.Width <= width && turned.Height <= length;
        }
    }
}
