using PodLayout.Holding;

namespace PodLayout.Tests.Holding;

public class SlideAndTwistTests
{
    // The kinematic theorem of limit analysis (textbooks of plasticity, from memory): no motion may ask more of a load that is borne
    // than friction takes up in it. Two thousand motions at random, and the pure slides and twists about each spot.
    [Fact]
    public void What_is_surely_borne_no_motion_at_random_denies_and_little_less_than_the_most_is_surely_borne()
    {
        var random = new Random(20261129);
        var (told, asked) = (0, 0);
        for (var round = 0; round < 60; round++)
        {
            var count = random.Next(4, 40);
            double[] x = [.. Enumerable.Range(0, count).Select(_ => random.NextDouble() - 0.5)], y = [.. Enumerable.Range(0, count).Select(_ => random.NextDouble() - 0.5)];
            double[] caps = [.. Enumerable.Range(0, count).Select(_ => random.Next(5) == 0 ? 0 : 20 * random.NextDouble())];
            (double X, double Y, double Z) push = (random.NextDouble() - 0.5, random.NextDouble() - 0.5, random.NextDouble() - 0.5);
            var plane = new SlideAndTwist(x, y);
            var most = Denied(caps, x, y, push, random);
            Assert.False(plane.SurelyBears(caps, push, most * 1.001), $"round {round}: more than {most}");
            Assert.False(plane.SurelyBears(caps, push, most * 1.2), $"round {round}: far more than {most}");
            var (factor, _, _, _) = plane.Largest(caps, push);
            Assert.False(plane.SurelyBears(caps, push, factor * (1 + 1e-5)), $"round {round}: more than {factor}");
            asked++;
            told += plane.SurelyBears(caps, push, factor * 0.98) ? 1 : 0;
        }

        // What it is for: nearly all that is borne is told quickly.
        Assert.True(told >= 0.9 * asked, $"{told} of {asked}");
    }

    // The least multiple that a motion denies.
    private static double Denied(double[] caps, double[] x, double[] y, (double X, double Y, double Z) push, Random random)
    {
        var least = double.PositiveInfinity;
        for (var i = 0; i < 2000; i++)
        {
            Try(random.NextDouble() - 0.5, random.NextDouble() - 0.5, 4 * (random.NextDouble() - 0.5));
        }

        Try(push.X, push.Y, 0);
        for (var i = 0; i < x.Length; i++)
        {
            Try(y[i], -x[i], 1);
        }

        return least;

        void Try(double vx, double vy, double turn)
        {
            var work = push.X * vx + push.Y * vy + push.Z * turn;
            var taken = caps.Select((c, i) => c * Math.Sqrt(Math.Pow(vx - turn * y[i], 2) + Math.Pow(vy + turn * x[i], 2))).Sum();
            least = Math.Abs(work) < 1e-9 ? least : Math.Min(least, taken / Math.Abs(work));
        }
    }
}
