namespace PodLayout.Programs;

/// <summary>The form of a tool's end.</summary>
public abstract record CutterForm
{
    /// <summary>Square: full diameter down to the tip.</summary>
    public sealed record Flat : CutterForm;

    /// <summary>Half a ball of the tool's diameter.</summary>
    public sealed record Ball : CutterForm;

    /// <summary>Flat with rounded corners.</summary>
    /// <param name="CornerRadiusMm">Radius of the corners, mm.</param>
    public sealed record Bull(double CornerRadiusMm) : CutterForm;

    /// <summary>A cone that comes to a point.</summary>
    /// <param name="AngleDeg">Whole angle at the point, degrees.</param>
    public sealed record Vee(double AngleDeg) : CutterForm;
}
