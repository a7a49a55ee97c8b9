using System.Collections.Immutable;
using PodLayout.Choice;

namespace PodLayout.Tests.Choice;

public class FewestPodsTests
{
    [Theory]
    [InlineData(9, 5)]
    [InlineData(15, 9)]
    [InlineData(27, 18)]
    [InlineData(45, 30)]
    public void Steiner_triples_are_covered_by_as_few_points_as_published(int points, int fewest)
    {
        // Fulkerson, Nemhauser and Trotter 1974 (Mathematical Programming Study 2, 72-81): stn9 = 5, stn15 = 9, stn27 = 18,
        // stn45 = 30 points to cover all triples of the systems A9, A15, A27, A45.
        var triples = SteinerTriples.Of(points);
        Assert.Equal(points * (points - 1) / 6, triples.Length);
        var answer = FewestPods.Of(new(points, triples, [], []), points, TestContext.Current.CancellationToken);
        Assert.True(answer.IsProven);
        Assert.Equal(fewest, answer.Filled.Length);
        Assert.Equal(fewest, answer.LowerBound);
        Assert.All(triples, t => Assert.Contains(t, s => answer.Filled.Contains(s)));
    }

    [Fact]
    public void The_fewest_of_small_boards_are_those_of_trying_every_subset()
    {
        var random = new Random(1974);
        var without = 0;
        for (var board = 0; board < 250; board++)
        {
            var problem = RandomProblem(random);
            var best = BruteForce(problem);
            without += best is null ? 1 : 0;
            var answer = FewestPods.Of(problem, problem.SeatCount, TestContext.Current.CancellationToken);
            Assert.True(answer.IsProven);
            Assert.Equal(best, answer.HasChoice ? answer.Filled.Length : null);
            if (answer.HasChoice)
            {
                Assert.True(Keeps(problem, answer.Filled));
                Assert.Equal(best, answer.LowerBound);
                // Asked for one fewer, it must say that there is none.
                Assert.False(FewestPods.Of(problem, best!.Value - 1, TestContext.Current.CancellationToken).HasChoice);
            }
        }

        // The boards are hard enough to matter: some of them cannot be covered.
        Assert.InRange(without, 10, 240);
    }

    [Fact]
    public void A_preference_breaks_ties_but_never_costs_a_pod()
    {
        // Two seats of two pods, or one seat that does it alone but is liked least.
        var problem = new CoverProblem(3, [[0, 2], [1, 2]], [], []);
        var answer = CoverModel.Solve(problem, 3, [0, 0, 1000], TestContext.Current.CancellationToken);
        Assert.Equal([2], answer.Filled);
        var tie = new CoverProblem(2, [[0, 1]], [], []);
        Assert.Equal([1], CoverModel.Solve(tie, 2, [5, 4], TestContext.Current.CancellationToken).Filled);
    }

    private static CoverProblem RandomProblem(Random random)
    {
        int seats = random.Next(4, 14), points = random.Next(3, 16);
        ImmutableArray<int[]> supporters =
        [
            .. Enumerable.Range(0, points).Select(_ => Some(random, seats, 0.15 + 0.3 * random.NextDouble())
                .DefaultIfEmpty(random.Next(seats)).ToArray()),
        ];
        ImmutableArray<int[]> rooms = [.. Enumerable.Range(0, random.Next(0, 7)).Select(_ => Some(random, seats, 0.3)).Where(r => r.Length > 1)];
        var types = random.Next(1, 4);
        ImmutableArray<StockRow> stocks =
        [
            .. Enumerable.Range(0, types)
                .Select(t => new StockRow([.. Enumerable.Range(0, seats).Where(s => s % types == t)], random.Next(1, 5)))
                .Where(s => s.Seats.Length > 0),
        ];
        return new(seats, supporters, rooms, stocks);
    }

    private static int[] Some(Random random, int count, double share) =>
        [.. Enumerable.Range(0, count).Where(_ => random.NextDouble() < share)];

    private static int? BruteForce(CoverProblem problem)
    {
        int? best = null;
        for (var bits = 0; bits < 1 << problem.SeatCount; bits++)
        {
            var filled = Enumerable.Range(0, problem.SeatCount).Where(s => (bits >> s & 1) == 1).ToImmutableArray();
            if ((best is null || filled.Length < best) && Keeps(problem, filled))
            {
                best = filled.Length;
            }
        }

        return best;
    }

    private static bool Keeps(CoverProblem problem, ImmutableArray<int> filled) =>
        problem.Supporters.All(of => of.Any(filled.Contains))
        && problem.Rooms.All(room => room.Count(filled.Contains) <= 1)
        && problem.Stocks.All(stock => stock.Seats.Count(filled.Contains) <= stock.Limit);
}
