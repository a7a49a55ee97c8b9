using System.Collections.Immutable;
using PodLayout.Choice;
using PodLayout.Geometry;
using PodLayout.Holding;
using PodLayout.Jobs;
using PodLayout.Seats;
using PodLayout.Vacuum;

namespace PodLayout.Placing;

/// <summary>
/// Holding as rows of the layout model: each way in which a choice does not hold becomes a row that every layout must keep.
/// </summary>
internal sealed class HoldingModel
{
    // Ways that are made rows at a time: a few are enough to learn from.
    private const int RowsOfRound = 12;

    // Choices of a set of placements that are looked into. Where places are known only roughly the rows are weak, and a smaller
    // set learns more from the next ones.
    private const int MostLooks = 4;

    private readonly ImmutableArray<int> _telling;
    private readonly double _mostFriction;

    /// <summary>The model for a part and what it must be held against.</summary>
    public HoldingModel(HoldingGround ground)
    {
        Ground = ground;
        _telling = ground.Telling;
        _mostFriction = ground.Grips.Max(g => g.Friction);
    }

    /// <summary>The part and what it must be held against.</summary>
    public HoldingGround Ground { get; }

    /// <summary>The factor at which holding counts as reached.</summary>
    public double EnoughFactor => Ground.Factor * (1 - Tolerances.HoldingShare);

    /// <summary>
    /// The model of a job; null where nothing is known of the cutter, or all of it is assumed: an assumption gives a figure, but
    /// asks for no pods.
    /// </summary>
    /// <param name="job">The job.</param>
    /// <param name="factor">The holding factor that layouts must reach.</param>
    public static HoldingModel? Of(Job job, double factor) =>
        !job.Part.Loads.AreAssumed && HoldingGround.Of(job.Part, job.Shop, factor) is { } ground ? new(ground) : null;

    /// <summary>
    /// The rows of a set of placements that a choice breaks: of the ways known from larger sets, and of those in which the choice
    /// gives way at the middle of the set with the most vacuum that there can be.
    /// </summary>
    /// <param name="frame">The part at its angle or angles.</param>
    /// <param name="seats">The seats of the set.</param>
    /// <param name="box">The offsets.</param>
    /// <param name="atLeast">Fewest pods of the layouts of the set.</param>
    /// <param name="atMost">Most pods of the layouts that matter.</param>
    /// <param name="known">Ways that are known; those that are found are added.</param>
    public Func<ImmutableArray<int>, ImmutableArray<HoldRow>> Over(
        PlacingFrame frame, ImmutableArray<FrameSeat> seats, OffsetBox box, int atLeast, int atMost, List<Weakness> known)
    {
        var pods = Likely(frame, seats, box.Centre, atLeast);
        double[] spreads = [.. seats.Select(s => frame.SpreadOf(s, box))];
        var bears = Bears(frame, seats);
        var farthest = Farthest(frame, seats, pods, bears);
        var pushN = Ground.MostPushN(atMost);
        var (asked, looks) = (0, 0);
        return filled =>
        {
            // A layout that every known way lets through may give way in a new one.
            var rows = Broken(known.Skip(asked));
            asked = known.Count;
            if (rows.Length > 0)
            {
                return rows;
            }

            if (++looks > MostLooks)
            {
                return [];
            }

            ImmutableArray<HeldPod> chosen = [.. filled.Where(s => bears[s]).Select(s => pods[s])];
            if (Topples(chosen) is { } outward && Standing(pods, bears, spreads, outward) is var stand && !stand.IsKept(filled))
            {
                return [stand];
            }

            known.AddRange(Ways(chosen, farthest, _telling));
            rows = Broken(known.Skip(asked));
            asked = known.Count;
            return rows;

            ImmutableArray<HoldRow> Broken(IEnumerable<Weakness> ways) => BrokenBy(filled, ways, pods, bears, spreads, pushN);
        };
    }

