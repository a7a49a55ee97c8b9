using PodLayout.Geometry;
using PodLayout.Parts;

namespace PodLayout.Handover.Picture;

/// <summary>The names of pieces that come loose: each in its piece where it finds room there, else beside it, with a line.</summary>
internal static class PieceNames
{
    private const double SizeMm = 2.6;

    // Smaller names, where there is no room for larger ones.
    private static readonly double[] Shares = [1, 0.85, 0.7];

    // How far from its piece a name is looked for, and how finely, mm of paper.
    private const double FarthestMm = 30;
    private const double StepMm = 0.75;
    private const int Steps = (int)(FarthestMm / StepMm);

    // A piece smaller than this is small, mm of paper.
    private const double SmallMm = 5;

    // Round a name, mm of paper.
    private const double RoundMm = 0.3;

    // Shortest line that is still seen, and how much longer one may be so that it covers a millimetre less or that no port is hidden.
    private const double LeastMm = 1.2;
    private const double WorthOfCoverMm = 2;
    private const double MostCoveredMm = 6;
    private const double OverPortMm = 5;

    // From a piece to the middles of names, mm of paper, the nearest first.
    private static readonly Point2[] Ways =
    [
        .. (from i in Enumerable.Range(-Steps, 2 * Steps + 1) from j in Enumerable.Range(-Steps, 2 * Steps + 1)
            let way = new Point2(i, j) * StepMm where way.Length <= FarthestMm select way).OrderBy(w => Math.Round(w.Length, 6)),
    ];

    /// <param name="draft">The sheet; everything else is drawn.</param>
    /// <param name="shape">The part, board coordinates.</param>
    /// <param name="unheld">Pieces without pods of their own: names, a point within each, and the larger of width and height.</param>
    public static void Draw(SheetDraft draft, PartShape shape, IEnumerable<(string Name, Point2 At, double AcrossMm)> unheld)
    {
        foreach (var piece in shape.Held.Where(p => !Inside(draft, p)))
        {
            Beside(draft, piece.Name, piece.CentreOfMass, double.PositiveInfinity);
        }

        // A name in another piece would be taken for that one's.
        foreach (var piece in shape.Held)
        {
            draft.Take(piece.Outline.Bounds);
        }

        foreach (var (name, at, acrossMm) in unheld.Where(p => draft.Content.Contains(new Box2(p.At.X, p.At.Y, p.At.X, p.At.Y))))
        {
            Beside(draft, name, at, acrossMm);
        }
    }

    private static bool Inside(SheetDraft draft, HeldPiece piece)
    {
        const int steps = 24;
        var bounds = piece.Outline.Bounds;
        List<Point2> middles = [.. Enumerable.Range(0, (steps + 1) * (steps + 1))
            .Select(i => new Point2(
                bounds.MinX + bounds.Width * (i % (steps + 1)) / steps, bounds.MinY + bounds.Height * (i / (steps + 1)) / steps))
            .OrderBy(p => Math.Round((p - bounds.Centre).Length, 6))];
        foreach (var size in new[] { SizeMm, 2, 1.6 })
        {
            var box = draft.TextBox(default, piece.Name, size, true);
            foreach (var place in middles.Select(p => box.Moved(p)).Where(
                b => draft.IsFree(b.Grow(0.4 * draft.Scale)) && !draft.IsCrossed(b) && Corners(b.Grow(0.6 * draft.Scale)).All(piece.Contains)))
            {
                draft.AddName(place, piece.Name, size);
                return true;
            }
        }

        return false;
    }

    // No dot where the line ends, and in a small piece not even the line's end: in a round hole that would be the sign of an open port.
    private static void Beside(SheetDraft draft, string name, Point2 at, double acrossMm)
    {
        var within = acrossMm < SmallMm * draft.Scale ? acrossMm / 2 : 0;
        foreach (var share in Shares)
        {
            if (Best(draft, at, draft.TextBox(default, name, share * SizeMm, true)) is var (box, leader))
            {
                if (leader is var (from, to))
                {
                    draft.AddLeader(from + (to - from) * Math.Min(0.5, within / (to - from).Length), to);
                }

                draft.AddName(box, name, share * SizeMm);
                return;
            }
        }

        draft.PiecesWithoutName++;
    }

    private static (Box2 Box, (Point2 From, Point2 To)? Leader)? Best(SheetDraft draft, Point2 at, Box2 size)
    {
        var u = draft.Scale;
        var half = new Point2(size.Width, size.Height).Length / 2 / u;
        (double Cost, Box2 Box, (Point2, Point2)? Leader)? best = null;
        foreach (var way in Ways.TakeWhile(w => best is not var (least, _, _) || w.Length - half < least))
        {
            var box = size.Moved(at + way * u);
            if (!draft.IsFree(box.Grow(RoundMm * u)) || draft.HasWord(box) || draft.IsCrossed(box.Grow(RoundMm * u)))
            {
                continue;
            }

            Point2 end = new(Math.Clamp(at.X, box.MinX, box.MaxX), Math.Clamp(at.Y, box.MinY, box.MaxY));
            var length = (end - at).Length / u;
            var covered = draft.Covered(at, end);
            var cost = length + covered * WorthOfCoverMm + (draft.IsOnPort(box) ? OverPortMm : 0);
            if (best is var (known, _, _) && cost >= known || covered > MostCoveredMm)
            {
                continue;
            }

            // Round the point itself, and off all lines: in the piece.
            if (length == 0)
            {
                best = (cost, box, null);
            }
            else if (length >= LeastMm && !draft.IsOnPort(at + (end - at) * (LeastMm / length), end) && draft.IsPointerClear(at, end))
            {
                best = (cost, box, (at, end));
            }
        }

        return best is var (_, place, line) ? (place, line) : null;
    }

    private static IEnumerable<Point2> Corners(Box2 b) =>
        [new(b.MinX, b.MinY), new(b.MaxX, b.MinY), new(b.MaxX, b.MaxY), new(b.MinX, b.MaxY)];
}
