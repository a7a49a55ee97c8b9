using System.Collections.Immutable;
using System.Globalization;
using PodLayout.Geometry;
using PodLayout.Jobs;
using PodLayout.Seats;
using PodLayout.Shops;
using PodLayout.Support;

namespace PodLayout.Placing;

/// <summary>
/// Why a stretch stays unsupported: the rules are taken away one at a time, and the first without which a pod could stand near enough is
/// the cause.
/// </summary>
internal sealed class StretchCauses
{
    // The margins that are tried, as shares of what is asked for.
    private static readonly ImmutableArray<double> Shares = [0.75, 0.5, 0.25, 0];

    private readonly Job _job;
    private readonly ReachMap _reach;
    private readonly SearchGround _ground;
    private readonly bool[] _available;
    private readonly int[]? _filled;
    private readonly Lazy<BoxReach> _elsewhere;
    private readonly ImmutableArray<(Lazy<BoxReach?> Here, Lazy<BoxReach?> Anywhere, string Words)> _changes;

    /// <summary>Prepares them for one place of the part.</summary>
    /// <param name="job">The job.</param>
    /// <param name="reach">Its reach map.</param>
    /// <param name="ground">Seats there, whether or not the board has them.</param>
    /// <param name="available">Which of them the board has.</param>
    /// <param name="spot">Where the part lies within its pitch.</param>
    /// <param name="filled">The seats of a layout there; null for none.</param>
    public StretchCauses(Job job, ReachMap reach, SearchGround ground, bool[] available, OffsetBox spot, int[]? filled)
    {
        (_job, _reach, _ground, _available, _filled) = (job, reach, ground, available, filled);
        var whole = OffsetBox.WholePitch(job.Shop.Board.PitchMm);
        _elsewhere = new(() => Over(ground.Frame, whole));
        _changes =
        [
            .. Changes().Select(c =>
            {
                Lazy<PlacingFrame?> frame = new(() => c.Change() is { } changed ? FrameOf(changed) : null);
                return (new Lazy<BoxReach?>(() => frame.Value is { } f ? Over(f, spot) : null), new Lazy<BoxReach?>(() => frame.Value is { } f ? Over(f, whole) : null), c.Words);
            }),
        ];
    }

    /// <summary>The cause, in a sentence.</summary>
    /// <param name="run">The stretch's points.</param>
    /// <param name="supporters">For each point the seats that support it.</param>
    public string Of(int[] run, ImmutableArray<int[]> supporters)
    {
        // Of a long stretch the cause of most of its points counts.
        int[] free = [.. run.Where(p => supporters[p].Any(s => _available[s]))];
        if (2 * free.Length >= run.Length)
        {
            return InTheWay([.. Seats(free).Where(s => _available[s])]);
        }

        int[] rest = [.. run.Except(free)];
        int[] onWood = [.. rest.Where(p => supporters[p].Length > 0)];
        if (2 * onWood.Length >= rest.Length)
        {
            return OfBoard([.. Seats(onWood)]);
        }

        // At this place of the part first; a rule whose absence helps elsewhere only comes after the grooves.
        int[] none = [.. rest.Except(onWood)];
        if (_changes.FirstOrDefault(c => c.Here.Value is { } other && Reaches(other, none)) is { Words: { } words })
        {
            return words;
        }

        return Reaches(_elsewhere.Value, none)
            ? _job.Placement is PlacementWish.Given
                ? "no groove lies right for a pod there: with the part elsewhere one could stand."
                : "no groove lies right for a pod there, and where the part lies so that one does, more is lost elsewhere."
            : _changes.FirstOrDefault(c => c.Anywhere.Value is { } other && Reaches(other, none)).Words
                ?? (_elsewhere.Value.Seats == 0
                    ? "no pod of the shop, nor any of whole pitches, fits anywhere under the part: with these margins it is too narrow, or taken up by cuts, defects and spots to avoid."
                    : "the wood there is too narrow for any pod of whole pitches, or the limit less than the distance that pods keep from an edge.");

        IEnumerable<int> Seats(int[] points) => points.SelectMany(p => supporters[p]).Distinct().Order();
    }

    private string InTheWay(int[] seats)
    {
        int[] types = [.. seats.Select(s => _ground.Frame.Poses[_ground.Seats[s].Pose].TypeIndex).Distinct()];
        int Used(int type) => (_filled ?? []).Count(s => _ground.Frame.Poses[_ground.Seats[s].Pose].TypeIndex == type);
        return types.All(t => Used(t) >= _job.Shop.Pods[t].Stock)
            ? $"all pods that fit there ({Names(types)}) are in use: more in stock would do."
            : $"a pod there ({Names(types)}) would overlap pods that the rest needs.";
    }