    /// <summary>The rows of one placement that a choice breaks; none when it holds.</summary>
    /// <param name="frame">The part at its angle.</param>
    /// <param name="seats">The seats there.</param>
    /// <param name="offset">Where the pivot lies within its pitch.</param>
    /// <param name="shift">The whole pitches.</param>
    /// <param name="known">Ways that are known; those that are found are added.</param>
    public Func<ImmutableArray<int>, ImmutableArray<HoldRow>> At(
        PlacingFrame frame, ImmutableArray<FrameSeat> seats, Point2 offset, ShiftClass shift, List<Weakness> known)
    {
        var pods = Likely(frame, seats, offset, 1);
        var spreads = new double[pods.Length];
        var atLeast = 1;
        var bears = Bears(frame, seats);
        var farthest = Farthest(frame, seats, pods, bears);
        var pushN = Ground.MostPushN(Ground.Shop.Pods.Sum(p => p.Stock));
        var asked = 0;
        return filled =>
        {
            if (filled.Length > atLeast)
            {
                // The choice has as few pods as any that keeps the rows so far: the more there are, the less vacuum is left at each.
                atLeast = filled.Length;
                pods = Likely(frame, seats, offset, atLeast);
                asked = 0;
            }

            var rows = BrokenBy(filled, known.Skip(asked), pods, bears, spreads, pushN);
            asked = known.Count;
            if (rows.Length > 0)
            {
                return rows;
            }

            ImmutableArray<FrameSeat> chosen = [.. filled.Select(s => seats[s])];
            var held = Held(frame, chosen, offset, shift.Columns, shift.Rows);
            if (Topples(held) is { } outward)
            {
                return [Standing(pods, bears, spreads, outward)];
            }

            var ways = Ways(held, farthest, _telling);
            if (ways.IsEmpty)
            {
                ways = Ways(held, farthest, Enumerable.Range(0, Ground.Loads.Length));
            }

            if (ways.IsEmpty)
            {
                return [];
            }

            known.AddRange(ways);
            rows = BrokenBy(filled, ways, pods, bears, spreads, pushN);
            asked = known.Count;
            // With the most vacuum that there can be it would hold; with what is left at these pods it does not: one more pod, or
            // another, is needed.
            return rows.IsEmpty ? [OtherThan(filled, pods.Length)] : rows;
        };
    }

    /// <summary>Whether a layout holds at the factor.</summary>
    public bool Holds(PlacingFrame frame, ImmutableArray<FrameSeat> seats, Point2 offset, int columns, int rows)
    {
        var held = Held(frame, seats, offset, columns, rows);
        return Topples(held) is null
            && Firmness.Weakest(Ground, Ground.On(held), _telling.Concat(Enumerable.Range(0, Ground.Loads.Length)), EnoughFactor)
                .Limit.Factor >= EnoughFactor;
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
        var held = Held(frame, seats, offset, columns, rows);
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
            var equilibrium = Ground.On(Held(frame, seats.Add(seat), offset, columns, rows));
            var least = best?.Factor ?? -1;
            var quick = Firmness.Weakest(Ground, equilibrium, _telling.Append(load), least).Limit.Factor;
            if (quick > least)
            {
                var factor = Firmness.Weakest(Ground, equilibrium, Enumerable.Range(0, Ground.Loads.Length), least).Limit.Factor;
                best = factor > least ? (seat, factor) : best;
            }
        }

