using System.Collections.Immutable;
using BenchmarkDotNet.Configs;
using BenchmarkDotNet.Jobs;
using BenchmarkDotNet.Running;
using BenchmarkDotNet.Toolchains.InProcess.Emit;
using PodLayout.Benchmarks;
using PodLayout.Benchmarks.Corpus;
using PodLayout.Benchmarks.Growth;
using PodLayout.Benchmarks.Quality;
using PodLayout.Benchmarks.Versus;

// micro [BenchmarkDotNet's options] | settings [--out FILE] [--seconds S] | placing [--out FILE] [--quick] | program [--out FILE] | holding [--out FILE]
// quality [--fast] [--out DIR] [--seconds S] [--only TEXT] | quality --fast --gate | quality --renew --because REASON
// first [--program FILE] [--out FILE]
// versus [--all] [--out FILE] [--seconds S] [--only TEXT] | growth [--out DIR] [--seconds S]
var options = args.Skip(1).ToArray();
switch (args.FirstOrDefault())
{
    case "micro":
        // In this process: what BenchmarkDotNet would build on its own does not know of the locked package versions.
        var config = DefaultConfig.Instance.AddJob(BenchmarkDotNet.Jobs.Job.ShortRun.WithToolchain(InProcessEmitToolchain.Instance));
        BenchmarkSwitcher.FromTypes([typeof(StepBenchmarks), typeof(PhysicsBenchmarks)]).Run(options.Length > 0 ? options : ["--filter", "*"], config);
        return 0;
    case "settings":
        SettingsTable.Write(Value("--out") ?? Repository.Path("benchmarks", "settings.md"), Number("--seconds") ?? 20);
        return 0;
    case "placing":
        return PlacingTable.Write(Value("--out") ?? Repository.Path("benchmarks", "placing.md"), options.Contains("--quick")) ? 0 : 1;
    case "program":
        ProgramTable.Write(Value("--out") ?? Repository.Path("benchmarks", "program.md"));
        return 0;
    case "holding":
        HoldingTable.Write(Value("--out") ?? Repository.Path("benchmarks", "holding.md"));
        return 0;
    case "first":
        FirstLayoutTable.Write(
            Value("--out") ?? Repository.Path("benchmarks", "first-layout.md"), Value("--program") ?? Repository.Path("out", "podlayout", "PodLayout.Cli"));
        return 0;
    case "program-one":
        ProgramTable.One(options[0]);
        return 0;
    case "quality":
        return Quality();
    case "quality-one":
        InstanceRun.Here(options[0], double.Parse(options[1], System.Globalization.CultureInfo.InvariantCulture));
        return 0;
    case "versus":
        return VersusTable.Write(
            Value("--out") ?? Repository.Path("benchmarks", "versus.md"), Chosen(options.Contains("--all")), Number("--seconds") ?? 20) ? 0 : 1;
    case "growth":
        GrowthTable.Write(Value("--out") ?? Repository.Path("benchmarks"), Number("--seconds") ?? 120);
        return 0;
    default:
        Console.Error.WriteLine("Say what to measure: micro, settings, placing, program, holding, quality, first, versus or growth (see DEVELOPERS.md).");
        return 2;
}

int Quality()
{
    if (options.Contains("--renew"))
    {
        if (Value("--because") is not { Length: > 0 } because)
        {
            Console.Error.WriteLine("Say why the record is renewed: --because \"reason\"");
            return 2;
        }

        QualityGate.Renew(because);
        return 0;
    }

    if (options.Contains("--gate"))
    {
        return QualityGate.Hold() ? 0 : 1;
    }

    QualityTable.Write(Value("--out") ?? Repository.Path("benchmarks"), Chosen(!options.Contains("--fast")), Number("--seconds") ?? 10);
    return 0;
}

ImmutableArray<Instance> Chosen(bool all) =>
    [.. (all ? Instances.All : Instances.Fast).Where(i => i.Name.Contains(Value("--only") ?? "", StringComparison.Ordinal))];

string? Value(string name) => Array.IndexOf(options, name) is var at and >= 0 && at + 1 < options.Length ? options[at + 1] : null;

double? Number(string name) =>
    Value(name) is { } text ? double.Parse(text, System.Globalization.CultureInfo.InvariantCulture) : null;
