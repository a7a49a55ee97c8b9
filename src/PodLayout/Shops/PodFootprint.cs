namespace PodLayout.Shops;

/// <summary>What a pod covers of the board, seen from above.</summary>
public abstract record PodFootprint
{
    /// <summary>Extent along the board's X, unturned, mm.</summary>
    public abstract double ExtentXMm { get; }

    /// <summary>Extent along the board's Y, unturned, mm.</summary>
    public abstract double ExtentYMm { get; }

    /// <summary>A rectangular pod.</summary>
    /// <param name="WidthMm">Along X when not turned.</param>
    /// <param name="LengthMm">Along Y when not turned.</param>
    public sealed record Rectangle(double WidthMm, double LengthMm) : PodFootprint
    {
        /// <inheritdoc/>
        public override double ExtentXMm => WidthMm;

        /// <inheritdoc/>
        public override double ExtentYMm => LengthMm;
    }

    /// <summary>A round pod.</summary>
    /// <param name="DiameterMm">Diameter.</param>
    public sealed record Round(double DiameterMm) : PodFootprint
    {
        /// <inheritdoc/>
        public override double ExtentXMm => DiameterMm;

        /// <inheritdoc/>
        public override double ExtentYMm => DiameterMm;
    }
}
