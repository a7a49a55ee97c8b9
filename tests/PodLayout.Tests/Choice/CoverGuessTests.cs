using System.Collections.Immutable;
using PodLayout.Choice;

namespace PodLayout.Tests.Choice;

public class CoverGuessTests
{
    [Fact]
    public void What_is_guessed_keeps_every_row_and_has_as_many_pods_as_were_asked_for()
    {
        var random = new Random(11);
        var found = 0;
        for (var i = 0; i < 400; i++)
        {
            var problem = Some(random);
            var pods = 1 + random.Next(5);
            var guess = CoverGuess.Of(problem, pods);
            if (guess.IsDefault)
            {
                continue;
            }

            found++;
            Assert.Equal(pods, guess.Length);
            Assert.Equal(guess.Distinct().Order(), guess);
            Assert.All(problem.Supporters, of => Assert.Contains(of, guess.Contains));
            Assert.All(problem.Rooms, of => Assert.InRange(of.Count(guess.Contains), 0, 1));
            Assert.All(problem.Stocks, s => Assert.InRange(s.Seats.Count(guess.Contains), 0, s.Limit));
        }

        Assert.InRange(found, 40, 399);
    }

    [Fact]
    public void Where_trying_all_choices_finds_none_none_is_guessed_and_where_it_finds_one_most_are_guessed()
    {
        var random = new Random(12);
        var (possible, guessed) = (0, 0);
        for (var i = 0; i < 400; i++)
        {
            var problem = Some(random);
            // The fewest only: what is guessed must not stop short of them.
            var fewest = Enumerable.Range(0, 1 << problem.SeatCount).Where(bits => Keeps(problem, bits))
                .Select(bits => System.Numerics.BitOperations.PopCount((uint)bits)).DefaultIfEmpty(99).Min();
            if (fewest > 1)
            {
                Assert.True(CoverGuess.Of(problem, fewest == 99 ? 3 : fewest - 1).IsDefault, $"Case {i}");
            }

            possible += fewest == 99 ? 0 : 1;
            guessed += fewest == 99 || CoverGuess.Of(problem, fewest).IsDefault ? 0 : 1;
        }

        Assert.InRange(possible, 100, 399);
        Assert.InRange(guessed, 0.95 * possible, possible);
    }

    [Fact]
    public void What_stands_in_the_way_of_a_needed_seat_makes_way_for_it()
    {
        // Seat 1 alone supports point 2 and overlaps seat 0, which is begun with; seat 2 then takes over the point of seat 0.
        var guess = new CoverGuess(3, [[0, 1]], []);
        guess.Add([0, 2]);
        guess.Start([0]);
        Assert.Equal([0], guess.Search(2));
        guess.Add([1]);
        Assert.Equal([1, 2], guess.Search(2));
    }

    [Fact]
    public void Of_a_choice_to_begin_with_only_what_leaves_each_other_room_is_taken()
    {
        var guess = new CoverGuess(3, [[0, 1]], [new([0, 1, 2], 1)]);
        guess.Add([0, 1]);
        guess.Start([0, 1, 2]);
        Assert.Equal([0], guess.Search(3));
    }

    [Fact]
    public void Without_stock_nothing_is_guessed()
    {
        CoverProblem problem = new(2, [[0], [1]], [], [new([0, 1], 0)]);
        Assert.True(CoverGuess.Of(problem, 2).IsDefault);
        Assert.True(CoverGuess.Of(problem, 0).IsDefault);
        Assert.True(CoverGuess.Of(problem, 3).IsDefault);
        Assert.Equal([0, 1], CoverGuess.Of(problem with { Stocks = [] }, 2));
    }

    private static bool Keeps(CoverProblem problem, int bits) =>
        problem.Supporters.All(of => of.Any(s => (bits >> s & 1) == 1))
        && problem.Rooms.All(of => of.Count(s => (bits >> s & 1) == 1) <= 1)
        && problem.Stocks.All(k => k.Seats.Count(s => (bits >> s & 1) == 1) <= k.Limit);

    private static CoverProblem Some(Random random)
    {
        var seats = 4 + random.Next(9);
        int[] Pick(int least, double share) =>
            [.. Enumerable.Range(0, seats).OrderBy(_ => random.Next()).Take(Math.Max(least, (int)(share * seats))).Order()];
        ImmutableArray<int[]> supporters = [.. Enumerable.Range(0, 3 + random.Next(8)).Select(_ => Pick(1, 0.1 + 0.3 * random.NextDouble()))];
        ImmutableArray<int[]> rooms = [.. Enumerable.Range(0, random.Next(4)).Select(_ => Pick(2, 0.3 * random.NextDouble()))];
        return new(seats, supporters, rooms, random.Next(3) == 0 ? [new(Pick(1, 0.6), 1 + random.Next(2))] : []);
    }
}
