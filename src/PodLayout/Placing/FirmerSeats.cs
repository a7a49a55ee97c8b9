using System.Collections.Immutable;
using PodLayout.Choice;
using PodLayout.Geometry;

namespace PodLayout.Placing;

/// <summary>
/// Other seats, with as many pods, for a choice that supports the part and holds it by pulls but falls short by springs: how the part
/// presses on its pods is no row, so that no row leads there. Pods are exchanged one by one, each time for the seat with which the
/// weakest force can grow farthest.
/// </summary>
internal static class FirmerSeats
{
    private const int MostExchanges = 12;

    // Of the exchanges that help against the weakest force so many are held against all forces.
    private const int Closely = 6;

    // What helps less than this share is no step.
    private const double LeastStep = 1e-4;

    /// <summary>The seats of a choice that holds by both figures, rising; default when none was come upon.</summary>
    /// <param name="holding">What is to be held, and how firmly.</param>
    /// <param name="frame">The part at its angle.</param>
    /// <param name="model">Seats and points of the placement.</param>
    /// <param name="offset">Where the pivot lies within its pitch.</param>
    /// <param name="shift">The whole pitches.</param>
    /// <param name="filled">The choice, which supports every point within room and stock.</param>
    public static ImmutableArray<int> Of(
        HoldingModel holding, PlacingFrame frame, PlacementModel model, Point2 offset, ShiftClass shift, ImmutableArray<int> filled)
    {
        var question = model.Within(1);
        var room = new TakenRoom(question.SeatCount, question.Rooms.Value, question.Stocks);
        foreach (var seat in filled)
        {
            room.Change(seat, 1);
        }

        var (factor, body, load) = Weakest(filled, -1);
        for (var exchanges = 0; exchanges < MostExchanges && factor < holding.EnoughFactor; exchanges++)
        {
            ImmutableArray<int> better = default;
            var tries = from pod in filled
                        from seat in Instead(question, room, filled, pod)
                        let choice = Exchanged(filled, pod, seat)
                        let grown = holding.FactorOf(body, load, frame, At(choice), offset, shift.Columns, shift.Rows)
                        where grown > factor * (1 + LeastStep)
                        select (choice, grown);
            foreach (var (choice, _) in tries.OrderByDescending(t => t.grown).Take(Closely))
            {
                var weakest = Weakest(choice, factor * (1 + LeastStep));
                if (weakest.Factor > factor * (1 + LeastStep))
                {
                    (better, (factor, body, load)) = (choice, weakest);
                }
            }

            if (better.IsDefault)
            {
                return default;
            }

            foreach (var seat in filled.Except(better))
            {
                room.Change(seat, -1);
            }

            foreach (var seat in better.Except(filled))
            {
                room.Change(seat, 1);
            }

            filled = better;
        }

        return factor >= holding.EnoughFactor && holding.Holds(frame, At(filled), offset, shift.Columns, shift.Rows) ? filled : default;

        ImmutableArray<FrameSeat> At(ImmutableArray<int> choice) => [.. choice.Select(s => model.Seats[s])];

        (double Factor, int Body, int Load) Weakest(ImmutableArray<int> choice, double endBelow) =>
            holding.Weakest(frame, At(choice), offset, shift.Columns, shift.Rows, endBelow);
    }

    // Seats with room and stock, once a pod is gone, that support all that only this pod supports.
    private static List<int> Instead(CoverQuestion question, TakenRoom room, ImmutableArray<int> filled, int pod)
    {
        List<int> alone = [.. Enumerable.Range(0, question.PointCount).Where(p => !filled.Any(s => s != pod && question.Supports(s, p)))];
        room.Change(pod, -1);
        List<int> seats = [], inWay = [];
        for (var seat = 0; seat < question.SeatCount; seat++)
        {
            inWay.Clear();
            room.AddOverlapping(seat, inWay);
            if (inWay.Count == 0 && seat != pod && !filled.Contains(seat) && room.UsedUp(seat) < 0 && alone.TrueForAll(p => question.Supports(seat, p)))
            {
                seats.Add(seat);
            }
        }

        room.Change(pod, 1);
        return seats;
    }

    private static ImmutableArray<int> Exchanged(ImmutableArray<int> filled, int pod, int seat) =>
        [.. filled.Where(s => s != pod).Append(seat).Order()];
}
