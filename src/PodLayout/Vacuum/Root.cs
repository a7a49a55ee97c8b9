namespace PodLayout.Vacuum;

/// <summary>Where a rising function passes zero.</summary>
internal static class Root
{
    private const int MostSteps = 200;

    /// <summary>
    /// A point within a tolerance of where the function passes zero. The ends are taken to lie below and above it; where one does
    /// not, that end is the answer.
    /// </summary>
    /// <remarks>
    /// False position with halved weights (Dowell and Jarratt 1971, the Illinois method), and a plain halving wherever that has
    /// not halved the bracket in three steps: the bracket never opens, so that the answer is always within it.
    /// </remarks>
    public static double Rising(Func<double, double> function, double low, double high, double tolerance)
    {
        double atLow = function(low), atHigh = function(high);
        return !(atLow < 0) ? low : !(atHigh > 0) ? high : Between(function, low, atLow, high, atHigh, tolerance);
    }

    /// <summary>The same with a guess, near which the function is looked at first.</summary>
    public static double Rising(Func<double, double> function, double low, double high, double guess, double tolerance)
    {
        const double Share = 1e-3;
        double below = Math.Max(low, guess * (1 - Share)), above = Math.Min(high, guess * (1 + Share));
        if (!(below > low && above < high && below < above))
        {
            return Rising(function, low, high, tolerance);
        }

        double atBelow = function(below), atAbove = function(above);
        return (atBelow < 0, atAbove > 0) switch
        {
            (true, true) => Between(function, below, atBelow, above, atAbove, tolerance),
            (false, _) => Rising(function, low, below, tolerance),
            _ => Rising(function, above, high, tolerance),
        };
    }

    private static double Between(
        Func<double, double> function, double low, double atLow, double high, double atHigh, double tolerance)
    {
        double width = high - low;
        var since = 0;
        var side = 0;
        for (var step = 0; step < MostSteps && high - low > tolerance; step++)
        {
            var middle = since >= 3 ? (low + high) / 2 : (low * atHigh - high * atLow) / (atHigh - atLow);
            middle = middle > low && middle < high ? middle : (low + high) / 2;
            var value = function(middle);
            if (value == 0 || middle == low || middle == high)
            {
                return middle;
            }

            if (value < 0)
            {
                (low, atLow) = (middle, value);
                atHigh = side == -1 ? atHigh / 2 : atHigh;
                side = -1;
            }
            else
            {
                (high, atHigh) = (middle, value);
                atLow = side == 1 ? atLow / 2 : atLow;
                side = 1;
            }

            (width, since) = high - low <= width / 2 ? (high - low, 0) : (width, since + 1);
        }

        return (low + high) / 2;
    }
}
