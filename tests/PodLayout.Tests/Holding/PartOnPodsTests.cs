using System.Collections.Immutable;
using PodLayout.Geometry;
using PodLayout.Holding;
using PodLayout.Shops;
using PodLayout.Tests.Independent;

namespace PodLayout.Tests.Holding;

/// <summary>The two figures of holding against statics by hand, published limits of friction, and an independent limit analysis.</summary>
public class PartOnPodsTests
{
    private const double Mu = 0.4;

    [Fact]
    public void Three_pods_in_a_triangle_bear_what_three_points_bear()
    {
        // Statically determined as far as the pods' middles go: small pods far apart, a load down inside the triangle. Shares by the
        // areas of the triangles opposite (barycentric coordinates).
        ImmutableArray<HeldPod> pods = [Pod(0, 0, 6, 60), Pod(900, 0, 6, 30), Pod(0, 600, 6, 90)];
        var presses = new PartOnPods(pods, default, 900).Presses(Wrench.Of(new(0, 0, -300), 300, 150, 0));
        double across = 300.0 / 900, up = 150.0 / 600;
        Assert.Equal(Pull(6, 60) + 300 * (1 - across - up), presses[0], 0.4);
        Assert.Equal(Pull(6, 30) + 300 * across, presses[1], 0.4);
        Assert.Equal(Pull(6, 90) + 300 * up, presses[2], 0.4);
    }

    [Fact]
    public void Three_pods_in_a_row_bear_as_a_stiff_beam_on_three_springs()
    {
        // A stiff beam on equal springs at -a, 0, a (Timoshenko, Strength of Materials, beams on elastic supports; here the beam does
        // not bend): W/3 each, and W e/(2a) more or less at the ends for a load that lies e from the middle.
        const double a = 400, e = 150, load = 240;
        ImmutableArray<HeldPod> pods = [Pod(-a, 0, 8, 70), Pod(0, 0, 8, 70), Pod(a, 0, 8, 70)];
        var presses = new PartOnPods(pods, default, 400).Presses(Wrench.Of(new(0, 0, -load), e, 0, 0));
        // The seals of single pods resist tilting too: by (4 mm)² beside (400 mm)².
        Assert.Equal(Pull(8, 70) + load / 3 - load * e / (2 * a), presses[0], 0.05);
        Assert.Equal(Pull(8, 70) + load / 3, presses[1], 0.05);
        Assert.Equal(Pull(8, 70) + load / 3 + load * e / (2 * a), presses[2], 0.05);
    }

    [Fact]
    public void Unequal_pulls_are_shared_by_the_springs_and_not_as_they_pull()
    {
        // Equal seals, one pod without vacuum between two with: the part sinks alike on all three, a third of the pull each.
        ImmutableArray<HeldPod> pods = [Pod(-300, 0, 8, 70), Pod(0, 0, 8, 0), Pod(300, 0, 8, 70)];
        var presses = new PartOnPods(pods, default, 300).Presses(default);
        Assert.All(presses, p => Assert.Equal(2 * Pull(8, 70) / 3, p, 0.01));
    }

    [Fact]
    public void A_stiffer_seal_bears_more()
    {
        // Three in a row, the middle of twice the stiffness, all alike pulled and a load over the middle: all sink alike, and share
        // as 1, 2, 1.
        ImmutableArray<HeldPod> pods = [Pod(-300, 0, 8, 20), Pod(0, 0, 8, 20, 2), Pod(300, 0, 8, 20)];
        var presses = new PartOnPods(pods, default, 300).Presses(Wrench.Of(new(0, 0, -100), 0, 0, 0));
        Assert.Equal((3 * Pull(8, 20) + 100) / 4, presses[0], 0.01);
        Assert.Equal((3 * Pull(8, 20) + 100) / 2, presses[1], 0.01);
    }

    [Theory]
    [InlineData(0, 1)]
    [InlineData(-0.5, 0.8333333)]
    [InlineData(0.5, 1)]
    public void One_pod_slides_at_mu_times_what_it_bears_or_pulls(double lift, double share)
    {
        // Pushed along at the face with a share of it lifting (or pressing): by springs F = mu (N - up F), so F = mu N / (1 + mu up)
        // with up = -lift; by pulls F is at most mu N. The lower counts.
        var pull = Pull(50, 70);
        var part = new PartOnPods([Pod(0, 0, 50, 70)], default, 100);
        var load = Wrench.Of(new(1, 0, -lift), 0, 0, 0);
        var springs = Mu * pull / (1 - Mu * lift);
        Assert.Equal(springs, part.BySprings(load).Factor, 1e-3 * springs);
        Assert.Equal(Math.Min(springs, Mu * pull), part.Of(load).Factor, 1e-3 * springs);
        Assert.Equal(share, part.Of(load).Factor / (Mu * pull), 2e-3);
    }

