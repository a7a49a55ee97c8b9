using PodLayout.Geometry;

namespace PodLayout.Tests.Geometry;

public class TurnTests
{
    [Theory]
    [InlineData(90, -2, 1)]
    [InlineData(-270, -2, 1)]
    [InlineData(180, -1, -2)]
    [InlineData(630, 2, -1)]
    public void Quarter_turns_are_exact(double degrees, double x, double y) =>
        Assert.Equal(new Point2(x, y), Turn.FromDegrees(degrees).Apply(new(1, 2)));

    [Fact]
    public void A_turn_and_its_inverse_cancel()
    {
        var turn = Turn.FromDegrees(33.7);
        var back = turn.Inverse.Apply(turn.Apply(new(123, -45)));
        Assert.Equal(123, back.X, 9);
        Assert.Equal(-45, back.Y, 9);
    }
}
