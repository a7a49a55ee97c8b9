namespace PodLayout.BoardMaking;

/// <summary>Tool and feed of one operation.</summary>
/// <param name="ToolDiameterMm">Diameter of the tool.</param>
/// <param name="FeedMmPerMin">Feed.</param>
/// <param name="StepDownMm">Greatest depth of one pass.</param>
public sealed record Cut(double ToolDiameterMm, double FeedMmPerMin, double StepDownMm)
{
    /// <summary>Passes that a depth takes.</summary>
    public int Passes(double depthMm) => Math.Max(1, (int)Math.Ceiling(depthMm / StepDownMm - 1e-9));
}
