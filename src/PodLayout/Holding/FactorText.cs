using System.Globalization;

namespace PodLayout.Holding;

/// <summary>A holding factor as it is shown and written.</summary>
public static class FactorText
{
    /// <summary>Two decimals, rounded down, so that nothing looks better than it is.</summary>
    public static string Of(double factor) => double.IsInfinity(factor)
        ? "not limited" : (Math.Floor(factor * 100 + 1e-4) / 100).ToString("0.##", CultureInfo.InvariantCulture);

    /// <summary>
    /// The same beside a factor that was asked for: what counts as reached is not written below it, for what the computation may be off.
    /// </summary>
    public static string Of(double factor, params ReadOnlySpan<double> asked)
    {
        foreach (var wish in asked)
        {
            if (factor < wish && factor >= wish * (1 - Tolerances.HoldingShare) - 1e-9)
            {
                return Asked(wish);
            }
        }

        return Of(factor);
    }

    /// <summary>A factor that was asked for, to as many digits as it has.</summary>
    public static string Asked(double factor) => factor.ToString("0.######", CultureInfo.InvariantCulture);

    /// <summary>As a file has it: three decimals, rounded down for the same reason.</summary>
    public static double Filed(double factor) => double.IsInfinity(factor) ? factor : Math.Floor(factor * 1000 + 1e-6) / 1000 + 0.0;
}
