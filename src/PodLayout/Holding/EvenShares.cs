using System.Collections.Immutable;
using Google.OrTools.LinearSolver;

namespace PodLayout.Holding;

/// <summary>How a load is shared out among the spots that bear the part, when they share it as evenly as they can.</summary>
/// <remarks>
/// Many shares balance the same load. The one that is given keeps the largest push least, as in the grasping problem of Lobo,
/// Vandenberghe, Boyd and Lebret (Applications of second-order cone programming, 1998, section 3.4), with each friction cone
/// replaced by an inscribed pyramid.
/// </remarks>
public static class EvenShares
{
    /// <summary>Shares out a load.</summary>
    /// <param name="contacts">Where the part is borne.</param>
    /// <param name="load">All that acts on it.</param>
    /// <param name="facets">Facets of each friction cone, at least 3.</param>
    /// <param name="lengthMm">A length of the size of the part, for scaling.</param>
    /// <returns>The push at each contact, N, and the largest of them; null when no shares balance the load.</returns>
    public static (ImmutableArray<double> PushesN, double LargestN)? Of(
        ImmutableArray<Contact> contacts, Wrench load, int facets, double lengthMm)
    {
        using var solver = Solver.CreateSolver("GLOP");
        var balance = Rows(load, lengthMm).Select(l => solver.MakeConstraint(-l, -l)).ToArray();
        var largest = solver.MakeNumVar(0, double.PositiveInfinity, "");
        var pushes = new List<Variable[]>();
        foreach (var contact in contacts)
        {
            var cap = solver.MakeConstraint(double.NegativeInfinity, 0);
            cap.SetCoefficient(largest, -1);
            var ofContact = new Variable[facets];
            for (var f = 0; f < facets; f++)
            {
                var angle = 2 * Math.PI * f / facets;
                var push = contact.Normal + contact.SlideA * (contact.Friction * Math.Cos(angle)) + contact.SlideB * (contact.Friction * Math.Sin(angle));
                ofContact[f] = solver.MakeNumVar(0, double.PositiveInfinity, "");
                cap.SetCoefficient(ofContact[f], 1);
                foreach (var (row, amount) in balance.Zip(Rows(push, lengthMm)))
                {
                    row.SetCoefficient(ofContact[f], amount);
                }
            }

            pushes.Add(ofContact);
        }

        using var objective = solver.Objective();
        objective.SetCoefficient(largest, 1);
        objective.SetMinimization();
        return solver.Solve() == Solver.ResultStatus.OPTIMAL
            ? ([.. pushes.Select(of => of.Sum(p => p.SolutionValue()))], largest.SolutionValue()) : null;
    }

    private static double[] Rows(Wrench w, double lengthMm) =>
        [w.Fx, w.Fy, w.Fz, w.Mx / lengthMm, w.My / lengthMm, w.Mz / lengthMm];
}
