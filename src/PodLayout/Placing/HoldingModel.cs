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
    // Ways that are made rows at a time: a few are enough to learn from, each costs a run of the model.
    private const int RowsOfRound = 6;

    private readonly ImmutableArray<int> _telling;
    private readonly double _mostFriction;

    private HoldingModel(HoldingGround ground)
    {
        Ground = ground;
        _telling = Firmness.Telling(ground);
        _mostFriction = ground.Grips.Max(g => g.Friction);
    }

    /// <summary>The part and what it must be held against.</summary>
    public HoldingGround Ground { get; }

    /// <summary>The factor at which holding counts as reached.</summary>
    public double EnoughFactor => Ground.Factor * (1 - Tolerances.HoldingShare);

    /// <summary>The model of a job; null where nothing is known of the cutter.</summary>
    /// <param name="job">The job.</param>
    /// <param name="factor">The holding factor that layouts must reach.</param>
    public static HoldingModel? Of(Job job, double factor) =>
        HoldingGround.Of(job.Part, job.Shop, factor) is { } ground ? new(ground) : null;

    /// <summary>
    /// The rows of a set of placements that a choice breaks: of the ways known from larger sets, and of those in which the choice
    /// gives way at the middle of the set with the most vacuum that there can be.
    /// </summary>
    /// <param name="frame">The part at its angle or angles.</param>
    /// <param name="seats">The seats of the set.</param>
    /// <param name="box">The offsets.</param>
    /// <param name="atMost">Most pods of the layouts that matter.</param>
    /// <param name="known">Ways that are known; those that are found are added.</param>
    public Func<ImmutableArray<int>, ImmutableArray<HoldRow>> Over(
        PlacingFrame frame, ImmutableArray<FrameSeat> seats, OffsetBox box, int atMost, List<Weakness> known)
    {
        HeldPod[] pods = [.. seats.Select(s => Pod(frame, s, box.Centre, Ground.MostKPa[frame.Poses[s.Pose].TypeIndex]))];
        double[] spreads = [.. seats.Select(s => frame.SpreadOf(s, box))];
        var pushN = Ground.MostPushN(atMost);
        var asked = 0;
        return filled =>
        {
            // A layout that every known way lets through may give way in a new one.
            var rows = Broken(known.Skip(asked));
            asked = known.Count;
            if (rows.Length > 0)
            {
                return rows;
            }

            ImmutableArray<HeldPod> chosen = [.. filled.Select(s => pods[s])];
            if (Topples(chosen) is { } outward && Standing(pods, spreads, outward) is var stand && !stand.IsKept(filled))
            {
                return [stand];
            }

            known.AddRange(Ways(chosen, _telling));
            rows = Broken(known.Skip(asked));
            asked = known.Count;
            return rows;

            ImmutableArray<HoldRow> Broken(IEnumerable<Weakness> ways) => BrokenBy(filled, ways, pods, spreads, pushN);
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
        HeldPod[] pods = [.. seats.Select(s => Pod(frame, s, offset, Ground.MostKPa[frame.Poses[s.Pose].TypeIndex]))];
        var spreads = new double[pods.Length];
        var pushN = Ground.MostPushN(Ground.Shop.Pods.Sum(p => p.Stock));
        var asked = 0;
        return filled =>
        {
            var rows = BrokenBy(filled, known.Skip(asked), pods, spreads, pushN);
            asked = known.Count;
            if (rows.Length > 0)
            {
                return rows;
            }

            ImmutableArray<FrameSeat> chosen = [.. filled.Select(s => seats[s])];
            var held = Held(frame, chosen, offset, shift.Columns, shift.Rows);
            if (Topples(held) is { } outward)
            {
                return [Standing(pods, spreads, outward)];
            }

            var ways = Ways(held, _telling);
            if (ways.IsEmpty)
            {
                ways = Ways(held, Enumerable.Range(0, Ground.Loads.Length));
            }

            if (ways.IsEmpty)
            {
                return [];
            }

            known.AddRange(ways);
            rows = BrokenBy(filled, ways, pods, spreads, pushN);
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
        return Topples(held) is null && Ways(held, _telling).IsEmpty && Ways(held, Enumerable.Range(0, Ground.Loads.Length)).IsEmpty;
    }

    private static HoldRow OtherThan(ImmutableArray<int> filled, int seatCount)
    {
        int[] others = [.. Enumerable.Range(0, seatCount).Where(s => filled.BinarySearch(s) < 0)];
        return new(others, [.. others.Select(_ => HoldRow.Needed)]);
    }

    // Pods with the vacuum that is left at each, as they stand.
    private ImmutableArray<HeldPod> Held(PlacingFrame frame, ImmutableArray<FrameSeat> seats, Point2 offset, int columns, int rows)
    {
        var board = Ground.Shop.Board;
        var vacuum = VacuumNetwork.At(Ground.Shop, [.. seats.Select(s =>
        {
            var pose = frame.Poses[s.Pose];
            return new PodOnPorts(
                pose.Type, [.. BoardSeats.FeedingPorts(pose, board, s.Column + columns, s.Row + rows).Take(pose.Type.PortsNeeded)]);
        })]);
        return [.. seats.Select((s, i) => Pod(frame, s, offset, vacuum.AtPodKPa[i]))];
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

    private Point2? Topples(ImmutableArray<HeldPod> pods)
    {
        var (distance, outward) = Firmness.Standing(pods, Ground.CentreOfMass);
        return distance < HoldingGround.LeastStandMm - Tolerances.ContactMm ? outward : null;
    }

    // Before the vacuum is on, some pod must bear the part beyond its centre of mass in every direction.
    private HoldRow Standing(HeldPod[] pods, double[] spreads, Point2 outward)
    {
        var needed = Ground.CentreOfMass.Dot(outward) + HoldingGround.LeastStandMm - Tolerances.ContactMm;
        int[] beyond = [.. Enumerable.Range(0, pods.Length).Where(s => pods[s].Spots.Max(p => p.Dot(outward)) + spreads[s] >= needed)];
        return new(beyond, [.. beyond.Select(_ => HoldRow.Needed)]);
    }

    // Ways in which pods give way below the factor, to some of the forces: the weakest of each bundle.
    private ImmutableArray<Weakness> Ways(ImmutableArray<HeldPod> pods, IEnumerable<int> loads)
    {
        var equilibrium = Ground.On(pods);
        if (!equilibrium.CanRest)
        {
            return [new(default, 0)];
        }

        return
        [
            .. loads.Select(load => (load, Limit: equilibrium.Of(Ground.Loads[load].Wrench)))
                .Where(l => l.Limit.Factor < EnoughFactor).OrderBy(l => l.Limit.Factor).Take(RowsOfRound)
                .Select(l => Weakness.Of(l.Limit, Ground.Loads[l.load], pods)),
        ];
    }

    private ImmutableArray<HoldRow> BrokenBy(
        ImmutableArray<int> filled, IEnumerable<Weakness> ways, HeldPod[] pods, double[] spreads, double pushN)
    {
        var rows = ImmutableArray.CreateBuilder<HoldRow>();
        var most = spreads.DefaultIfEmpty(0).Max();
        foreach (var way in ways.Where(w => w.Motion != default))
        {
            var blurred = way.Blurred(most, _mostFriction);
            var needed = blurred.Needed(Ground, way);
            int Share(int s) => (int)Math.Ceiling(Math.Min(1, blurred.Brought(pods[s], spreads[s], pushN) / needed) * HoldRow.Needed);
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
