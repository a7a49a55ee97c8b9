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
    public void Any_choice_within_a_limit_is_found_exactly_where_there_is_one_and_lesser_efforts_never_deny_it()
    {
        var random = new Random(1975);
        var (rough, quick) = (0, 0);
        for (var board = 0; board < 200; board++)
        {
            var problem = RandomProblem(random);
            var best = BruteForce(problem) ?? int.MaxValue;
            // One row to begin with: the others are made as choices miss them.
            CoverQuestion question = new(
                problem.SeatCount, problem.Supporters.Length, p => problem.Supporters[p], (s, p) => problem.Supporters[p].Contains(s), new(problem.Rooms), problem.Stocks);
            for (var atMost = 1; atMost <= 6; atMost++)
            {
                var any = Asked(Wanted.Any);
                Assert.Equal(best <= atMost, any.HasChoice);
                Assert.True(any.IsProven);
                var quickly = Asked(Wanted.AnyQuickly);
                quick += quickly.HasChoice ? 1 : 0;
                var roughly = Asked(Wanted.Any with { RoughUpTo = atMost - 2, RoughWithRoomUpTo = atMost - 2, IsRoughBeforeFull = true });
                rough += roughly.IsRough ? 1 : 0;

                CoverAnswer Asked(Wanted wanted)
                {
                    var answer = FewestPods.Of(question, [0], atMost, TestContext.Current.CancellationToken, wanted);
                    Assert.True(answer.LowerBound <= best);
                    Assert.False(!answer.HasChoice && answer.IsProven && best <= atMost);
                    Assert.True(!answer.HasChoice || answer.IsRough || (answer.Filled.Length <= atMost && Keeps(problem, answer.Filled)));
                    return answer;
                }
            }
        }

        Assert.InRange(rough, 50, 1150);
        Assert.InRange(quick, 200, 1150);
    }

    [Fact]
    public void The_relaxation_with_room_bounds_every_choice_and_is_nowhere_looser_than_without()
    {
        var random = new Random(1976);
        var (larger, smaller) = (0, 0);
        for (var board = 0; board < 250; board++)
        {
            var problem = RandomProblem(random);
            var (bound, _) = CoverRelaxation.WithRoom(problem);
            Assert.True(bound <= (BruteForce(problem) ?? int.MaxValue));
            var without = CoverRelaxation.Solve(problem.Supporters, problem.SeatCount).Bound;
            // Nothing is said where even the relaxation has no answer.
            larger += bound > without ? 1 : 0;
            smaller += bound < without && bound > 0 ? 1 : 0;
        }

        Assert.InRange(larger, 5, 250);
        Assert.Equal(0, smaller);
    }

    [Fact]
    public void Room_that_pods_take_from_each_other_raises_the_bound_of_the_relaxation()
    {
        // Four points. Seats 0 and 1 support two each but share room, so one of them at most; seats 2 to 5 support one each. By hand:
        // without room 2 pods; with it x0 + x1 <= 1, and the points ask for 4 - (x0 + x1) pods in all, 3 at least.
        CoverProblem problem = new(6, [[0, 2], [0, 3], [1, 4], [1, 5]], [[0, 1]], []);
        Assert.Equal(2, CoverRelaxation.Solve(problem.Supporters, problem.SeatCount).Bound);
        Assert.Equal(3, CoverRelaxation.WithRoom(problem).Bound);
        // Stock does the same: one pod of the type that seats 0 and 1 take.
        Assert.Equal(3, CoverRelaxation.WithRoom(problem with { Rooms = [], Stocks = [new([0, 1], 1)] }).Bound);
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
