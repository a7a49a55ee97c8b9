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
        if (!(atLow < 0))
        {
            return low;
        }

        if (!(atHigh > 0))
        {
            return high;
        }

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
