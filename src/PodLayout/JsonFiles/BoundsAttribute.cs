namespace PodLayout.JsonFiles;

/// <summary>The range of a number of a JSON file; of an array or a point, that of each number in it.</summary>
[AttributeUsage(AttributeTargets.Property)]
internal sealed class BoundsAttribute : Attribute
{
    /// <summary>What a number without bounds of its own may be: nothing in a shop is farther away.</summary>
    public static BoundsAttribute Widest { get; } = new();

    /// <summary>The number must be greater than this; NaN for no such rule.</summary>
    public double Over { get; init; } = double.NaN;

    /// <summary>Least value allowed.</summary>
    public double From { get; init; } = -Tolerances.LargestCoordinateMm;

    /// <summary>Greatest value allowed.</summary>
    public double To { get; init; } = Tolerances.LargestCoordinateMm;

    public bool Allows(double value) => value >= From && value <= To && !(value <= Over);

    public string InWords() => (double.IsNaN(Over), From) switch
    {
        (false, _) => $"more than {JsonWords.Number(Over)}, at most {JsonWords.Number(To)}",
        (true, _) => $"from {JsonWords.Number(From)} to {JsonWords.Number(To)}",
    };
}