    [Fact]
    public void A_part_tips_about_the_far_side_of_its_seal()
    {
        // Lever: F h = N a, with a half the seal's width: at a height of 300 mm over a seal of 100 mm, below mu N.
        var part = new PartOnPods([Pod(0, 0, 50, 70)], default, 100);
        var expected = Pull(50, 70) * 50 / 300;
        Assert.Equal(expected, part.Of(Wrench.Of(new(1, 0, 0), 0, 0, 300)).Factor, 2e-3 * expected);
        // The near corners bear nothing from a moment N I / (L a) on (bending of a line of length L about its middle; by hand): for a
        // square frame I = 2 (2a) a² + 2 (2/3) a³ and L = 8a.
        double a = 50, sides = 2 * (2 * a) * a * a + 2 * (2.0 / 3) * a * a * a, core = sides / (8 * a) / a;
        Assert.Equal(Pull(50, 70) * core / 300, part.Unloading(Wrench.Of(new(1, 0, 0), 0, 0, 300)), 1e-6 * expected);
    }

    [Theory]
    [InlineData(0.5, 0.4838, 0.5477)]
    [InlineData(1, 0.8488, 0.2829)]
    [InlineData(2, 0.9677, 0.1278)]
    public void A_disc_of_many_spots_bears_push_and_twist_as_published(double centre, double force, double moment)
    {
        // Goyal, Ruina and Papadopoulos 1991, computed for a disc sliding about a centre at c/R: (F, M) in mu N and mu N R.
        Assert.True(centre > 0);
        const int rings = 24, around = 24;
        var spots = (from ring in Enumerable.Range(0, rings)
                     from i in Enumerable.Range(0, around)
                     let r = Math.Sqrt((ring + 0.5) / rings)
                     let angle = 2 * Math.PI * (i + 0.5 * (ring % 2)) / around
                     select (X: r * Math.Cos(angle), Y: r * Math.Sin(angle))).ToArray();
        double[] caps = [.. spots.Select(_ => 1.0 / spots.Length)];
        SlideAndTwist plane = new([.. spots.Select(s => s.X)], [.. spots.Select(s => s.Y)]);
        var factor = plane.Largest(caps, (force, 0, moment)).Factor;
        Assert.Equal(1, factor, 2e-3);
        Assert.InRange(plane.AtLeast(caps, (force, 0, moment)), 0.5, factor * (1 + 1e-9));
    }

    [Fact]
    public void A_ring_resists_a_twist_by_mu_N_R_and_two_spots_a_couple()
    {
        // Thin ring: mu N R; two spots: each its friction times its arm (the same paper, and by hand).
        var ring = Enumerable.Range(0, 64).Select(i => 2 * Math.PI * i / 64).ToArray();
        SlideAndTwist plane = new([.. ring.Select(Math.Cos)], [.. ring.Select(Math.Sin)]);
        Assert.Equal(1, plane.Largest([.. ring.Select(_ => 1.0 / 64)], (0, 0, 1)).Factor, 1e-5);
        Assert.Equal(5 * 0.3, new SlideAndTwist([-0.3, 0.3], [0, 0]).Largest([2.5, 2.5], (0, 0, 1)).Factor, 1e-4);
    }

    [Fact]
    public void The_published_grasp_needs_the_published_force_of_the_solver_that_ours_is_held_against()
    {
        // Lobo, Vandenberghe, Boyd and Lebret, Applications of second-order cone programming (1998), section 3.4: least largest
        // normal force .49112 with round cones; with inscribed pyramids of 4 and 8 facets computed independently.
        ImmutableArray<(double[] At, double[] Inward)> points = [.. Enumerable.Range(1, 5).Select(j =>
        {
            double x = 0.3 + Math.Cos(2 * Math.PI * j / 5), y = Math.Sin(2 * Math.PI * j / 5);
            return ((double[])[x, y, x * x + y * y], Statics.Unit([-2 * x, -2 * y, 1]));
        })];
        foreach (var (facets, expected) in new[] { (4, 0.51725), (8, 0.51369), (16, 0.49112), (64, 0.49112) })
        {
            Assert.Equal(expected, Statics.LeastLargestPush(points, 0.3, [0, 0, -1], facets), 2e-4);
        }
    }

