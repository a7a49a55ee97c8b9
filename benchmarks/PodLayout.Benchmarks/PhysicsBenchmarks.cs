using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using BenchmarkDotNet.Attributes;
using PodLayout.Cuts;
using PodLayout.Forces;
using PodLayout.Jobs;
using PodLayout.Parts;
using PodLayout.Programs;
using PodLayout.Reading;
using PodLayout.Shops;
using PodLayout.Vacuum;

namespace PodLayout.Benchmarks;

/// <summary>What is reckoned for holding before any equilibrium: the vacuum at twenty pods, the loads of a program of 10,000 lines, the keep-outs of 400 holes.</summary>
[MemoryDiagnoser]
public class PhysicsBenchmarks
{
    private const int Lines = 10_000;

    private readonly Job _job = Cases.Oval(60);
    private Shop _withPump = null!;
    private ImmutableArray<PodOnPorts> _pods;
    private ToolPath _path = null!;
    private ToolPath _drilled = null!;
    private CutRequest _request = null!;
    private Drawing _drawing = null!;

    /// <summary>Makes what the steps begin with.</summary>
    [GlobalSetup]
    public void Prepare()
    {
        _withPump = _job.Shop with { Vacuum = _job.Shop.Vacuum with { Source = new VacuumSource.Pump([new(0, 80), new(85, 0)]) } };
        var ports = _job.Shop.Board.Ports;
        _pods = [.. Enumerable.Range(0, 20).Select(i => new PodOnPorts(_job.Shop.Pods[0], [ports[i * 37 % ports.Length]]))];
        var tools = ImmutableSortedDictionary<int, Tool>.Empty.Add(1, new(1, 12, new CutterForm.Flat()));
        _path = ProgramReading.Read("posted.nc", Encoding.UTF8.GetBytes(Posted()), new() { Tools = tools }).Value!;
        _drilled = ProgramReading.Read("drilled.nc", Encoding.UTF8.GetBytes(Drilled()), new() { Tools = tools }).Value!;
        _request = new([], new("posted.nc", tools, ZZero.PartFace, default, null, false), 0.1, 2, null);
        _drawing = new("oval", "DXF", "millimetre", 1, 0.05, [], [], [], []);
    }

    /// <summary>Behind a gauge reading.</summary>
    [Benchmark]
    public VacuumReading TwentyPodsBehindAGauge() => VacuumNetwork.At(_job.Shop, _pods);

    /// <summary>Behind a pump.</summary>
    [Benchmark]
    public VacuumReading TwentyPodsBehindAPump() => VacuumNetwork.At(_withPump, _pods);

    /// <summary>Behind a pump, with one seal lost.</summary>
    [Benchmark]
    public VacuumReading TwentyPodsOneLost() => VacuumNetwork.At(_withPump, _pods, 3);

    /// <summary>A posted spline round the oval, in several passes.</summary>
    [Benchmark]
    public CutterLoads LoadsOfTenThousandLines() => Loading.Of(_job, _drawing, _request, _path, "job.json").Value!;

    /// <summary>400 holes drilled through the oval, put into the part: keep-outs, floors, heights.</summary>
    [Benchmark]
    public Job FourHundredHoles() => Cutting.Apply(_job, _drawing, _request, _drilled, "job.json").Value!;

    private static string Drilled()
    {
        var text = new StringBuilder("G21 G90 G17\nT1 M6\nS18000 M3\nG0 X0 Y0 Z5\nF1000\n");
        foreach (var i in Enumerable.Range(0, 400))
        {
            text.Append(CultureInfo.InvariantCulture, $"G81 X{-190 + 20 * (i % 20)} Y{-190 + 20 * (i / 20)} Z-50 R2\n");
        }

        return text.Append("G80\nM2\n").ToString();
    }

    private static string Posted()
    {
        var text = new StringBuilder("G21 G90 G17\nT1 M6\nS18000 M3\nG0 X606 Y0 Z5\nF6000\n");
        for (var i = 0; i < Lines; i++)
        {
            var angle = 2 * Math.PI * i / (Lines / 5.0);
            text.Append(CultureInfo.InvariantCulture, $"G1 X{606 * Math.Cos(angle):0.000} Y{306 * Math.Sin(angle):0.000} Z{-6 * (1 + i * 5 / Lines)}\n");
        }

        return text + "G0 Z5\nM30\n";
    }
}
