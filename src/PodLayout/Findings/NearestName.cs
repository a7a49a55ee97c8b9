namespace PodLayout.Findings;

/// <summary>Finds the name that a mistyped one was most likely meant to be, for the remedy of a finding.</summary>
public static class NearestName
{
    /// <summary>The known name nearest to a mistyped one; null when none is near.</summary>
    public static string? To(string typed, IEnumerable<string> known)
    {
        var best = known
            .Select(name => (Name: name, Distance: Distance(typed.ToLowerInvariant(), name.ToLowerInvariant())))
            .OrderBy(c => c.Distance).ThenBy(c => c.Name, StringComparer.Ordinal)
            .FirstOrDefault();
        if (best.Name is null)
        {
            return null;
        }

        // A forgotten unit ("width" for "widthMm") is the commonest slip, and costs two letters in a short word.
        var near = best.Distance <= Math.Max(2, best.Name.Length / 3);
        return near ? best.Name : null;
    }

    /// <summary>The known names most like a mistyped one, nearest first.</summary>
    public static IEnumerable<string> InOrder(string typed, IEnumerable<string> known, int most) => known
        .OrderBy(name => Distance(typed.ToLowerInvariant(), name.ToLowerInvariant())).ThenBy(name => name, StringComparer.Ordinal)
        .Take(most);

    /// <summary>Least number of single-letter changes from one word to the other (Levenshtein 1966).</summary>
    private static int Distance(string a, string b)
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

        return row[b.Length];
    }
}
