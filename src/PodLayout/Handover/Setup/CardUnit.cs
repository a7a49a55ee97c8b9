using System.Globalization;
using System.Text.RegularExpressions;
using PodLayout.Geometry;
using PodLayout.Layouts;
using PodLayout.Shops;

namespace PodLayout.Handover.Setup;

/// <summary>The unit that lengths on the card are given in.</summary>
/// <param name="InInches">Whether it is the inch; else the millimetre.</param>
internal sealed partial record CardUnit(bool InInches)
{
    // By definition; the force with the standard acceleration of gravity (NIST Special Publication 811, appendix B).
    private const double KgPerPound = 0.45359237;
    private const double NewtonPerPound = 4.4482216152605;

    public static CardUnit Of(PlanResult result, CardOptions options) => new(options.InInches ?? result.Job.Shop.WorksInInches);

    public string Name => InInches ? "in" : "mm";

    /// <summary>A length to a thousandth of the unit, as the other files give it.</summary>
    public string Length(double mm) => InInches ? CsvText.Inches(mm) : CsvText.Mm(mm);

    /// <summary>A length to a tenth of a millimetre or a hundredth of an inch, for what is measured by eye.</summary>
    public string Rough(double mm) => InInches
        ? (Math.Round(mm / CsvText.MmPerInch, 2, MidpointRounding.AwayFromZero) + 0.0).ToString("0.##", CultureInfo.InvariantCulture)
        : CsvText.Mm(Math.Round(mm, 1, MidpointRounding.AwayFromZero));

    /// <summary>Where an edge lies: to a tenth of a millimetre or a thousandth of an inch, since a hundredth is half of what it may be off.</summary>
    public string Edge(double mm) => InInches ? CsvText.Inches(mm) : Rough(mm);

    /// <summary>What must not be passed, rounded down to what <see cref="Edge"/> gives, with its unit.</summary>
    public string AtMost(double mm)
    {
        var (length, steps) = InInches ? (mm / CsvText.MmPerInch, 1000.0) : (mm, 10.0);
        return (Math.Floor(length * steps + 1e-9) / steps).ToString("0.###", CultureInfo.InvariantCulture) + " " + Name;
    }

    public string LengthAndUnit(double mm) => Length(mm) + " " + Name;

    /// <summary>A sentence that was written in millimetres, with each length in inches first where the card is in inches.</summary>
    public string Words(string text) => !InInches ? text : Millimetres().Replace(
        Places().Replace(text, found => $"X {Inches(found.Groups["x"])}, Y {Inches(found.Groups["y"])} in"),
        found => $"{string.Join(" x ", found.Groups["mm"].Captures.Select(Inches))} in ({found.Value})");

    private string Inches(Capture mm) => Rough(double.Parse(mm.ValueSpan, CultureInfo.InvariantCulture));

    // Places on the board carry no unit of their own.
    [GeneratedRegex(@"\bX (?<x>-?[0-9]+(?:\.[0-9]+)?), Y (?<y>-?[0-9]+(?:\.[0-9]+)?)(?: mm\b)?")]
    private static partial Regex Places();

    [GeneratedRegex(@"(?<![\w.,(-])(?<mm>-?[0-9]+(?:\.[0-9]+)?)(?: x (?<mm>[0-9]+(?:\.[0-9]+)?))? mm\b")]
    private static partial Regex Millimetres();

    /// <summary>A pod's size as it stands unturned, from left to right by from near to far.</summary>
    public string Size(PodType type) => type.Footprint is PodFootprint.Round round
        ? $"{Rough(round.DiameterMm)} {Name} across" : $"{Rough(type.Footprint.ExtentXMm)} x {Rough(type.Footprint.ExtentYMm)} {Name}";

    /// <summary>Whether the name that the shop gave a type says its size in this unit.</summary>
    public bool SaysSize(PodType type) => InInches ? type.Name.Contains(Size(type), StringComparison.Ordinal)
        : new[] { type.Footprint.ExtentXMm, type.Footprint.ExtentYMm }.All(mm => type.Name.Contains(CsvText.Mm(mm), StringComparison.Ordinal));

    /// <summary>What masses are given in.</summary>
    public string MassName => InInches ? "lb" : "kg";

    /// <summary>A mass in the unit of <see cref="MassName"/>.</summary>
    public string Mass(double kg) => (InInches ? kg / KgPerPound : kg).ToString("0.###", CultureInfo.InvariantCulture);

    /// <summary>A force, with its unit.</summary>
    public string Force(double newton) => InInches
        ? string.Create(CultureInfo.InvariantCulture, $"{newton / NewtonPerPound:0} lbf ({newton:0} N)") : string.Create(CultureInfo.InvariantCulture, $"{newton:0} N");

    public string Place(Point2 p) => $"X {Length(p.X)}, Y {Length(p.Y)} {Name}";

    /// <summary>A coordinate as grooves counted from the datum and what is left to measure: "13 + 12.4".</summary>
    /// <param name="coordinate">From the datum, mm.</param>
    /// <param name="first">The first groove, mm.</param>
    /// <param name="board">The board.</param>
    public string Grooves(double coordinate, double first, GridBoard board)
    {
        var index = (int)Math.Floor((coordinate - first + Tolerances.ContactMm) / board.PitchMm);
        var rest = coordinate - first - index * board.PitchMm;

        // What is written as a whole pitch is the next groove.
        if (index >= -1 && Edge(rest) == Edge(board.PitchMm))
        {
            (index, rest) = (index + 1, 0);
        }

        return index >= 0
            ? $"{CsvText.Count(index + 1)} + {Edge(Math.Max(0, rest))}"
            : $"1 - {Edge(first - coordinate)}";
    }
}