    private string OfBoard(int[] seats)
    {
        var board = _job.Shop.Board;
        var shift = _ground.Classes[0];
        var lacks = seats.Select(s => (Seat: _ground.Seats[s], Pose: _ground.Frame.Poses[_ground.Seats[s].Pose]))
            .Select(s => (s.Pose, Body: s.Pose.BodyOn(board, s.Seat.Column + shift.Columns, s.Seat.Row + shift.Rows),
                Lack: BoardSeats.LackOf(s.Pose, board, s.Seat.Column + shift.Columns, s.Seat.Row + shift.Rows)))
            .OrderBy(s => s.Lack).ThenByDescending(s => s.Pose.ExtentXMm * s.Pose.ExtentYMm).ToList();
        var (pose, body, lack) = lacks[0];
        var at = string.Create(CultureInfo.InvariantCulture, $"X {body.Centre.X:0.#}, Y {body.Centre.Y:0.#} on the board");
        return lack switch
        {
            BoardLack.Port when board.Ports.FirstOrDefault(p => p.State != PortState.Working && body.Contains(p.Centre)) is { } dead =>
                $"a {pose.Type.Name} at {at} would do, but its port {dead.Name} brings no vacuum.",
            BoardLack.Port => $"a {pose.Type.Name} at {at} would do, but no port lies under it: one about there would mend it.",
            BoardLack.Obstacle => $"a {pose.Type.Name} at {at} would do, but {ObstacleUnder(pose, body)} is in its way.",
            BoardLack.StuckPort => $"a {pose.Type.Name} at {at} would do, but a port that cannot be plugged lies under its seal.",
            _ => $"a {pose.Type.Name} at {at} would do, but it would stand off the board's usable area.",
        };
    }

    private string ObstacleUnder(PodPose pose, Box2 body) => _job.Shop.Board.Obstacles
        .FirstOrDefault(o => Clearance.ToObstacle(pose, body, o.Shape) < o.ClearanceMm)?.Name ?? "an obstacle";

    private string Names(IEnumerable<int> types) => string.Join(", ", types.Order().Select(t => _job.Shop.Pods[t].Name));

    // What is taken away, in the order in which it is easiest mended.
    private IEnumerable<(Func<Job?> Change, string Words)> Changes()
    {
        var shape = _job.Part.Shape;
        Job Of(Func<Parts.PartShape, Parts.PartShape> change) => _job with { Part = _job.Part with { Shape = change(shape) } };
        yield return (() => shape.Avoided.IsEmpty ? null : Of(s => s with { Avoided = [] }),
            "a spot that the job says to avoid keeps pods off there.");
        yield return (() => shape.Defects.IsEmpty ? null : Of(s => s with { Defects = [] }),
            "a marked defect keeps seals off there: turn or move the drawing on the wood.");
        yield return (() => shape.WeakFloors.IsEmpty ? null : Of(s => s with { WeakFloors = [] }),
            "the floor there is too thin to bear a pod's vacuum.");
        yield return (() => shape.Hazards.IsEmpty ? null : Of(s => s with { Hazards = [] }),
            $"a cut or a pocket keeps pods off there ({string.Join(", ", shape.Hazards.Select(h => h.Name).Distinct().Take(3))}).");
        foreach (var share in Shares)
        {
            double seal = _job.Margins.SealMarginMm * share, cut = _job.Margins.CutClearanceMm * share;
            yield return (() => _job with { Margins = _job.Margins with { SealMarginMm = seal } },
                Text($"the wood there is too narrow for the seal margin of {_job.Margins.SealMarginMm:0.##} mm: {seal:0.##} mm would do."));
            yield return (() => _job with { Margins = _job.Margins with { CutClearanceMm = cut } },
                Text($"the wood there is too narrow for the cut clearance of {_job.Margins.CutClearanceMm:0.##} mm: {cut:0.##} mm would do."));
            yield return (() => _job with { Margins = _job.Margins with { SealMarginMm = seal, CutClearanceMm = cut } },
                Text($"the wood there is too narrow for the margins of {_job.Margins.SealMarginMm:0.##} mm for seals and {_job.Margins.CutClearanceMm:0.##} mm for bodies: {seal:0.##} and {cut:0.##} mm would do."));
        }

        foreach (var small in OtherPods.SmallerOf(_job.Shop))
        {
            yield return (() => _job with { Shop = _job.Shop with { Pods = [.. _job.Shop.Pods, small] } },
                $"the wood there is too narrow for the pods of this shop: one of {small.Name} mm would fit, with a port under it.");
        }
    }

    private PlacingFrame FrameOf(Job changed) =>
        new(changed, _reach, PodPose.Of(changed, _ground.Frame.Poses[0].Type.HeightMm), _ground.Frame.AngleDeg, 0);

    private static BoxReach Over(PlacingFrame frame, OffsetBox box) => new(frame, frame.PossibleSeats(box), box);

    private static bool Reaches(BoxReach reach, int[] run) => run.Any(p => reach.SupportersOf(p).Length > 0);

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
