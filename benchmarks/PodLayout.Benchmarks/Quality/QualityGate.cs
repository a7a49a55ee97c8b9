using System.Collections.Immutable;
using System.Diagnostics;
using System.Globalization;
using PodLayout.Benchmarks.Corpus;

namespace PodLayout.Benchmarks.Quality;

/// <summary>Holds the fast instances against the record.</summary>
internal static class QualityGate
{
    // Of work counts, so much more or less is let pass. A handful of nodes more or less is no change of weight.
    private const double Share = 0.1;
    private const int FewNodes = 2;

    // Lengths of edge nearer than this are the same, mm.
    private const double LeastMm = 0.05;

    // The instances take a second or so each: what takes this long has gone wrong, on any machine.
    private const double SecondsForEach = 60;
    private static readonly TimeSpan ForAll = TimeSpan.FromMinutes(8);

    /// <summary>Runs the instances; false when one is worse than the record says, or its work has changed.</summary>
    public static bool Hold()
    {
        var record = QualityRecord.Read();
        var known = record.Instances.ToDictionary(r => r.Name);
        var clock = Stopwatch.StartNew();
        var (passed, failed) = (0, 0);
        double processorMs = 0;
        foreach (var instance in Instances.Fast)
        {
            ImmutableArray<string> faults;
            if (clock.Elapsed > ForAll)
            {
                faults = ["not run: those before it took too long"];
            }
            else if (!known.Remove(instance.Name, out var before))
            {
                faults = ["not in the record"];
            }
            else
            {
                var now = InstanceRun.InChild(instance.Name, SecondsForEach);
                processorMs += now.ProcessorMs + now.StartedMs;
                faults = Faults(before, now);
            }

            (passed, failed) = faults.IsEmpty ? (passed + 1, failed) : (passed, failed + 1);
            foreach (var fault in faults)
            {
                Console.WriteLine($"{instance.Name}: {fault}");
            }
        }

        foreach (var name in known.Keys)
        {
            failed++;
            Console.WriteLine($"{name}: in the record, but no longer run");
        }

        if (failed > 0)
        {
            Console.WriteLine("A change that is meant renews the record in the same commit: quality --renew --because \"reason\"");
        }

        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture, $"{clock.Elapsed.TotalSeconds:0} s, of processor time {processorMs / 1000:0} s"));
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{passed} passed, {failed} failed"));
        return failed == 0;
    }

    /// <summary>Writes the record anew.</summary>
    public static void Renew(string because)
    {
        var instances = Instances.Fast.Select(i => InstanceRun.InChild(i.Name, SecondsForEach))
            .Select(f => new RecordedInstance(f.Name, f.Pods, f.LeftMm, f.IsProven, f.Nodes, f.Rows, f.Pairs)).ToImmutableArray();
        new QualityRecord(QualityRecord.Read().Because.Add(because), instances).Write();
        Console.WriteLine($"{QualityRecord.FilePath}: {TableFile.Count(instances.Length)} instances, {TableFile.Count(instances.Count(i => i.IsProven))} proven");
    }

    private static ImmutableArray<string> Faults(RecordedInstance before, InstanceFigures now)
    {
        var faults = ImmutableArray.CreateBuilder<string>();
        if (before.IsProven && !now.IsProven)
        {
            faults.Add("was proven, and is not now");
        }

        if (now.LeftMm > before.LeftMm + LeastMm)
        {
            faults.Add(string.Create(CultureInfo.InvariantCulture, $"{now.LeftMm:0.#} mm unsupported, {before.LeftMm:0.#} in the record"));
        }

        if (before.IsProven && now.LeftMm < before.LeftMm - LeastMm)
        {
            faults.Add(string.Create(CultureInfo.InvariantCulture, $"{now.LeftMm:0.#} mm unsupported, less than the {before.LeftMm:0.#} that the record calls proven"));
        }

        if ((now.Pods ?? int.MaxValue) > (before.Pods ?? int.MaxValue))
        {
            faults.Add($"{TableFile.Count(now.Pods)} pods, {TableFile.Count(before.Pods)} in the record");
        }

        if (before.IsProven && (now.Pods ?? int.MaxValue) < (before.Pods ?? int.MaxValue))
        {
            faults.Add($"{TableFile.Count(now.Pods)} pods, fewer than the {TableFile.Count(before.Pods)} that the record calls proven");
        }

        Work("nodes", before.Nodes, now.Nodes, FewNodes);
        Work("rows", before.Rows, now.Rows, 0);
        Work("pairs", before.Pairs, now.Pairs, 0);
        return faults.ToImmutable();

        void Work(string what, long then, long count, long few)
        {
            if (Math.Abs(count - then) > Math.Max(few, Share * then))
            {
                faults.Add(string.Create(CultureInfo.InvariantCulture, $"{count} {what}, {then} in the record: more than {Share:0 %} apart"));
            }
        }
    }
}
