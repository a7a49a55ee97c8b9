using System.Collections.Immutable;
using Google.OrTools.LinearSolver;

namespace PodLayout.Tests.Independent;

/// <summary>
/// Limit analysis of a part on its pods, written down afresh: its own variables (pushes at the corners, friction as components along
/// X and Y between straight lines around the round cone), by a general linear solver. Figures come out no lower than the true ones.
/// </summary>
internal static class Statics
{
    private const int Sides = 48;

    /// <summary>A pod: its middle and half its seal's extents along axes turned by an angle, its pull, and where it rubs.</summary>
    public sealed record Foot(double X, double Y, double HalfX, double HalfY, double AngleRad, double PullN, double Inward);

    /// <summary>
    /// The largest multiple of a force at a height that can be balanced: pushes only at the corners, friction of a corner at most mu
    /// times its push, and that of a pod, where it is limited, at most mu times its own pull. Not a number where the solver gives up.
    /// </summary>
    public static double Largest(
        IReadOnlyList<Foot> feet, double weightN, (double X, double Y) centre, (double X, double Y, double Z) at, (double X, double Y, double Z) force,
        double mu, bool isFrictionLimited)
    {
        using var solver = Solver.CreateSolver("GLOP");
        var factor = solver.MakeNumVar(0, 1e6, "");
        // Along X, along Y, up; about X, about Y, about Z in metres.
        var rows = Enumerable.Range(0, 6).Select(_ => solver.MakeConstraint(0, 0)).ToArray();
        double[] load =
        [
            force.X, force.Y, force.Z, (at.Y * force.Z - at.Z * force.Y) / 1000, (at.Z * force.X - at.X * force.Z) / 1000, (at.X * force.Y - at.Y * force.X) / 1000,
        ];
        double[] rest = [0, 0, -weightN, -centre.Y * weightN / 1000, centre.X * weightN / 1000, 0];
        foreach (var foot in feet)
        {
            rest[2] -= foot.PullN;
            rest[3] -= foot.Y * foot.PullN / 1000;
            rest[4] += foot.X * foot.PullN / 1000;
            var limits = isFrictionLimited
                ? Enumerable.Range(0, Sides).Select(_ => solver.MakeConstraint(double.NegativeInfinity, mu * foot.PullN)).ToArray() : [];
            foreach (var (sx, sy) in new[] { (-1, -1), (1, -1), (1, 1), (-1, 1) })
            {
                double x = foot.X + Along(foot, sx, sy).X, y = foot.Y + Along(foot, sx, sy).Y;
                double rubsX = foot.X + foot.Inward * Along(foot, sx, sy).X, rubsY = foot.Y + foot.Inward * Along(foot, sx, sy).Y;
                var push = solver.MakeNumVar(0, double.PositiveInfinity, "");
                var (alongX, alongY) = (solver.MakeNumVar(double.NegativeInfinity, double.PositiveInfinity, ""), solver.MakeNumVar(double.NegativeInfinity, double.PositiveInfinity, ""));
                var size = solver.MakeNumVar(0, double.PositiveInfinity, "");
                rows[2].SetCoefficient(push, 1);
                rows[3].SetCoefficient(push, y / 1000);
                rows[4].SetCoefficient(push, -x / 1000);
                rows[0].SetCoefficient(alongX, 1);
                rows[5].SetCoefficient(alongX, -rubsY / 1000);
                rows[1].SetCoefficient(alongY, 1);
                rows[5].SetCoefficient(alongY, rubsX / 1000);
                for (var side = 0; side < Sides; side++)
                {
                    // Lines around the circle of the friction's size: it may lie a hair beyond, never short.
                    var angle = 2 * Math.PI * side / Sides;
                    var within = solver.MakeConstraint(double.NegativeInfinity, 0);
                    within.SetCoefficient(alongX, Math.Cos(angle));
                    within.SetCoefficient(alongY, Math.Sin(angle));
                    within.SetCoefficient(size, -1);
                }

                var cone = solver.MakeConstraint(double.NegativeInfinity, 0);
                cone.SetCoefficient(size, 1);
                cone.SetCoefficient(push, -mu);
                if (limits.Length > 0)
                {
                    limits[0].SetCoefficient(size, 1);
                }
            }
        }

        for (var i = 0; i < 6; i++)
        {
            rows[i].SetCoefficient(factor, load[i]);
            rows[i].SetBounds(-rest[i], -rest[i]);
        }

        using var objective = solver.Objective();
        objective.SetCoefficient(factor, 1);
        objective.SetMaximization();
        return solver.Solve() == Solver.ResultStatus.OPTIMAL ? factor.SolutionValue() : double.NaN;
    }

    private static (double X, double Y) Along(Foot foot, int sx, int sy) => (
        sx * foot.HalfX * Math.Cos(foot.AngleRad) - sy * foot.HalfY * Math.Sin(foot.AngleRad),
        sx * foot.HalfX * Math.Sin(foot.AngleRad) + sy * foot.HalfY * Math.Cos(foot.AngleRad));

    /// <summary>The least largest push of a grasp at some points: Lobo, Vandenberghe, Boyd and Lebret 1998, section 3.4.</summary>
    public static double LeastLargestPush(ImmutableArray<(double[] At, double[] Inward)> points, double mu, double[] load, int facets)
    {
        using var solver = Solver.CreateSolver("GLOP");
        var largest = solver.MakeNumVar(0, double.PositiveInfinity, "");
        var rows = Enumerable.Range(0, 6).Select(i => solver.MakeConstraint(i < 3 ? -load[i] : 0, i < 3 ? -load[i] : 0)).ToArray();
        foreach (var (at, inward) in points)
        {
            double[] a = Unit([-inward[1], inward[0], 0]), b = Cross(inward, a);
            var cap = solver.MakeConstraint(double.NegativeInfinity, 0);
            cap.SetCoefficient(largest, -1);
            for (var f = 0; f < facets; f++)
            {
                var angle = 2 * Math.PI * f / facets;
                double[] push = [.. Enumerable.Range(0, 3).Select(i => inward[i] + mu * (Math.Cos(angle) * a[i] + Math.Sin(angle) * b[i]))];
                var moment = Cross(at, push);
                var share = solver.MakeNumVar(0, double.PositiveInfinity, "");
                cap.SetCoefficient(share, 1);
                for (var i = 0; i < 3; i++)
                {
                    rows[i].SetCoefficient(share, push[i]);
                    rows[i + 3].SetCoefficient(share, moment[i]);
                }
            }
        }

        using var objective = solver.Objective();
        objective.SetCoefficient(largest, 1);
        objective.SetMinimization();
        return solver.Solve() == Solver.ResultStatus.OPTIMAL ? largest.SolutionValue() : double.PositiveInfinity;
    }

    /// <summary>A vector of length 1.</summary>
    public static double[] Unit(double[] v)
    {
        var length = Math.Sqrt(v.Sum(c => c * c));
        return [.. v.Select(c => c / length)];
    }

    private static double[] Cross(double[] a, double[] b) => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
}
