using System.Globalization;

namespace PodLayout.Holding;

/// <summary>A holding factor as it is shown and written.</summary>
public static class FactorText
{
    /// <summary>Two decimals, rounded down, so that nothing looks better than it is.</summary>
    public static string Of(double factor) => double.IsInfinity(factor)
        ? "not limited" : (Math.Floor(factor * 100 + 1e-4) / 100).ToString("0.##", CultureInfo.InvariantCulture);

    /// <summary>As a file has it: three decimals, rounded down for the same reason.</summary>
    public static double Filed(double factor) => double.IsInfinity(factor) ? factor : Math.Floor(factor * 1000 + 1e-6) / 1000 + 0.0;
}
