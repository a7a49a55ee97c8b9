namespace PodLayout.Programs;

/// <summary>A tool of the job's table.</summary>
/// <param name="Number">Its number in the program.</param>
/// <param name="DiameterMm">Greatest cutting diameter, mm.</param>
/// <param name="Form">Form of its end.</param>
public sealed record Tool(int Number, double DiameterMm, CutterForm Form)
{
    /// <summary>Greatest radius that the tool has anywhere up to a height above its tip, mm.</summary>
    public double RadiusUpTo(double heightMm)
    {
        var full = DiameterMm / 2;
        if (heightMm < 0)
        {
            return 0;
        }

        return Form switch
        {
            CutterForm.Ball => Round(0, full, heightMm),
            CutterForm.Bull bull => Round(full - Math.Min(full, bull.CornerRadiusMm), Math.Min(full, bull.CornerRadiusMm), heightMm),
            CutterForm.Vee vee => Math.Min(full, heightMm * Math.Tan(vee.AngleDeg / 2 * Math.PI / 180)),
            _ => full,
        };
    }

    // A flat of one radius with a quarter round of another about it.
    private static double Round(double flat, double corner, double height) =>
        height >= corner ? flat + corner : flat + Math.Sqrt(height * (2 * corner - height));
}
