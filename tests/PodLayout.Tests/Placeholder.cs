namespace PodLayout.Tests;

public class TurnTests
{
    [Fact]
    public void A_quarter_turn_is_exact() =>
        Assert.Equal(new Geometry.Point2(-2, 1), Geometry.Turn.FromDegrees(90).Apply(new(1, 2)));
}
