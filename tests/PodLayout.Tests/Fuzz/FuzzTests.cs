using System.Globalization;

namespace PodLayout.Tests.Fuzz;

/// <summary>
/// Damaged files of every kind that is read. Two thousand with a fixed seed are run with the other tests; any number by hand:
/// <c>PODLAYOUT_FUZZ=100000 PODLAYOUT_FUZZ_SEED=7 dotnet test -c Release --filter "FullyQualifiedName~FuzzTests"</c>.
/// </summary>
public class FuzzTests(ITestOutputHelper told)
{
    private const int Usual = 2000;

    // Generous: on a machine with other work a case of a second takes many.
    private static readonly TimeSpan Limit = TimeSpan.FromSeconds(60);

    private const long MostBytes = 4L << 30;

    [Fact]
    public void Damaged_files_are_refused_in_words_or_planned_rightly()
    {
        var (count, seed) = (Given("PODLAYOUT_FUZZ", Usual), Given("PODLAYOUT_FUZZ_SEED", 1));
        Seeds seeds = new();
        List<FuzzCase> cases = [];
        for (var i = 0; i < count; i++)
        {
            cases.Add(FuzzCase.Of(seeds, seed, i, Limit));
        }

        foreach (var kind in cases.GroupBy(c => c.Kind).OrderBy(g => g.Key, StringComparer.Ordinal))
        {
            told.WriteLine(string.Create(CultureInfo.InvariantCulture,
                $"{kind.Key}: {kind.Count()} cases; exits {string.Join(", ", kind.GroupBy(c => c.Code).OrderBy(g => g.Key).Select(g => $"{g.Key}: {g.Count()}"))}; the slowest {kind.Max(c => c.Took).TotalSeconds:0.0} s"));
        }

        var peak = System.Diagnostics.Process.GetCurrentProcess().PeakWorkingSet64;
        told.WriteLine($"Memory at most {peak >> 20} MB, with all other tests that ran in the process.");
        Assert.Empty(cases.Where(c => c.Wrong is not null).Select(c => c.Wrong));
        Assert.True(peak < MostBytes, $"{peak >> 20} MB were in use.");
    }

    private static int Given(string variable, int otherwise) =>
        int.TryParse(Environment.GetEnvironmentVariable(variable), NumberStyles.None, CultureInfo.InvariantCulture, out var given) ? given : otherwise;
}
