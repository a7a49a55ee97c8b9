namespace PodLayout.Reading;

/// <summary>A unit in which a drawing may be made.</summary>
/// <param name="Name">Name for messages, for instance <c>inch</c>.</param>
/// <param name="MmPerUnit">Length of one unit, mm.</param>
public sealed record LengthUnit(string Name, double MmPerUnit)
{
    /// <summary>Millimetre.</summary>
    public static LengthUnit Millimetre { get; } = new("millimetre", 1);

    /// <summary>Inch, 25.4 mm exactly.</summary>
    public static LengthUnit Inch { get; } = new("inch", 25.4);

    /// <summary>Whether whoever draws in it thinks in inches.</summary>
    public bool IsImperial => Name.Contains("inch", StringComparison.Ordinal) || Name.Contains("foot", StringComparison.Ordinal) || Name.Contains("yard", StringComparison.Ordinal) || Name is "mil" or "mile";

    /// <summary>The abbreviations that <see cref="TryParse"/> takes.</summary>
    public const string Abbreviations = "mm, cm, m, in, ft, um, mil";

    /// <summary>Reads an abbreviation such as <c>mm</c> or <c>in</c>; case does not matter; null when it is none.</summary>
    public static LengthUnit? TryParse(string text) => text.Trim().ToLowerInvariant() switch
    {
        "mm" => Millimetre,
        "cm" => new("centimetre", 10),
        "m" => new("metre", 1000),
        "in" or "inch" => Inch,
        "ft" => new("foot", 304.8),
        "um" or "µm" => new("micrometre", 0.001),
        "mil" => new("mil", 0.0254),
        _ => null,
    };

    /// <summary>The unit that a DXF header means by its <c>$INSUNITS</c>; null for 0 and for codes that mean no length a part is drawn in.</summary>
    public static LengthUnit? FromInsUnits(int code) => code switch
    {
        1 => Inch,
        2 => new("foot", 304.8),
        3 => new("mile", 1609344),
        4 => Millimetre,
        5 => new("centimetre", 10),
        6 => new("metre", 1000),
        7 => new("kilometre", 1e6),
        8 => new("microinch", 25.4e-6),
        9 => new("mil", 0.0254),
        10 => new("yard", 914.4),
        11 => new("ångström", 1e-7),
        12 => new("nanometre", 1e-6),
        13 => new("micrometre", 0.001),
        14 => new("decimetre", 100),
        15 => new("decametre", 1e4),
        16 => new("hectometre", 1e5),
        21 => new("US survey foot", 1200000.0 / 3937),
        22 => new("US survey inch", 100000.0 / 3937),
        23 => new("US survey yard", 3600000.0 / 3937),
        _ => null,
    };
}
