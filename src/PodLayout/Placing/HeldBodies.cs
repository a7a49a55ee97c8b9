using System.Collections.Immutable;
using PodLayout.Geometry;
using PodLayout.Holding;
using PodLayout.Seats;
using PodLayout.Vacuum;

namespace PodLayout.Placing;

/// <summary>The part and its loose pieces that are held: whether the seats of a layout hold them, by both figures.</summary>
/// <param name="grounds">What must be held against what: the part first.</param>
internal sealed class HeldBodies(ImmutableArray<HoldingGround> grounds)
{
    /// <summary>What must be held against what: the part, then its loose pieces that are held.</summary>
    public ImmutableArray<HoldingGround> Grounds { get; } = grounds;

    private HoldingGround Ground => Grounds[0];

    /// <summary>The factor at which holding counts as reached.</summary>
    public double EnoughFactor => Enough(Ground.Factor);

    /// <summary>What counts as a factor that is asked for.</summary>
    public static double Enough(double factor) => factor * (1 - Tolerances.HoldingShare);

    /// <summary>Whether a layout holds the part (0) or one of the pieces at the factor, by both figures.</summary>
    public bool HoldsBody(int body, PlacingFrame frame, ImmutableArray<FrameSeat> seats, Point2 offset, int columns, int rows)
    {
        var ground = Grounds[body];
        return Firmness.Weakest(
            ground, ground.On(Of(frame, seats, offset, columns, rows)[body]), ground.Telling.Concat(Enumerable.Range(0, ground.Loads.Length)),
            EnoughFactor).Limit.Factor >= EnoughFactor;
    }

    /// <summary>Whether a layout holds at the factor, by both figures.</summary>
    public bool Holds(PlacingFrame frame, ImmutableArray<FrameSeat> seats, Point2 offset, int columns, int rows)
    {
        var held = Of(frame, seats, offset, columns, rows);
        return Topples(held[0]) is null && Grounds.Select((g, body) => Firmness.Weakest(
            g, g.On(held[body]), g.Telling.Concat(Enumerable.Range(0, g.Loads.Length)), EnoughFactor).Limit.Factor >= EnoughFactor).All(h => h);
    }

    /// <summary>The least factor of the part and its pieces, by both figures; 0 where the part would tip off before the vacuum is on.</summary>
    public double Least(PlacingFrame frame, ImmutableArray<FrameSeat> seats, Point2 offset, int columns, int rows)
    {
        var held = Of(frame, seats, offset, columns, rows);
        return Topples(held[0]) is not null ? 0
            : Grounds.Select((g, body) => Firmness.Weakest(g, g.On(held[body]), Enumerable.Range(0, g.Loads.Length), -1).Limit.Factor).Min();
    }

    /// <summary>The seat that, added to a layout, makes it hold best, and the factor then; null when there is none to add.</summary>
    /// <param name="frame">The part at its angle.</param>
    /// <param name="seats">The layout.</param>
    /// <param name="free">Seats that could be filled.</param>
    /// <param name="offset">Where the pivot lies within its pitch.</param>
    /// <param name="columns">Whole pitches along X.</param>
    /// <param name="rows">Whole pitches along Y.</param>
    /// <param name="closely">How many of the likeliest to look at.</param>
    public (FrameSeat Seat, double Factor)? Strongest(
        PlacingFrame frame, ImmutableArray<FrameSeat> seats, ImmutableArray<FrameSeat> free, Point2 offset, int columns, int rows, int closely)
    {
        var held = Of(frame, seats, offset, columns, rows)[0];
        var (limit, load) = Firmness.Weakest(Ground, held);
        if (load < 0 || free.IsEmpty)
        {
            return null;
        }

        var way = Weakness.Of(limit, Ground.Loads[load], held);
        var pushN = Ground.MostPushN(seats.Length + 1);
        var most = Ground.MostKPa(seats.Length + 1);
        var likely = free.Select(s => (Seat: s, Brings: way.Brought(Pod(frame, s, offset, most[frame.Poses[s.Pose].TypeIndex]), 0, pushN)))
            .OrderByDescending(s => s.Brings).ThenBy(s => s.Seat.Row).ThenBy(s => s.Seat.Column).ThenBy(s => s.Seat.Pose).Take(closely);
        (FrameSeat Seat, double Factor)? best = null;
        foreach (var (seat, _) in likely)
        {
            // The forces that are likely to be worst first: most seats are given up after a few.
            var equilibrium = Ground.On(Of(frame, seats.Add(seat), offset, columns, rows)[0]);
            var least = best?.Factor ?? -1;
            var quick = Firmness.Weakest(Ground, equilibrium, Ground.Telling.Append(load), least).Limit.Factor;
            if (quick > least)
            {
                var factor = Firmness.Weakest(Ground, equilibrium, Enumerable.Range(0, Ground.Loads.Length), least).Limit.Factor;
                best = factor > least ? (seat, factor) : best;
            }
        }

        return best;
    }

