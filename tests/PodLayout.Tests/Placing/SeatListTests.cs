using FsCheck;
using FsCheck.Fluent;
using PodLayout.Placing;

namespace PodLayout.Tests.Placing;

public class SeatListTests
{
    [Fact]
    public void What_is_put_in_comes_out()
    {
        var lists = Gen.Choose(0, 200_000).ListOf().Select(l => l.Distinct().Order().ToArray()).ToArbitrary();
        Check.QuickThrowOnFailure(Prop.ForAll(lists, list => SeatList.Of(list).Seats().SequenceEqual(list)));
    }

    [Theory]
    [InlineData()]
    [InlineData(0)]
    [InlineData(126, 254, 255)]
    [InlineData(127, 128, 256)]
    [InlineData(0, 1, 128, 129, 16_383, 16_384, 16_385, int.MaxValue - 1)]
    public void The_ends_of_a_byte_are_no_ends(params int[] seats) => Assert.Equal(seats, SeatList.Of(seats).Seats());

    [Theory]
    [InlineData(3, 3)]
    [InlineData(3, 2)]
    [InlineData(-1)]
    public void What_does_not_rise_is_refused(params int[] seats) => Assert.Throws<ArgumentOutOfRangeException>("rising", () => SeatList.Of(seats));
}
