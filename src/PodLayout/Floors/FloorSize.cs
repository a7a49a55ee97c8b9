using PodLayout.Geometry;

namespace PodLayout.Floors;

/// <summary>What of a floor's shape matters to its bending.</summary>
internal static class FloorSize
{
    // Widths are found to this, mm: a hundredth of the narrowest that matters.
    private const double WidthStepMm = 0.1;

    // The smallest rectangle around is looked for at these angles; three degrees off it is a twentieth longer at most.
    private const int AngleStepDeg = 3;

    /// <summary>Diameter of the largest disc within a piece, too large by a tenth of a millimetre at most, mm.</summary>
    /// <param name="piece">The piece.</param>
    /// <param name="mostMm">Larger ones need not be told apart from this.</param>
    public static double WidthMm(Region piece, double mostMm)
    {
        var box = Math.Min(piece.Bounds.Width, piece.Bounds.Height);
        return Math.Min(Math.Min(mostMm, box), 2 * piece.LargestDiscMm(WidthStepMm / 2) + WidthStepMm);
    }

    /// <summary>The longer side of the smallest rectangle around a piece, mm.</summary>
    public static double ExtentMm(Region piece)
    {
        var points = piece.Boundary[0].Points;
        var (least, longer) = (double.PositiveInfinity, 0.0);
        for (var deg = 0; deg < 90; deg += AngleStepDeg)
        {
            var turn = Turn.FromDegrees(deg);
            var box = Box2.Around(points.Select(turn.Apply));
            if (box.Width * box.Height < least)
            {
                (least, longer) = (box.Width * box.Height, Math.Max(box.Width, box.Height));
            }
        }

        return longer;
    }
}
