using System.Diagnostics;
using System.Globalization;
using System.Text.RegularExpressions;
using PodLayout.Benchmarks.Corpus;

namespace PodLayout.Benchmarks;

/// <summary>
/// How long the programmer waits: from the start of the command to the first layout told, start-up included. The published
/// program and the one that <c>dotnet run</c> starts take turns on the same jobs.
/// </summary>
internal static partial class FirstLayoutTable
{
    // Most area of a part that is to have a layout within the second, m².
    private const double MostAreaM2 = 0.5;

    private const double WithinS = 1;

    private const int Runs = 5;

    /// <summary>Measures and writes.</summary>
    /// <param name="path">The table.</param>
    /// <param name="program">The published program.</param>
    public static void Write(string path, string program)
    {
        var built = Repository.Path("src", "PodLayout.Cli", "bin", "Release", "net10.0", Path.GetFileName(program) + ".dll");
        var table = new TableFile(
            "From the start of the command to the first layout",
            $"Whole commands (`plan job.json --out DIR --progress`). Times run from the start of the process to the first line that tells of a layout; whole is until it ended. Of the samples the middle of {Runs} runs is given, of the corpus one run each, stopped at the first layout; the corpus is that of `quality.md` as files, parts up to {MostAreaM2} m2. Published is the program as DEVELOPERS.md publishes it, built the one that `dotnet run` starts.");
        var scratch = Directory.CreateTempSubdirectory("first-layout-");
        try
        {
            Samples(table, program, built, scratch.FullName);
            OfCorpus(table, program, scratch.FullName);
        }
        finally
        {
            scratch.Delete(true);
        }

        table.Save(path);
    }

    private static void Samples(TableFile table, string program, string built, string scratch)
    {
        table.Heading("The samples");
        table.Head("job", "published: first s", "whole s", "built: first s", "whole s", "ratio of first");
        var samples = Repository.Path("samples");
        foreach (var job in Directory.EnumerateFiles(samples, "job*.json", SearchOption.AllDirectories).Order(StringComparer.Ordinal))
        {
            List<(double FirstS, double WholeS)> ours = [], others = [];
            for (var run = 0; run < Runs; run++)
            {
                ours.Add(Run(program, [], job, scratch, untilFirst: false)!.Value);
                others.Add(Run("dotnet", [built], job, scratch, untilFirst: false)!.Value);
            }

            var (first, other) = (Middle(ours, r => r.FirstS), Middle(others, r => r.FirstS));
            table.Row(
                Path.GetRelativePath(samples, job), S(first), S(Middle(ours, r => r.WholeS)), S(other), S(Middle(others, r => r.WholeS)),
                (other / first).ToString("0.0", CultureInfo.InvariantCulture));
        }
    }

    private static void OfCorpus(TableFile table, string program, string scratch)
    {
        List<(string Name, double AreaM2, double FirstS)> all = [];
        var none = 0;
        foreach (var instance in Instances.All.Where(i => i.Family != "held"))
        {
            var files = instance.Files();
            if (files.AreaM2 > MostAreaM2)
            {
                continue;
            }

            var folder = Path.Combine(scratch, instance.Name);
            files.WriteTo(folder);
            if (Run(program, [], Path.Combine(folder, "job.json"), scratch, untilFirst: true) is { } run)
            {
                all.Add((instance.Name, files.AreaM2, run.FirstS));
            }
            else
            {
                none++;
            }
        }

        table.Heading("The corpus");
        table.Words(string.Create(CultureInfo.InvariantCulture, $"{all.Count} parts with a layout ({none} have none): the middle one takes {Middle(all, a => a.FirstS):0.00} s, the slowest {all.Max(a => a.FirstS):0.00} s; {all.Count(a => a.FirstS < WithinS)} are within {WithinS} s. The slowest ten:\n"));
        table.Head("part", "m2", "first s");
        foreach (var (name, area, first) in all.OrderByDescending(a => a.FirstS).Take(10))
        {
            table.Row(name, S(area), S(first));
        }
    }

    private static (double FirstS, double WholeS)? Run(string file, string[] before, string job, string scratch, bool untilFirst)
    {
        var start = new ProcessStartInfo(file) { RedirectStandardError = true, RedirectStandardOutput = true };
        foreach (var argument in (IEnumerable<string>)[.. before, "plan", job, "--out", Path.Combine(scratch, "out"), "--progress"])
        {
            start.ArgumentList.Add(argument);
        }

        var clock = Stopwatch.StartNew();
        using var child = Process.Start(start)!;
        child.OutputDataReceived += (_, _) => { };
        child.BeginOutputReadLine();
        double? first = null;
        while (child.StandardError.ReadLine() is { } line)
        {
            if (first is null && Told().IsMatch(line))
            {
                first = clock.Elapsed.TotalSeconds;
                if (untilFirst)
                {
                    child.Kill();
                    break;
                }
            }
        }

        child.WaitForExit();
        return first is { } told ? (told, clock.Elapsed.TotalSeconds) : null;
    }

    [GeneratedRegex(@"best \d+ pods?\b")]
    private static partial Regex Told();

    private static double Middle<T>(List<T> runs, Func<T, double> of) => runs.Select(of).Order().ElementAt(runs.Count / 2);

    private static string S(double value) => value.ToString("0.00", CultureInfo.InvariantCulture);
}
