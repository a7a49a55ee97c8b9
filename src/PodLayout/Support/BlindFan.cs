using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using PodLayout.Geometry;

namespace PodLayout.Support;

/// <summary>
/// The edges that blind a lookout, by the direction in which they are seen from it: a straight line from there is held only against
/// those that lie in its direction.
/// </summary>
internal sealed class BlindFan
{
    // Fewer edges are as quickly gone through as they come.
    private const int FewBlinds = 8;

    private const int SectorCount = 32;

    // Directions are kept apart by this, of four to the whole turn: far above rounding, far below a sector.
    private const double Margin = 1e-6;

    private readonly Blind[] _blinds;
    private readonly int[] _starts;

    private BlindFan(Point2 at, ImmutableArray<Blind> blinds)
    {
        var sectors = new List<Blind>[SectorCount];
        for (var s = 0; s < SectorCount; s++)
        {
            sectors[s] = [];
        }

        foreach (var blind in blinds)
        {
            double a = Around(blind.A - at), b = Around(blind.B - at);
            var (low, high) = (Math.Min(a, b), Math.Max(a, b));
            // Opposite directions are two apart: an edge is seen within the shorter of the two ways round.
            var (from, upTo) = high - low < 2 - Margin ? (low, high) : high - low > 2 + Margin ? (high, low + 4) : (0, 4);
            int first = (int)Math.Floor((from - Margin) * SectorCount / 4), last = (int)Math.Floor((upTo + Margin) * SectorCount / 4);
            for (var s = first; s <= Math.Min(last, first + SectorCount - 1); s++)
            {
                sectors[(s + SectorCount) % SectorCount].Add(blind);
            }
        }

        _blinds = [.. sectors.SelectMany(s => s)];
        _starts = new int[SectorCount + 1];
        for (var s = 0; s < SectorCount; s++)
        {
            _starts[s + 1] = _starts[s] + sectors[s].Count;
        }
    }

    /// <summary>The fan of a lookout; null where there are so few edges that none is needed.</summary>
    public static BlindFan? Of(Point2 at, ImmutableArray<Blind> blinds) => blinds.Length < FewBlinds ? null : new(at, blinds);

    /// <summary>Whether some edge cuts the straight line from the lookout to a target.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public bool Cuts(Point2 at, Point2 target)
    {
        if (target == at)
        {
            return false;
        }

        var sector = Math.Min((int)(Around(target - at) * (SectorCount / 4.0)), SectorCount - 1);
        for (var i = _starts[sector]; i < _starts[sector + 1]; i++)
        {
            if (_blinds[i].Cuts(at, target))
            {
                return true;
            }
        }

        return false;
    }

    // A direction as a figure from 0 to 4 that rises with the angle: the place on the boundary of a diamond around the origin.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static double Around(Point2 v) => v.Y >= 0
        ? v.X >= 0 ? v.Y / (v.X + v.Y) : 1 - v.X / (v.Y - v.X)
        : v.X < 0 ? 2 + v.Y / (v.X + v.Y) : 3 + v.X / (v.X - v.Y);
}
