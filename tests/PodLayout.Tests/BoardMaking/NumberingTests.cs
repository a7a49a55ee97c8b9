using FsCheck;
using FsCheck.Fluent;
using PodLayout.Geometry;

namespace PodLayout.Tests.BoardMaking;

public class NumberingTests
{
    // Columns 1 to 40 and rows 1 to 19: the lands between the grooves of a board of 1200 x 600 mm that begin at X 0 and Y 15.
    [Fact]
    public void Each_column_and_each_row_has_its_number() => Assert.Equal(
        Enumerable.Range(1, 40).Concat(Enumerable.Range(1, 19)), Boards.Good(Boards.TradeFacts()).Numerals.Select(n => n.Number));

    // Both are 1 and stand in the same land: half a figure's height lies between them, so that they are not read as 11.
    [Fact]
    public void The_numbers_of_the_first_column_and_the_first_row_stand_apart()
    {
        var ones = Boards.Good(Boards.TradeFacts()).Numerals.Where(n => n.Number == 1).Select(n => Box2.Around(n.Strokes.SelectMany(s => s))).OrderBy(b => b.MinY).ToList();
        Assert.Equal(2, ones.Count);
        Assert.True(ones[1].MinY - ones[0].MaxY >= 0.45 * ones[0].Height, $"{ones[1].MinY - ones[0].MaxY} between figures of {ones[0].Height}");
    }

    [Fact]
    public void Numbers_stand_clear_of_each_other_of_ports_and_of_grooves() => Prop.ForAll(
        RandomBoards.All(),
        shop =>
        {
            if (Boards.Made(shop).Value is not { } plan)
            {
                return true;
            }

            var boxes = plan.Numerals.Select(n => Box2.Around(n.Strokes.SelectMany(s => s))).ToList();
            var half = plan.Board.GrooveWidthMm / 2;
            return boxes.All(b =>
                boxes.Count(other => other.Touches(b)) == 1
                && plan.Board.Ports.All(p => !b.Grow(plan.Board.PortDiameterMm / 2).Contains(p.Centre))
                && plan.Grooves.All(g => !g.Run.Box.Grow(half).Touches(b)));
        }).QuickCheckThrowOnFailure();
}
