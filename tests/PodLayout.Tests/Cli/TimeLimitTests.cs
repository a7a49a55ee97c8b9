using PodLayout.Cli;
using static PodLayout.Tests.Reading.Drawings;

namespace PodLayout.Tests.Cli;

/// <summary>A time limit is one for the whole command, reading included.</summary>
public class TimeLimitTests
{
    // Told by a clock of the test's own: so many seconds pass between one look at it and the next.
    private sealed class Clock(double seconds) : TimeProvider
    {
        private long _looks;

        public override long TimestampFrequency => 1000;

        public override long GetTimestamp() => (long)(1000 * seconds * _looks++);
    }

    private static string Plan(Clock clock, params string[] more)
    {
        using Scratch scratch = new();
        using StringWriter output = new(), error = new();
        CommandLine.Run(
            ["plan", scratch.Put("part.dxf", Dxf(Rectangle(0, 0, 300, 200))), "--thickness", "20", .. more],
            output, error, TestContext.Current.CancellationToken, clock: clock);
        return output.ToString();
    }

    [Theory]
    [InlineData(10, false)]
    [InlineData(600, true)]
    [InlineData(3600, true)]
    public void What_reading_takes_is_not_left_for_the_search(double secondsOfReading, bool isOutOfTime) =>
        Assert.Equal(isOutOfTime, Plan(new(secondsOfReading), "--time-limit", "600").Contains("the search was not finished", StringComparison.Ordinal));

    [Fact]
    public void Without_a_limit_no_reading_is_too_long() =>
        Assert.DoesNotContain("the search was not finished", Plan(new(1e6)), StringComparison.Ordinal);
}
