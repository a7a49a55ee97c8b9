using System.Collections.Immutable;

namespace PodLayout.Handover.Picture;

/// <summary>Names of layers as DXF allows them.</summary>
internal static class DxfLayerNames
{
    private const string Forbidden = "<>/\\\":;?*|=`,";
    private const int Longest = 200;

    /// <summary>A name for each layer of a sheet, in order: forbidden characters replaced, no two alike in any case.</summary>
    public static ImmutableArray<string> Of(IEnumerable<string> names)
    {
        HashSet<string> taken = new(StringComparer.OrdinalIgnoreCase) { "0" };
        return
        [
            .. names.Select(name =>
            {
                var plain = string.Concat(name.Trim().Select(c => c is < ' ' or > '~' || Forbidden.Contains(c, StringComparison.Ordinal) ? '-' : c));
                plain = plain.Length == 0 ? "LAYER" : plain[..Math.Min(plain.Length, Longest)];
                var free = plain;
                for (var n = 2; !taken.Add(free); n++)
                {
                    free = plain + "-" + n.ToString(System.Globalization.CultureInfo.InvariantCulture);
                }

                return free;
            }),
        ];
    }
}
