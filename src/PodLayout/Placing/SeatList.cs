using System.Buffers;

namespace PodLayout.Placing;

/// <summary>
/// Indices of seats, rising, as the gaps between them in seven bits to the byte: rows are kept for every set of placements that
/// waits, hundreds of seats for each of hundreds of points, and neighbours stand next to each other.
/// </summary>
internal sealed class SeatList
{
    private const int LowBits = 7;
    private const int More = 1 << LowBits;

    private readonly byte[] _gaps;

    private SeatList(byte[] gaps) => _gaps = gaps;

    /// <summary>The list of some indices, which must rise.</summary>
    public static SeatList Of(IEnumerable<int> rising)
    {
        ArrayBufferWriter<byte> gaps = new();
        var last = -1;
        foreach (var seat in rising)
        {
            ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(seat, last, nameof(rising));
            var gap = (uint)(seat - last - 1);
            last = seat;
            for (; gap >= More; gap >>= LowBits)
            {
                Put((byte)(gap | More));
            }

            Put((byte)gap);
        }

        return new(gaps.WrittenSpan.ToArray());

        void Put(byte value)
        {
            gaps.GetSpan(1)[0] = value;
            gaps.Advance(1);
        }
    }

    /// <summary>The indices, rising.</summary>
    public IEnumerable<int> Seats()
    {
        var (seat, gap, shift) = (-1, 0, 0);
        foreach (var part in _gaps)
        {
            gap |= (part & (More - 1)) << shift;
            if (part >= More)
            {
                shift += LowBits;
                continue;
            }

            seat += gap + 1;
            (gap, shift) = (0, 0);
            yield return seat;
        }
    }
}
