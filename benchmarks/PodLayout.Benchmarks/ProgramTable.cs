using System.Collections.Immutable;
using System.Diagnostics;
using System.Globalization;
using System.Text;
using PodLayout.Programs;

namespace PodLayout.Benchmarks;

/// <summary>Seconds and memory to read and sweep hard programs, each in a process of its own.</summary>
internal static class ProgramTable
{
    private const int WarmRuns = 3;

    public static void Write(string path)
    {
        var table = new TableFile(
            "Posted programs: reading and sweeping",
            "Each program is made beforehand, then read and swept below the underside with a tool of 12 mm (6 mm for holes and helices). Cold is the first run of a process, which loads and compiles what it needs; warm is the middle one of three more. Processor is what the warm run took of all processors together, which other work on the machine changes less. Memory is the largest working set of the process, the program's text included.");
        table.Head("program", "lines", "read, warm s", "swept, warm s", "both, warm s", "both, cold s", "processor, warm s", "memory MB", "swept mm2");
        foreach (var (name, (words, _)) in ProgramCases.All)
        {
            var start = new ProcessStartInfo(Environment.ProcessPath!) { RedirectStandardOutput = true };
            foreach (var argument in (IEnumerable<string>)[.. Host(), "program-one", name])
            {
                start.ArgumentList.Add(argument);
            }

            using var child = Process.Start(start)!;
            var cells = child.StandardOutput.ReadToEnd().Trim().Split(' ');
            child.WaitForExit();
            table.Row([words, .. cells]);
        }

        table.Save(path);
    }

    /// <summary>Measures one program in this process and prints its cells.</summary>
    public static void One(string name)
    {
        var text = Encoding.UTF8.GetBytes(ProgramCases.All[name].Make());
        var cold = Run(text, name);
        var warm = Enumerable.Range(0, WarmRuns).Select(_ => Run(text, name)).OrderBy(r => r.ReadS + r.SweptS).ElementAt(WarmRuns / 2);
        using var self = Process.GetCurrentProcess();
        Console.WriteLine(string.Join(' ', text.Count(b => b == '\n').ToString(CultureInfo.InvariantCulture), S(warm.ReadS), S(warm.SweptS),
            S(warm.ReadS + warm.SweptS), S(cold.ReadS + cold.SweptS), S(warm.ProcessorS), (self.PeakWorkingSet64 >> 20).ToString(CultureInfo.InvariantCulture),
            warm.AreaMm2.ToString("0", CultureInfo.InvariantCulture)));
    }

    private static (double ReadS, double SweptS, double ProcessorS, double AreaMm2) Run(byte[] text, string name)
    {
        var tool = new Tool(1, name is "3-holes" or "6-helices" ? 6 : 12, new CutterForm.Flat());
        var tools = ImmutableSortedDictionary<int, Tool>.Empty.Add(1, tool);
        using var self = Process.GetCurrentProcess();
        var processor = self.TotalProcessorTime;
        var clock = Stopwatch.StartNew();
        var path = ProgramReading.Read(name, text, new() { Tools = tools }).Value!;
        var read = clock.Elapsed.TotalSeconds;
        var cuts = Sweeping.Of(path, new(tools, ZZero.PartFace, 30, 60, 0.1, default)).Value!;
        var swept = clock.Elapsed.TotalSeconds - read;
        self.Refresh();
        return (read, swept, (self.TotalProcessorTime - processor).TotalSeconds, cuts.Sum(c => c.Swept.AreaMm2));
    }

    // Started through the dotnet host, the program's own file comes first.
    private static IEnumerable<string> Host() =>
        Path.GetFileNameWithoutExtension(Environment.ProcessPath) == "dotnet" ? [Environment.GetCommandLineArgs()[0]] : [];

    private static string S(double seconds) => seconds.ToString("0.00", CultureInfo.InvariantCulture);
}
