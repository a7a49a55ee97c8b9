namespace PodLayout.Reading.Curves;

/// <summary>Points on one curve of an entity, before it is known whether it lies flat.</summary>
/// <param name="Points">Points in mm; the first is not repeated when closed.</param>
/// <param name="Closed">Whether the last point joins the first.</param>
internal sealed record Chain(List<Point3> Points, bool Closed)
{
    /// <summary>What its curves enclose and are long beyond the chords.</summary>
    public CurveExcess Excess { get; init; } = new();

    /// <summary>Largest radius of an arc or ellipse, mm; 0 for what is neither.</summary>
    public double RadiusMm { get; init; }

    /// <summary>How much shorter the chain gets when seen from above, mm.</summary>
    public double ForeshorteningMm
    {
        get
        {
            double sum = 0;
            for (var i = 1; i < Points.Count; i++)
            {
                var d = Points[i] - Points[i - 1];
                sum += d.Length - Math.Sqrt(d.X * d.X + d.Y * d.Y);
            }

            return sum;
        }
    }

    public double LengthMm
    {
        get
        {
            double sum = 0;
            for (var i = 1; i < Points.Count; i++)
                sum += (Points[i] - Points[i - 1]).Length;
            return sum;
        }
    }
}