    /// <summary>What each seat bears: the index of its ground; -1 for a piece that no cut runs along. All take their share of the vacuum.</summary>
    public int[] IndicesOf(PlacingFrame frame, ImmutableArray<FrameSeat> seats) =>
        [.. seats.Select(s => frame.PieceOver(s.Pose) is { } piece ? Grounds.ToList().FindIndex(1, g => g.Piece == piece.Name) : 0)];

    /// <summary>Pods under each ground with the vacuum that is left at each, as they stand.</summary>
    public ImmutableArray<HeldPod>[] Of(PlacingFrame frame, ImmutableArray<FrameSeat> seats, Point2 offset, int columns, int rows)
    {
        var board = Ground.Shop.Board;
        var vacuum = VacuumNetwork.At(Ground.Shop, [.. seats.Select(s =>
        {
            var pose = frame.Poses[s.Pose];
            return new PodOnPorts(
                pose.Type, [.. BoardSeats.FeedingPorts(pose, board, s.Column + columns, s.Row + rows).Take(pose.Type.PortsNeeded)]);
        })]);
        var bodies = IndicesOf(frame, seats);
        return
        [
            .. Grounds.Select((_, body) => seats.Select((s, i) => (Seat: s, Index: i)).Where(s => bodies[s.Index] == body)
                .Select(s => Pod(frame, s.Seat, offset, vacuum.AtPodKPa[s.Index])).ToImmutableArray()),
        ];
    }

    /// <summary>Of the factor asked for, the share that the first load too many reaches by springs; 1 when there is none.</summary>
    public static double ShareBySprings(HoldingGround ground, ImmutableArray<HeldPod> pods)
    {
        var (part, enough) = (ground.On(pods), Enough(ground.Factor));
        return ground.Telling.Concat(Enumerable.Range(0, ground.Loads.Length))
            .Select(load => part.BySprings(ground.Loads[load].Wrench, enough).Factor / enough).FirstOrDefault(share => share < 1, 1);
    }

    /// <summary>A seat as a pod with some vacuum.</summary>
    public HeldPod Pod(PlacingFrame frame, FrameSeat seat, Point2 offset, double vacuumKPa)
    {
        var pose = frame.Poses[seat.Pose];
        var back = Turn.FromDegrees(-frame.AngleDeg);
        return new(
            Ground.Grips[pose.TypeIndex],
            back.Apply(frame.CentreOf(seat, offset)),
            Turn.FromDegrees(pose.Turned ? 90 - frame.AngleDeg : -frame.AngleDeg),
            vacuumKPa);
    }

    /// <summary>The direction in which the part tips off its pods before the vacuum is on; null when it stands.</summary>
    public Point2? Topples(ImmutableArray<HeldPod> pods)
    {
        var (distance, outward) = Firmness.Standing(pods, Ground.StandingCentre);
        return distance < HoldingGround.LeastStandMm - Tolerances.ContactMm ? outward : null;
    }
}
