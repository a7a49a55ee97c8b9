using System.Collections.Immutable;

namespace PodLayout.Parts;

/// <summary>What the layers of the drawing mean. Names match whatever their case; <c>*</c> stands for any characters.</summary>
/// <param name="OutlineLayer">The layer of the outline; null when the largest ring is the outline.</param>
/// <param name="ByLayer">Layer name or pattern to role; the most exact name wins.</param>
public sealed record LayerRoles(string? OutlineLayer, ImmutableSortedDictionary<string, LayerRole> ByLayer)
{
    /// <summary>No layer says anything: the largest ring is the outline, rings inside it are holes.</summary>
    public static LayerRoles ByShape { get; } = new(null, ImmutableSortedDictionary<string, LayerRole>.Empty);

    /// <summary>Whether any layer is said to hold the outline.</summary>
    public bool NamesOutline => OutlineLayer is not null || ByLayer.ContainsValue(LayerRole.Outline);

    /// <summary>All names and patterns that must be found in the drawing.</summary>
    public IEnumerable<string> Names => OutlineLayer is null ? ByLayer.Keys : ByLayer.Keys.Prepend(OutlineLayer);

    /// <summary>Number of the part that is meant, where the drawing holds several; null for the only one.</summary>
    public int? Part { get; init; }

    /// <summary>Names that operations or the blank follow: without their lines there is nothing to do.</summary>
    public ImmutableHashSet<string> OfCuts { get; init; } = [];

    /// <summary>The role of a layer; null when nothing is said about it.</summary>
    public LayerRole? RoleOf(string layer)
    {
        if (OutlineLayer is not null && Matches(OutlineLayer, layer))
            return LayerRole.Outline;
        // A name without a wildcard before patterns; of patterns the one with most letters.
        var best = ByLayer.Where(r => Matches(r.Key, layer))
            .OrderBy(r => r.Key.Contains('*', StringComparison.Ordinal)).ThenByDescending(r => r.Key.Length)
            .ThenBy(r => r.Key, StringComparer.Ordinal);
        return best.Select(r => (LayerRole?)r.Value).FirstOrDefault();
    }

    /// <summary>Whether a name or pattern means a layer.</summary>
    public static bool Matches(string pattern, string layer)
    {
        var parts = pattern.Split('*');
        if (parts.Length == 1)
            return pattern.Equals(layer, StringComparison.OrdinalIgnoreCase);
        if (!layer.StartsWith(parts[0], StringComparison.OrdinalIgnoreCase))
            return false;
        var at = parts[0].Length;
        foreach (var part in parts[1..^1])
        {
            var found = layer.IndexOf(part, at, StringComparison.OrdinalIgnoreCase);
            if (found < 0)
                return false;
            at = found + part.Length;
        }

        return layer.Length - at >= parts[^1].Length && layer.EndsWith(parts[^1], StringComparison.OrdinalIgnoreCase);
    }
}
