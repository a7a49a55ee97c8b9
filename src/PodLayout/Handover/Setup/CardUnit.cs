using System.Globalization;
using PodLayout.Geometry;
using PodLayout.Layouts;
using PodLayout.Shops;

namespace PodLayout.Handover.Setup;

/// <summary>The unit that lengths on the card are given in.</summary>
/// <param name="InInches">Whether it is the inch; else the millimetre.</param>
internal sealed record CardUnit(bool InInches)
{
    // By definition (NIST Special Publication 811, appendix B).
    private const double MmPerInch = 25.4;

    public static CardUnit Of(PlanResult result, CardOptions options) => new(options.InInches ?? result.Job.Shop.WorksInInches);

    public string Name => InInches ? "in" : "mm";

    /// <summary>A length: mm to a thousandth, as every output gives it; inches to a ten-thousandth.</summary>
    public string Length(double mm) => InInches
        ? (Math.Round(mm / MmPerInch, 4, MidpointRounding.AwayFromZero) + 0.0).ToString("0.####", CultureInfo.InvariantCulture) : CsvText.Mm(mm);

    /// <summary>A length to a tenth of a millimetre or a hundredth of an inch, for what is measured by eye.</summary>
    public string Rough(double mm) => InInches
        ? (Math.Round(mm / MmPerInch, 2, MidpointRounding.AwayFromZero) + 0.0).ToString("0.##", CultureInfo.InvariantCulture)
        : CsvText.Mm(Math.Round(mm, 1, MidpointRounding.AwayFromZero));

    public string LengthAndUnit(double mm) => Length(mm) + " " + Name;

    public string Place(Point2 p) => $"X {Length(p.X)}, Y {Length(p.Y)} {Name}";

    /// <summary>A coordinate as grooves counted from the datum and what is left to measure: "13 + 12.4".</summary>
    /// <param name="coordinate">From the datum, mm.</param>
    /// <param name="first">The first groove, mm.</param>
    /// <param name="board">The board.</param>
    public string Grooves(double coordinate, double first, GridBoard board)
    {
        var index = (int)Math.Floor((coordinate - first + Tolerances.ContactMm) / board.PitchMm);
        var rest = coordinate - first - index * board.PitchMm;
        return index >= 0
            ? $"{CsvText.Count(index + 1)} + {Rough(Math.Max(0, rest))}"
            : $"1 - {Rough(first - coordinate)}";
    }
}