        return best;
    }

    private static HoldRow OtherThan(ImmutableArray<int> filled, int seatCount)
    {
        int[] others = [.. Enumerable.Range(0, seatCount).Where(s => filled.BinarySearch(s) < 0)];
        return new(others, [.. others.Select(_ => HoldRow.Needed)]);
    }

    // What stands under a loose piece takes its share of the vacuum and bears nothing of the part.
    private static bool[] Bears(PlacingFrame frame, ImmutableArray<FrameSeat> seats) => [.. seats.Select(s => frame.PieceOver(s.Pose) is null)];

    // Pods under the part with the vacuum that is left at each, as they stand.
    private ImmutableArray<HeldPod> Held(PlacingFrame frame, ImmutableArray<FrameSeat> seats, Point2 offset, int columns, int rows)
    {
        var board = Ground.Shop.Board;
        var vacuum = VacuumNetwork.At(Ground.Shop, [.. seats.Select(s =>
        {
            var pose = frame.Poses[s.Pose];
            return new PodOnPorts(
                pose.Type, [.. BoardSeats.FeedingPorts(pose, board, s.Column + columns, s.Row + rows).Take(pose.Type.PortsNeeded)]);
        })]);
        var bears = Bears(frame, seats);
        return [.. seats.Select((s, i) => Pod(frame, s, offset, vacuum.AtPodKPa[i])).Where((_, i) => bears[i])];
    }

    private HeldPod Pod(PlacingFrame frame, FrameSeat seat, Point2 offset, double vacuumKPa)
    {
        var pose = frame.Poses[seat.Pose];
        var back = Turn.FromDegrees(-frame.AngleDeg);
        return new(
            Ground.Grips[pose.TypeIndex],
            back.Apply(frame.CentreOf(seat, offset)),
            Turn.FromDegrees(pose.Turned ? 90 - frame.AngleDeg : -frame.AngleDeg),
            vacuumKPa);
    }

    // The seats with the most vacuum that each can have among so many pods.
    private HeldPod[] Likely(PlacingFrame frame, ImmutableArray<FrameSeat> seats, Point2 offset, int atLeast)
    {
        var most = Ground.MostKPa(atLeast);
        return [.. seats.Select(s => Pod(frame, s, offset, most[frame.Poses[s.Pose].TypeIndex]))];
    }

    private Point2? Topples(ImmutableArray<HeldPod> pods)
    {
        var (distance, outward) = Firmness.Standing(pods, Ground.CentreOfMass);
        return distance < HoldingGround.LeastStandMm - Tolerances.ContactMm ? outward : null;
    }

    // Before the vacuum is on, some pod must bear the part beyond its centre of mass in every direction.
    private HoldRow Standing(HeldPod[] pods, bool[] bears, double[] spreads, Point2 outward)
    {
        var needed = Ground.CentreOfMass.Dot(outward) + HoldingGround.LeastStandMm - Tolerances.ContactMm;
        int[] beyond = [.. Enumerable.Range(0, pods.Length).Where(s => bears[s] && pods[s].Spots.Max(p => p.Dot(outward)) + spreads[s] >= needed)];
        return new(beyond, [.. beyond.Select(_ => HoldRow.Needed)]);
    }

    // Spots of the seats that lie farthest out. A motion that none of them hinders is hindered by no seat between: how far a spot
    // rises is linear in its place, and how far it slides convex.
    private static ImmutableArray<Contact> Farthest(PlacingFrame frame, ImmutableArray<FrameSeat> seats, HeldPod[] pods, bool[] bears) =>
    [
        .. Enumerable.Range(0, seats.Length).Where(s => bears[s]).GroupBy(s => frame.Poses[seats[s].Pose]).SelectMany(alike =>
        {
            int[] ofPose = [.. alike];
            return Hull.Corners([.. ofPose.Select(s => pods[s].Centre)]).SelectMany(c => pods[ofPose[c]].Contacts);
        }),
    ];

    // Ways in which pods give way below the factor, to some of the forces: the weakest of each bundle. Where they give way even
    // when no other seat may be moved through, that way is taken: it asks something of every layout.
    private ImmutableArray<Weakness> Ways(ImmutableArray<HeldPod> pods, ImmutableArray<Contact> farthest, IEnumerable<int> loads)
    {
        var equilibrium = Ground.On(pods);
        if (!equilibrium.CanRest)
        {
            return [new(default, 0)];
        }

        var leaning = new Lazy<Equilibrium>(() => Ground.On(pods, farthest));
        return
        [
            .. loads.Select(load => (load, Limit: equilibrium.Of(Ground.Loads[load].Wrench, EnoughFactor)))
                .Where(l => l.Limit.Factor < EnoughFactor).OrderBy(l => l.Limit.Factor).Take(RowsOfRound)
                .Select(l => leaning.Value.Of(Ground.Loads[l.load].Wrench, EnoughFactor) is { Factor: var factor } far && factor < EnoughFactor
                    ? (l.load, Limit: far) : l)
                .Select(l => Weakness.Of(l.Limit, Ground.Loads[l.load], pods)),
        ];
    }

    private ImmutableArray<HoldRow> BrokenBy(
        ImmutableArray<int> filled, IEnumerable<Weakness> ways, HeldPod[] pods, bool[] bears, double[] spreads, double pushN)
    {
        var rows = ImmutableArray.CreateBuilder<HoldRow>();
        var most = spreads.DefaultIfEmpty(0).Max();
        foreach (var way in ways.Where(w => w.Motion != default))
        {
            var blurred = way.Blurred(most, _mostFriction);
            var needed = blurred.Needed(Ground, way);
            int Share(int s) => !bears[s] ? 0 : (int)Math.Ceiling(Math.Min(1, blurred.Brought(pods[s], spreads[s], pushN) / needed) * HoldRow.Needed);
            // What the choice itself brings is quickly seen; the whole row is made only when that is too little.
            if (needed > 0 && filled.Sum(s => (long)Share(s)) < HoldRow.Needed)
            {
                var shares = Enumerable.Range(0, pods.Length).Select(s => (Seat: s, Share: Share(s))).Where(r => r.Share > 0).ToList();
                rows.Add(new([.. shares.Select(r => r.Seat)], [.. shares.Select(r => r.Share)]));
            }
        }

        return rows.ToImmutable();
    }
}
