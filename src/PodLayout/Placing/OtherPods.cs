using System.Collections.Immutable;
using System.Globalization;
using PodLayout.Shops;

namespace PodLayout.Placing;

/// <summary>Pods that a shop does not have, and that could be made for its board.</summary>
internal static class OtherPods
{
    // So many whole pitches along the longer side.
    private const int MostPitches = 3;

    // Of a pod whose seals leave less than this between them there is little to pull with, mm.
    private const double LeastWithinMm = 10;

    /// <summary>
    /// Rectangular pods of whole pitches that are narrower than all of the shop's, or as narrow and shorter, with the seals and the height
    /// of its smallest: the larger first.
    /// </summary>
    public static ImmutableArray<PodType> SmallerOf(Shop shop)
    {
        var pitch = shop.Board.PitchMm;
        var smallest = shop.Pods.Where(p => p.Stock > 0).MinBy(p => AreaMm2(p));
        if (smallest is null)
        {
            return [];
        }

        var sizes = from across in Enumerable.Range(1, MostPitches)
                    from along in Enumerable.Range(across, MostPitches - across + 1)
                    let size = (Along: along * pitch, Across: across * pitch)
                    where size.Across - 2 * Math.Max(smallest.SealInsetAboveMm, smallest.SealInsetBelowMm) > LeastWithinMm
                        && shop.Pods.Where(p => p.Stock > 0).All(p => size.Along * size.Across < AreaMm2(p) - 1)
                    orderby size.Along * size.Across descending, size.Along
                    select size;
        return
        [
            .. sizes.Select(size => smallest with
            {
                Name = string.Create(CultureInfo.InvariantCulture, $"{size.Along:0.##} x {size.Across:0.##}"),
                Footprint = new PodFootprint.Rectangle(size.Along, size.Across),
                MayTurn = true,
                Stock = 1000,
                PortsNeeded = 1,
            }),
        ];
    }

    private static double AreaMm2(PodType type) => type.Footprint.ExtentXMm * type.Footprint.ExtentYMm;
}
