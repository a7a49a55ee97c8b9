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

    // So many choices of one placement may fall short by springs alone; then one more pod is asked for.
    private const int MostOthers = 3;

    // What falls short by springs is asked to hold so much more by pulls than would bring it up, were the two in proportion.
    private const double AimBeyond = 1.02;

    /// <summary>The model for a part, or a part and the loose pieces that are held beside it.</summary>
    /// <param name="grounds">What must be held against what: the part first.</param>
    public HoldingModel(params ImmutableArray<HoldingGround> grounds) => Grounds = grounds;

    /// <summary>What must be held against what: the part, then its loose pieces that are held.</summary>
    public ImmutableArray<HoldingGround> Grounds { get; }

    /// <summary>The part and what it must be held against.</summary>
    public HoldingGround Ground => Grounds[0];

    // Whether the figure by springs is left out.
    private bool IsByPullsAlone { get; init; }

    /// <summary>The same model without the figure by springs: what every layout that holds must keep, and no more.</summary>
    public HoldingModel ByPullsAlone() => new(Grounds) { IsByPullsAlone = true };

    // How many times the factor rows ask for, by pulls: more than once where a choice is looked for that holds by springs.
    private double Aim { get; init; } = 1;

    /// <summary>
    /// The same model with rows that ask for more by pulls: a choice that keeps them mostly holds by springs too. Whatever rows
    /// then rule out may hold.
    /// </summary>
    /// <param name="times">How many times the factor.</param>
    public HoldingModel AimingAt(double times) => new(Grounds) { Aim = times, IsByPullsAlone = IsByPullsAlone };

    /// <summary>The factor at which holding counts as reached.</summary>
    public double EnoughFactor => Enough(Ground.Factor);

    /// <summary>What counts as a factor that is asked for.</summary>
    public static double Enough(double factor) => factor * (1 - Tolerances.HoldingShare);

    /// <summary>The model of a job; null where nothing is known of the cutter.</summary>
    /// <param name="job">The job.</param>
    /// <param name="factor">The holding factor that layouts must reach.</param>
    public static HoldingModel? Of(Job job, double factor) => HoldingGround.Of(job.Part, job.Shop, factor) is { } ground
        ? new([ground, .. HoldingGround.OfPieces(job.Part, job.Shop, factor)]) : null;

    /// <summary>
    /// The rows of a set of placements that a choice breaks: of the ways known from larger sets, and of those in which the choice
    /// gives way, by pulls, at the middle of the set with the most vacuum that there can be.
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
        var places = new SeatPlaces(Likely(frame, seats, box.Centre, atLeast), [.. seats.Select(s => frame.SpreadOf(s, box))], Bodies(frame, seats));
        ImmutableArray<double> pushesN = [.. Grounds.Select(g => g.MostPushN(atMost, Aim))];
        var farthest = Grounds.Select((_, body) => Farthest(frame, seats, places, body)).ToArray();
        var pairs = new Lazy<HoldRow?>[Grounds.Length];
        for (var body = 1; body < Grounds.Length; body++)
        {
            var piece = body;
            pairs[piece] = new(() => MorePodsThanOne(places, piece, farthest[piece], pushesN[piece]));
        }

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

            if (Topples(places.Chosen(filled, 0)) is { } outward && Standing(places, outward) is var stand && !stand.IsKept(filled))
            {
                return [stand];
            }

            for (var body = 1; body < Grounds.Length; body++)
            {
                if (pairs[body].Value is { } pair && !pair.IsKept(filled))
                {
                    return [pair];
                }
            }

            for (var body = 0; body < Grounds.Length; body++)
            {
                known.AddRange(Ways(body, places.Chosen(filled, body), farthest[body], Grounds[body].Telling, Aim));
            }

            rows = Broken(known.Skip(asked));
            asked = known.Count;
            return rows;

            ImmutableArray<HoldRow> Broken(IEnumerable<Weakness> ways) => BrokenBy(filled, ways, places, pushesN, Aim);
        };
    }

    /// <summary>
    /// The rows of one placement that a choice breaks; none when it holds, by pulls and by springs. Rows for what gives way by
    /// pulls hold for every layout there. Once a choice falls short by springs alone, rows ask for as much more by pulls, and after
    /// a few such choices for one more pod: what is then found need not be the fewest there.
    /// </summary>
    /// <param name="frame">The part at its angle.</param>
    /// <param name="seats">The seats there.</param>
    /// <param name="offset">Where the pivot lies within its pitch.</param>
    /// <param name="shift">The whole pitches.</param>
    /// <param name="known">Ways that are known; those that are found are added.</param>
    /// <param name="onShortBySprings">Told of each choice that falls short by springs alone.</param>
    public Func<ImmutableArray<int>, ImmutableArray<HoldRow>> At(
        PlacingFrame frame, ImmutableArray<FrameSeat> seats, Point2 offset, ShiftClass shift, List<Weakness> known, Action onShortBySprings)
    {
        var bodies = Bodies(frame, seats);
        SeatPlaces Places(int atLeast) => new(Likely(frame, seats, offset, atLeast), new double[seats.Length], bodies);
        var places = Places(1);
        var atLeast = 1;
        var farthest = Grounds.Select((_, body) => Farthest(frame, seats, places, body)).ToArray();
        ImmutableArray<double> pushesN = [.. Grounds.Select(g => g.MostPushN(Ground.Shop.Pods.Sum(p => p.Stock), Aim))];
        var (asked, others, aim) = (0, 0, Aim);
        return filled =>
        {
            if (filled.Length > atLeast)
            {
                // The choice has as few pods as any that keeps the rows so far: the more there are, the less vacuum is left at each.
                atLeast = filled.Length;
                places = Places(atLeast);
                (asked, others) = (0, 0);
            }

            var rows = BrokenBy(filled, known.Skip(asked), places, pushesN, Aim);
            asked = known.Count;
            if (rows.Length > 0)
            {
                return rows;
            }

            var held = Held(frame, [.. filled.Select(s => seats[s])], offset, shift.Columns, shift.Rows);
            if (Topples(held[0]) is { } outward)
            {
                return [Standing(places, outward)];
            }

            ImmutableArray<Weakness> ways = [.. Grounds.SelectMany((g, body) =>
                Ways(body, held[body], farthest[body], g.Telling, Aim) is { IsEmpty: false } telling ? telling
                    : Ways(body, held[body], farthest[body], Enumerable.Range(0, g.Loads.Length), Aim))];
            if (ways.IsEmpty)
            {
                var share = IsByPullsAlone ? 1 : Grounds.Select((g, body) => ShareBySprings(g, held[body])).Min();
                if (share >= 1)
                {
                    return [];
                }

                onShortBySprings();
                if (++others > MostOthers)
                {
                    return [OneMoreThan(filled, seats.Length)];
                }

                // A part that springs hardly hold at all asks for no end of pulls.
                aim = Math.Max(aim, AimBeyond / Math.Max(share, 0.5));
                ImmutableArray<Weakness> stronger = [.. Grounds.SelectMany((g, body) => Ways(body, held[body], farthest[body], g.Telling, aim))];
                rows = BrokenBy(filled, stronger, places, pushesN, aim);
                return rows.IsEmpty ? [OtherThan(filled, seats.Length)] : rows;
            }

            known.AddRange(ways);
            rows = BrokenBy(filled, ways, places, pushesN, Aim);
            asked = known.Count;
            // With the most vacuum that there can be it would hold; with what is left at these pods it does not: one more pod, or
            // another, is needed.
            return rows.IsEmpty ? [OtherThan(filled, seats.Length)] : rows;
        };
    }

    /// <summary>Whether a layout holds the part (0) or one of the pieces at the factor, by both figures.</summary>
    public bool HoldsBody(int body, PlacingFrame frame, ImmutableArray<FrameSeat> seats, Point2 offset, int columns, int rows)
    {
        var ground = Grounds[body];
        return Firmness.Weakest(
            ground, ground.On(Held(frame, seats, offset, columns, rows)[body]), ground.Telling.Concat(Enumerable.Range(0, ground.Loads.Length)),
            EnoughFactor).Limit.Factor >= EnoughFactor;
    }

    /// <summary>Whether a layout holds at the factor, by both figures.</summary>
    public bool Holds(PlacingFrame frame, ImmutableArray<FrameSeat> seats, Point2 offset, int columns, int rows)
    {
        var held = Held(frame, seats, offset, columns, rows);
        return Topples(held[0]) is null && Grounds.Select((g, body) => Firmness.Weakest(
            g, g.On(held[body]), g.Telling.Concat(Enumerable.Range(0, g.Loads.Length)), EnoughFactor).Limit.Factor >= EnoughFactor).All(h => h);
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
        var held = Held(frame, seats, offset, columns, rows)[0];
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
            var equilibrium = Ground.On(Held(frame, seats.Add(seat), offset, columns, rows)[0]);
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

    private static HoldRow OtherThan(ImmutableArray<int> filled, int seatCount)
    {
        int[] others = [.. Enumerable.Range(0, seatCount).Where(s => filled.BinarySearch(s) < 0)];
        return new(others, [.. others.Select(_ => HoldRow.Needed)]);
    }

    // One pod more than these, whichever.
    private static HoldRow OneMoreThan(ImmutableArray<int> filled, int seatCount)
    {
        int[] all = [.. Enumerable.Range(0, seatCount)];
        return new(all, [.. all.Select(_ => (HoldRow.Needed + filled.Length) / (filled.Length + 1))]);
    }

    // What each seat bears: the index of its ground; -1 for a piece that no cut runs along. All take their share of the vacuum.
    private int[] Bodies(PlacingFrame frame, ImmutableArray<FrameSeat> seats) =>
        [.. seats.Select(s => frame.PieceOver(s.Pose) is { } piece ? Grounds.ToList().FindIndex(1, g => g.Piece == piece.Name) : 0)];

    // Pods under each ground with the vacuum that is left at each, as they stand.
    private ImmutableArray<HeldPod>[] Held(PlacingFrame frame, ImmutableArray<FrameSeat> seats, Point2 offset, int columns, int rows)
    {
        var board = Ground.Shop.Board;
        var vacuum = VacuumNetwork.At(Ground.Shop, [.. seats.Select(s =>
        {
            var pose = frame.Poses[s.Pose];
            return new PodOnPorts(
                pose.Type, [.. BoardSeats.FeedingPorts(pose, board, s.Column + columns, s.Row + rows).Take(pose.Type.PortsNeeded)]);
        })]);
        var bodies = Bodies(frame, seats);
        return
        [
            .. Grounds.Select((_, body) => seats.Select((s, i) => (Seat: s, Index: i)).Where(s => bodies[s.Index] == body)
                .Select(s => Pod(frame, s.Seat, offset, vacuum.AtPodKPa[s.Index])).ToImmutableArray()),
        ];
    }

    // Of the factor asked for, the share that the first load too many reaches by springs; 1 when there is none.
    private double ShareBySprings(HoldingGround ground, ImmutableArray<HeldPod> pods)
    {
        var part = ground.On(pods);
        return ground.Telling.Concat(Enumerable.Range(0, ground.Loads.Length))
            .Select(load => part.BySprings(ground.Loads[load].Wrench, EnoughFactor).Factor / EnoughFactor).FirstOrDefault(share => share < 1, 1);
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
        var (distance, outward) = Firmness.Standing(pods, Ground.StandingCentre);
        return distance < HoldingGround.LeastStandMm - Tolerances.ContactMm ? outward : null;
    }

    // Before the vacuum is on, some pod must bear the part beyond its centre of mass in every direction.
    private HoldRow Standing(SeatPlaces places, Point2 outward)
    {
        var needed = Ground.StandingCentre.Dot(outward) + HoldingGround.LeastStandMm - Tolerances.ContactMm;
        int[] beyond = [.. Enumerable.Range(0, places.Pods.Length).Where(s =>
            places.Bodies[s] == 0 && places.Pods[s].Spots.Max(p => p.Dot(outward)) + places.SpreadsMm[s] >= needed)];
        return new(beyond, [.. beyond.Select(_ => HoldRow.Needed)]);
    }

    // Spots of the seats that lie farthest out, without friction. A motion in which none of them sinks lets no seat between sink:
    // how far a spot rises is linear in its place.
    private static ImmutableArray<Contact> Farthest(PlacingFrame frame, ImmutableArray<FrameSeat> seats, SeatPlaces places, int body) =>
    [
        .. Enumerable.Range(0, seats.Length).Where(s => places.Bodies[s] == body).GroupBy(s => frame.Poses[seats[s].Pose]).SelectMany(alike =>
        {
            int[] ofPose = [.. alike];
            return Hull.Corners([.. ofPose.Select(s => places.Pods[s].Centre)]).SelectMany(c => places.Pods[ofPose[c]].Contacts)
                .Select(c => c with { Friction = 0 });
        }),
    ];

    // A loose piece mostly asks for one pod or two. Where each of its seats alone gives way, it is two: rows of single ways, each
    // kept by another seat, would let shares of one pod do.
    private HoldRow? MorePodsThanOne(SeatPlaces places, int body, ImmutableArray<Contact> farthest, double pushN)
    {
        List<int> seats = [];
        List<Weakness> ways = [];
        for (var s = 0; s < places.Pods.Length; s++)
        {
            if (places.Bodies[s] != body)
            {
                continue;
            }

            seats.Add(s);
            if (!ways.Exists(way => GivesWay(way, s)))
            {
                ways.AddRange(Ways(body, [places.Pods[s]], farthest, Grounds[body].Telling, Aim).Where(w => w.Motion != default));
                if (!ways.Exists(way => GivesWay(way, s)))
                {
                    return null;
                }
            }
        }

        return new([.. seats], [.. seats.Select(_ => HoldRow.Needed / 2)]);

        bool GivesWay(Weakness way, int seat)
        {
            var blurred = way.Blurred(places.SpreadsMm[seat]);
            return blurred.Needed(Grounds[body], way, Aim) is var needed && needed > 0
                && blurred.Brought(places.Pods[seat], places.SpreadsMm[seat], pushN) < needed * (1 - 1e-9);
        }
    }

    // Ways in which pods give way below the factor, by pulls, to some of the forces: the weakest of each bundle. Where they give
    // way even when no other seat may be sunk through, that way is taken: it asks something of every layout.
    private ImmutableArray<Weakness> Ways(int body, ImmutableArray<HeldPod> pods, ImmutableArray<Contact> farthest, IEnumerable<int> loads, double aim)
    {
        var enough = EnoughFactor * aim;
        var ground = Grounds[body];
        var part = ground.On(pods);
        if (!part.CanRest)
        {
            return [new(default, 0, body)];
        }

        var leaning = new Lazy<PartOnPods>(() => ground.On(pods, farthest));
        return
        [
            .. loads.Select(load => (load, Limit: part.ByPulls(ground.Loads[load].Wrench, enough)))
                .Where(l => l.Limit.Factor < enough).OrderBy(l => l.Limit.Factor).Take(RowsOfRound)
                .Select(l => leaning.Value.ByPullsAlone(ground.Loads[l.load].Wrench, enough) is { Factor: var factor } far && factor < enough
                    ? (l.load, Limit: far) : l)
                .Select(l => Weakness.Of(l.Limit, ground.Loads[l.load], pods, body)),
        ];
    }

    private ImmutableArray<HoldRow> BrokenBy(
        ImmutableArray<int> filled, IEnumerable<Weakness> ways, SeatPlaces places, ImmutableArray<double> pushesN, double aim)
    {
        var rows = ImmutableArray.CreateBuilder<HoldRow>();
        var most = places.SpreadsMm.DefaultIfEmpty(0).Max();
        foreach (var way in ways.Where(w => w.Motion != default))
        {
            var blurred = way.Blurred(most);
            var needed = blurred.Needed(Grounds[way.Body], way, aim);
            int Share(int s) => places.Bodies[s] != way.Body ? 0
                : (int)Math.Ceiling(Math.Min(1, blurred.Brought(places.Pods[s], places.SpreadsMm[s], pushesN[way.Body]) / needed) * HoldRow.Needed);
            // What the choice itself brings is quickly seen; the whole row is made only when that is too little.
            if (needed > 0 && filled.Sum(s => (long)Share(s)) < HoldRow.Needed)
            {
                var shares = Enumerable.Range(0, places.Pods.Length).Select(s => (Seat: s, Share: Share(s))).Where(r => r.Share > 0).ToList();
                rows.Add(new([.. shares.Select(r => r.Seat)], [.. shares.Select(r => r.Share)]));
            }
        }

        return rows.ToImmutable();
    }

    // Seats as pods with the most vacuum that each can have, how far each may lie from there, and what it bears.
    private sealed record SeatPlaces(HeldPod[] Pods, double[] SpreadsMm, int[] Bodies)
    {
        public ImmutableArray<HeldPod> Chosen(ImmutableArray<int> filled, int body) => [.. filled.Where(s => Bodies[s] == body).Select(s => Pods[s])];
    }
}
