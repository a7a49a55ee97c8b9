using System.Collections.Immutable;
using PodLayout.Choice;
using PodLayout.Geometry;
using PodLayout.Holding;
using PodLayout.Jobs;

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
    public HoldingModel(params ImmutableArray<HoldingGround> grounds) => Bodies = new(grounds);

    /// <summary>The part and its loose pieces that are held, asked of layouts.</summary>
    public HeldBodies Bodies { get; }

    /// <summary>What must be held against what: the part, then its loose pieces that are held.</summary>
    public ImmutableArray<HoldingGround> Grounds => Bodies.Grounds;

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
        var places = new SeatPlaces(Likely(frame, seats, box.Centre, atLeast), [.. seats.Select(s => frame.SpreadOf(s, box))], Bodies.IndicesOf(frame, seats));
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

            if (Bodies.Topples(places.Chosen(filled, 0)) is { } outward && Standing(places, outward) is var stand && !stand.IsKept(filled))
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
        var bodies = Bodies.IndicesOf(frame, seats);
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

            var held = Bodies.Of(frame, [.. filled.Select(s => seats[s])], offset, shift.Columns, shift.Rows);
            if (Bodies.Topples(held[0]) is { } outward)
            {
                return [Standing(places, outward)];
            }

            ImmutableArray<Weakness> ways = [.. Grounds.SelectMany((g, body) =>
                Ways(body, held[body], farthest[body], g.Telling, Aim) is { IsEmpty: false } telling ? telling
                    : Ways(body, held[body], farthest[body], Enumerable.Range(0, g.Loads.Length), Aim))];
            if (ways.IsEmpty)
            {
                var share = IsByPullsAlone ? 1 : Grounds.Select((g, body) => HeldBodies.ShareBySprings(g, held[body])).Min();
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

    // The seats with the most vacuum that each can have among so many pods.
    private HeldPod[] Likely(PlacingFrame frame, ImmutableArray<FrameSeat> seats, Point2 offset, int atLeast)
    {
        var most = Ground.MostKPa(atLeast);
        return [.. seats.Select(s => Bodies.Pod(frame, s, offset, most[frame.Poses[s.Pose].TypeIndex]))];
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
        var enough = Bodies.EnoughFactor * aim;
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
