using System.Collections.Immutable;
using PodLayout.Geometry;

namespace PodLayout.Handover.Picture;

/// <summary>Lines of the drawing that are no edge of the part, so that a person sees whether one of them should have been.</summary>
internal static class LeftOutDrawing
{
    /// <param name="draft">The sheet.</param>
    /// <param name="lines">The lines, board coordinates. What lies off the board and the part, as dimensions may, would run over words of the page.</param>
    public static void Draw(SheetDraft draft, ImmutableArray<ImmutableArray<Point2>> lines)
    {
        foreach (var piece in lines.SelectMany(l => Within(draft.Content, l)))
        {
            draft.AddLine(SheetDraft.LeftOut, "left-out", piece);
            for (var i = 0; i + 1 < piece.Length; i++)
            {
                draft.KeepOff(piece[i], piece[i + 1], isUnderPods: true);
            }
        }
    }

    // What is left of a line in a box, piece by piece.
    private static IEnumerable<ImmutableArray<Point2>> Within(Box2 box, ImmutableArray<Point2> line)
    {
        var piece = ImmutableArray.CreateBuilder<Point2>();
        for (var i = 0; i + 1 < line.Length; i++)
        {
            var (a, b) = (line[i], line[i + 1]);
            if (EdgePath.Within(box, a, b) is not var (from, to) || from >= to)
            {
                continue;
            }

            if (piece.Count > 0 && from > 0)
            {
                yield return piece.ToImmutable();
                piece.Clear();
            }

            if (piece.Count == 0)
            {
                piece.Add(a + (b - a) * from);
            }

            piece.Add(a + (b - a) * to);
            if (to < 1)
            {
                yield return piece.ToImmutable();
                piece.Clear();
            }
        }

        if (piece.Count > 1)
        {
            yield return piece.ToImmutable();
        }
    }
}
