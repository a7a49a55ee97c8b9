using System.Collections.Immutable;
using System.Diagnostics;
using System.Globalization;
using Google.OrTools.Sat;
using PodLayout.Choice;
using PodLayout.Geometry;
using PodLayout.Jobs;
using PodLayout.Placing;
using PodLayout.Seats;
using PodLayout.Support;

namespace PodLayout.Benchmarks.Versus;

/// <summary>One model of the whole question: which of the offsets of a grid, and which seats there, by CP-SAT as it comes.</summary>
internal static class OffsetAsVariable
{
    // Beyond this many literals the model alone takes gigabytes.
    private const long MostLiterals = 6_000_000;

    /// <summary>The answer and the time, the making of the model counted; null when the model grows too large.</summary>
    public static (CoverAnswer Answer, double Ms)? Solve(Job job, double stepMm, double seconds)
    {
        var clock = Stopwatch.StartNew();
        var pitch = job.Shop.Board.PitchMm;
        var poses = PodPose.Of(job, SearchRun.Heights(job).First());
        var frame = new PlacingFrame(job, ReachMap.Of(job.Part, job.Support), poses, SearchRun.AngleOf(job), 0);
        ImmutableArray<BoardSeats> board = [.. poses.Select(pose => BoardSeats.Of(pose, job.Shop.Board))];
        var ground = SearchGround.Over(frame, board, job, OffsetBox.WholePitch(pitch));
        var number = ground.Seats.Select((s, i) => (s, i)).ToDictionary(p => p.s, p => p.i);
        var model = new CpModel();
        var fill = ground.Seats.Select(_ => model.NewBoolVar("")).ToArray();
        List<ILiteral> places = [];
        var allowedBy = ground.Seats.Select(_ => new List<ILiteral>()).ToArray();
        long literals = 0;
        var side = (int)Math.Round(pitch / stepMm);
        foreach (var shift in ground.Classes)
        {
            for (var k = 0; k < side * side; k++)
            {
                var placement = PlacementModel.At(job, ground, shift, new Point2(k % side * stepMm, k / side * stepMm));
                var question = placement.Within(1);
                ImmutableArray<int[]> rows = [.. Enumerable.Range(0, question.PointCount).Select(question.SupportersOf)];
                if (rows.Any(r => r.Length == 0))
                {
                    continue;
                }

                var place = model.NewBoolVar("");
                places.Add(place);
                foreach (var seat in placement.Seats)
                {
                    allowedBy[number[seat]].Add(place);
                }

                foreach (var point in CoverReduction.NeededPoints(rows, question.SeatCount))
                {
                    model.AddBoolOr([.. rows[point].Select(s => (ILiteral)fill[number[placement.Seats[s]]]), place.Not()]);
                    literals += rows[point].Length;
                }

                if (literals > MostLiterals)
                {
                    return null;
                }
            }
        }

        return places.Count == 0 ? (new(default, 0, true), clock.Elapsed.TotalMilliseconds) : Answer();

        (CoverAnswer, double)? Answer()
        {
            model.AddExactlyOne(places);
            for (var s = 0; s < fill.Length; s++)
            {
                model.AddBoolOr([.. allowedBy[s], fill[s].Not()]);
            }

            var whole = PlacementModel.Question(job, frame, ground.Seats, [], _ => [], (_, _) => false);
            foreach (var room in whole.Rooms.Value)
            {
                model.AddAtMostOne(room.Select(s => (ILiteral)fill[s]));
            }

            foreach (var stock in whole.Stocks)
            {
                model.Add(LinearExpr.Sum(stock.Seats.Select(s => fill[s])) <= stock.Limit);
            }

            model.Minimize(LinearExpr.Sum(fill));
            using var solver = new SolveWrapper();
            solver.SetStringParameters("num_workers:2,max_time_in_seconds:" + seconds.ToString(CultureInfo.InvariantCulture));
            var response = solver.Solve(model.Model);
            var found = response.Status is CpSolverStatus.Optimal or CpSolverStatus.Feasible;
            ImmutableArray<int> filled = found ? [.. Enumerable.Range(0, fill.Length).Where(s => response.Solution[fill[s].GetIndex()] == 1)] : default;
            var isProven = response.Status is CpSolverStatus.Optimal or CpSolverStatus.Infeasible;
            return (new(filled, (int)Math.Max(0, Math.Ceiling(response.BestObjectiveBound - 1e-6)), isProven), clock.Elapsed.TotalMilliseconds);
        }
    }
}