    [Fact]
    public void On_random_boards_the_factor_is_never_above_an_independent_limit_analysis()
    {
        var random = new Random(1811);
        var (finite, lower) = (0, 0);
        for (var i = 0; i < 160; i++)
        {
            double Next(double size) => (2 * random.NextDouble() - 1) * size;
            List<Statics.Foot> feet = [];
            List<HeldPod> pods = [];
            for (var count = random.Next(1, 8); count > 0; count--)
            {
                double x = Next(350), y = Next(250), halfX = 12 + 43 * random.NextDouble(), halfY = 12 + 43 * random.NextDouble(), angle = random.Next(4) * 15;
                var kPa = 20 + 60 * random.NextDouble();
                pods.Add(new(Grip(halfX, halfY, 1), new(x, y), Turn.FromDegrees(angle), kPa));
                var diagonal = Math.Sqrt(halfX * halfX + halfY * halfY);
                feet.Add(new(x, y, halfX, halfY, angle * Math.PI / 180, kPa * 4e-3 * halfX * halfY, MeanDistance(halfX, halfY) / diagonal));
            }

            var (weight, centre) = (5 + 60 * random.NextDouble(), (X: Next(60), Y: Next(40)));
            PartOnPods part = new([.. pods], Wrench.Of(new(0, 0, -weight), centre.X, centre.Y, 0), 400);
            if (!part.CanRest)
            {
                continue;
            }

            for (var k = 0; k < 4; k++)
            {
                (double X, double Y, double Z) at = (Next(420), Next(320), 40 * random.NextDouble()), force = (Next(120), Next(120), Next(50));
                var load = Wrench.Of(new(force.X, force.Y, force.Z), at.X, at.Y, at.Z);
                double rigid = Statics.Largest(feet, weight, centre, at, force, Mu, false), capped = Statics.Largest(feet, weight, centre, at, force, Mu, true);
                var (ours, pulls, springs) = (part.Of(load).Factor, part.ByPulls(load).Factor, part.BySprings(load).Factor);
                if (!(capped < 1e6) || !(rigid > 0))
                {
                    // Borne at any size, or given up by the solver.
                    continue;
                }

                finite++;
                lower += ours < 0.97 * rigid ? 1 : 0;
                // The analysis has 48 straight lines around each circle: up to .2 % beyond it.
                Assert.True(ours <= capped * 1.003 + 1e-6 && ours <= rigid * 1.003 + 1e-6, $"Board {i}: {ours}, independent {capped} and {rigid}.");
                Assert.InRange(pulls, 0.995 * capped - 1e-6, 1.003 * capped + 1e-6);
                Assert.True(ours <= springs * (1 + 1e-3) && ours <= pulls * (1 + 1e-3), $"Board {i}: {ours} of {pulls} and {springs}.");
                // Asked only whether it is enough, it never says more than there is.
                var enough = part.Of(load, ours * 0.9).Factor;
                Assert.True(enough >= ours * 0.899 && enough <= ours * 1.001 + 1e-6, $"Board {i}: {enough} of {ours}.");
            }
        }

        Assert.True(finite > 300 && lower > 100, $"{finite} compared, {lower} lower than on stiff pods.");
    }

    // Mean distance of the points of a rectangle from its middle, by sums over a fine raster.
    private static double MeanDistance(double halfX, double halfY)
    {
        const int steps = 200;
        return Enumerable.Range(0, steps).SelectMany(i => Enumerable.Range(0, steps).Select(j =>
        {
            double x = halfX * (i + 0.5) / steps, y = halfY * (j + 0.5) / steps;
            return Math.Sqrt(x * x + y * y);
        })).Average();
    }

    private static double Pull(double half, double kPa) => kPa * 1e-3 * 4 * half * half;

    private static HeldPod Pod(double x, double y, double half, double kPa, double stiffness = 1) =>
        new(Grip(half, half, stiffness), new(x, y), Turn.None, kPa);

    private static PodGrip Grip(double halfX, double halfY, double stiffness) => PodGrip.Of(
        new("pod", new PodFootprint.Rectangle(2 * halfX, 2 * halfY), 0, 0, 10, true, 1, 1) { SealStiffnessNPerMm2 = stiffness }, Mu);
}
