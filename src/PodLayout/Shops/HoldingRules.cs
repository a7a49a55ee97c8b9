namespace PodLayout.Shops;

/// <summary>How firmly a part is to be held.</summary>
/// <param name="TargetFactor">The holding factor that is aimed at: how many times the cutter's force could grow before the part moves.</param>
/// <param name="LeastFactor">A layout with a smaller factor is not handed over.</param>
/// <param name="Friction">Coefficient of friction between the pod's face and the part's underside.</param>
public sealed record HoldingRules(double TargetFactor, double LeastFactor, double Friction)
{
    /// <summary>
    /// Where the shop says nothing. Target 2: by analogy to EN 13155, which asks vacuum lifting gear for twice the load (from
    /// memory). Friction 0.4: rubber on dusty wood, at the lower end of what design tables give (from memory: measure it).
    /// </summary>
    public static HoldingRules Default { get; } = new(2, 1.5, 0.4);
}
