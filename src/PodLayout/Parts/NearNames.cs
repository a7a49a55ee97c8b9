namespace PodLayout.Parts;

/// <summary>Finds the names most like a mistyped one.</summary>
internal static class NearNames
{
    public static IEnumerable<string> Of(string wanted, IEnumerable<string> existing) => existing
        .OrderBy(e => Edits(wanted.ToUpperInvariant(), e.ToUpperInvariant())).ThenBy(e => e, StringComparer.Ordinal).Take(3);

    /// <summary>The fewest letters to put in, take out or change (Levenshtein 1966).</summary>
    private static int Edits(string a, string b)
    {
        var row = Enumerable.Range(0, b.Length + 1).ToArray();
        for (var i = 1; i <= a.Length; i++)
        {
            var diagonal = row[0];
            row[0] = i;
            for (var j = 1; j <= b.Length; j++)
            {
                var change = diagonal + (a[i - 1] == b[j - 1] ? 0 : 1);
                diagonal = row[j];
                row[j] = Math.Min(change, Math.Min(row[j], row[j - 1]) + 1);
            }
        }

        return row[^1];
    }
}
