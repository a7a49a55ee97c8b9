using PodLayout.Geometry;
using PodLayout.Handover.Picture;
using PodLayout.Parts;
using PodLayout.Shops;

namespace PodLayout.Handover.Setup;

/// <summary>The dot of a mark that the part is laid by, and its numbered flag where there is room for one.</summary>
internal static class MarkFlag
{
    // A line that runs a little over a pod is better than one over several pods, mm of paper.
    private const double LittleMm = 4;

    // A flag farther from its place is looked for among pods and groove numbers first, mm of paper.
    private const double NearMm = 12;

    // How far from its place a flag is looked for among pods and groove numbers, and how finely, mm of paper.
    private const double FarthestMm = 24;
    private const double StepMm = 0.5;
    private const int Steps = (int)(FarthestMm / StepMm);

    // How much longer a line may be so that it covers a millimetre less, mm of paper.
    private const double WorthOfCoverMm = 2;

    // How much longer a line may be so that no groove loses its number on one side, mm of paper.
    private const double WorthOfNumberMm = 6;

    // Smaller flags, where there is no room for larger ones.
    private static readonly double[] Shares = [1, 0.9, 0.8, 0.7, 0.6, 0.5];

    // Shortest line that is still seen, mm of paper.
    private const double LeastMm = 1.2;

    // From a place to the middles of flags, mm of paper.
    private static readonly Point2[] Ways =
    [
        .. from i in Enumerable.Range(-Steps, 2 * Steps + 1) from j in Enumerable.Range(-Steps, 2 * Steps + 1)
           let way = new Point2(i, j) * StepMm where way.Length <= FarthestMm select way,
    ];

    // Round the flag and off the lines, mm of paper; between numbers of grooves rather more.
    private const double RoundMm = 0.3;
    private const double WellRoundMm = 0.6;

    /// <param name="draft">The sheet.</param>
    /// <param name="board">The board.</param>
    /// <param name="shape">The part, board coordinates.</param>
    /// <param name="mark">The mark.</param>
    /// <param name="around">Where a flag may stand off the board, board coordinates.</param>
    /// <param name="sizes">How large the flag is where there is little room.</param>
    public static void Draw(SheetDraft draft, GridBoard board, PartShape shape, LayingMark mark, Box2 around, LetterSizes sizes)
    {
        var closeShare = sizes.CloseFlag;
        draft.Add(SheetDraft.Laying, new Primitive.Disc("datum-fill", mark.At, 0.7 * draft.Scale));
        if (BesidePart(0, NearMm, isClose: false) || BesidePart(0, NearMm, isClose: true) || Between(draft, board, mark, around, sizes, WellRoundMm) || Between(draft, board, mark, around, sizes, RoundMm)
            || BesidePart(LittleMm, NearMm, isClose: false) || BesidePart(LittleMm, NearMm, isClose: true) || OnPod(draft, board, mark, closeShare)
            || BesidePart(double.PositiveInfinity, double.PositiveInfinity, isClose: true, closeShare))
        {
            return;
        }

        // Pods all round, and no room off the board: the flag stands on the place itself, or as near to it as words allow.
        var half = closeShare * Symbols.FlagMm(mark.Name, isClose: true) * draft.Scale;
        var near = from x in Enumerable.Range(-4, 9) from y in Enumerable.Range(-4, 9) select mark.At + new Point2(x, y) * draft.Scale;
        bool IsWordless(Point2 p)
        {
            var box = Around(p, half);
            return draft.Content.Grow(1.6 * draft.Scale).Contains(box) && !draft.HasWord(box);
        }

        var place = near.OrderBy(p => Math.Round((p - mark.At).Length, 6)).Where(IsWordless).DefaultIfEmpty(mark.At).First();
        Symbols.Flag(draft, SheetDraft.Labels, place, mark.Name, isClose: true, closeShare);
        draft.AddWord(Around(place, half));

        bool BesidePart(double coveredMm, double farthestMm, bool isClose, double share = 1)
        {
            var size = (Symbols.FlagMm(mark.Name, isClose) * share + 0.1) * draft.Scale;
            return SupportDrawing.Callout(
                draft, shape, mark.At, box => Symbols.Flag(draft, SheetDraft.Labels, box.Centre, mark.Name, isClose, share),
                new(-size, -size, size, size), RoundMm, coveredMm, farthestMm);
        }
    }

