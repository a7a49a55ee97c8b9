using BenchmarkDotNet.Configs;
using BenchmarkDotNet.Jobs;
using BenchmarkDotNet.Running;
using BenchmarkDotNet.Toolchains.InProcess.Emit;
using PodLayout.Benchmarks;

// micro [BenchmarkDotNet's options] | settings [--out FILE] [--seconds S] | placing [--out FILE] [--quick] | program [--out FILE] | holding [--out FILE]
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
    case "program-one":
        ProgramTable.One(options[0]);
        return 0;
    default:
        Console.Error.WriteLine("Say what to measure: micro, settings, placing, program or holding (see DEVELOPERS.md).");
        return 2;
}

string? Value(string name) => Array.IndexOf(options, name) is var at and >= 0 && at + 1 < options.Length ? options[at + 1] : null;

double? Number(string name) =>
    Value(name) is { } text ? double.Parse(text, System.Globalization.CultureInfo.InvariantCulture) : null;