    private static Box2 Around(Point2 middle, double half) => new Box2(middle.X, middle.Y, middle.X, middle.Y).Grow(half);

    // In a gap between pods and words, or off the board beyond the numbers of the grooves; its line may run over a pod but over no
    // word and no port.
    private static bool Between(SheetDraft draft, GridBoard board, LayingMark mark, Box2 around, LetterSizes sizes, double roundMm)
    {
        var u = draft.Scale;
        (double Total, double Share, Point2 Middle, Point2 End) chosen = (double.PositiveInfinity, 0, mark.At, mark.At);
        var edges = EdgePath.Sides(SheetDraft.RingOf(new(0, 0, board.WidthMm, board.LengthMm))).ToArray();
        foreach (var (steps, share) in Shares.Where(s => s > sizes.LeastFlag).Append(sizes.LeastFlag).Index())
        {
            var smaller = steps == 0 ? 0 : steps * sizes.WorthOfFlagMm;
            if (chosen.Total <= smaller)
            {
                break;
            }

            var radius = Symbols.FlagMm(mark.Name, isClose: true) * share * u;
            var best = (Cost: double.PositiveInfinity, Middle: mark.At, End: mark.At);
            foreach (var way in Ways)
            {
                var middle = mark.At + way * u;
                var end = middle - way * (radius / way.Length);
                var (cost, box) = ((end - mark.At).Length / u, Around(middle, radius + roundMm * u));
                if (cost < LeastMm || cost >= best.Cost || way.Length * u <= radius || !around.Contains(box) || !draft.IsUntaken(box)
                    || draft.IsCrossed(box) || edges.Any(e => EdgePath.Touches(box, e.A, e.B)))
                {
                    continue;
                }

                cost += draft.Covered(mark.At, end) * WorthOfCoverMm
                    + (draft.MakesYield(b => b.Touches(box) || EdgePath.Touches(b, mark.At, end)) ? WorthOfNumberMm : 0);
                if (cost < best.Cost && !draft.IsOnPort(mark.At + (end - mark.At) * (LeastMm * u / (end - mark.At).Length), end) && draft.IsPointerClear(mark.At, end))
                {
                    best = (cost, middle, end);
                }
            }

            if (!double.IsPositiveInfinity(best.Cost) && best.Cost + smaller < chosen.Total)
            {
                chosen = (best.Cost + smaller, share, best.Middle, best.End);
            }
        }

        if (chosen.Share <= 0)
        {
            return false;
        }

        var flag = Around(chosen.Middle, (Symbols.FlagMm(mark.Name, isClose: true) * chosen.Share + roundMm) * u);
        draft.Yield(SheetDraft.Numbers, b => b.Touches(flag) || EdgePath.Touches(b, mark.At, chosen.End));
        return Place(draft, mark, chosen.Middle, chosen.End, chosen.Share);
    }

    // On a pod beside the place, off its ports and words.
    private static bool OnPod(SheetDraft draft, GridBoard board, LayingMark mark, double closeShare)
    {
        var (u, flagMm) = (draft.Scale, closeShare * Symbols.FlagMm(mark.Name, isClose: true));
        var radius = Symbols.PortRadius(draft, board.PortDiameterMm) * 1.4;
        foreach (var turnDeg in Enumerable.Range(0, 16).Select(i => 45 + 22.5 * i))
        {
            var way = Turn.FromDegrees(turnDeg).Apply(new((2.2 + flagMm) * u, 0));
            var middle = mark.At + way;
            var box = Around(middle, (flagMm + 0.1) * u);
            if (!draft.Content.Contains(box) || draft.IsCrossed(box) || draft.HasWord(box)
                || board.Ports.Any(p => box.Grow(radius).Contains(p.Centre)))
            {
                continue;
            }

            var end = middle - way * (flagMm * u / way.Length);
            if (!draft.HasWordBeyond(mark.At, end) && !draft.IsAtDot(mark.At, end))
            {
                return Place(draft, mark, middle, end, closeShare);
            }
        }

        return false;
    }

    private static bool Place(SheetDraft draft, LayingMark mark, Point2 middle, Point2 end, double share)
    {
        var box = Around(middle, Symbols.FlagMm(mark.Name, isClose: true) * share * draft.Scale);
        draft.AddLeader(mark.At, end);
        draft.AddWord(box);
        draft.Take(box);
        Symbols.Flag(draft, SheetDraft.Labels, middle, mark.Name, isClose: true, share);
        return true;
    }
}
