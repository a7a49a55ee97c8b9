using System.Diagnostics;
using PodLayout.Cli;
using PodLayout.Tests.Cli;

namespace PodLayout.Tests.Faults;

/// <summary>The program as a process of its own, under faults that the system makes.</summary>
public class ProcessTests
{
    private static readonly string[] Files = ["layout.json", "layout.svg", "pods.csv", "ports.csv"];

    /// <summary>Tells what ends at once from what never ends.</summary>
    private static readonly TimeSpan Ceiling = TimeSpan.FromSeconds(60);

    [Theory]
    [InlineData(">/dev/full", ExitCodes.BadFile)]
    [InlineData(">/dev/full 2>/dev/full", ExitCodes.BadFile)]
    [InlineData("2>/dev/full", ExitCodes.LayoutFound)]
    [InlineData("2>&-", ExitCodes.LayoutFound)]
    [InlineData("| true", ExitCodes.LayoutFound)]
    public void Full_and_closed_streams_cost_no_result(string streams, int code)
    {
        using Scratch scratch = new();
        SmallJobs.Put(scratch);
        var ended = Shell($"{Program} plan '{scratch.Path("job.json")}' --out '{scratch.Path("out")}' --threads 1 {streams}");
        Assert.Equal(code, ended.Code);
        Assert.DoesNotContain("   at ", ended.Error, StringComparison.Ordinal);
        Assert.Equal(Files, Names(scratch.Path("out")));
    }

    [Theory]
    [InlineData(">&-")]
    [InlineData(">&- 2>&-")]
    [InlineData("<&- >&- 2>&-")]
    public void Closed_streams_end_no_program_by_a_signal(string streams)
    {
        using Scratch scratch = new();
        SmallJobs.Put(scratch);
        var ended = Shell($"{Program} plan '{scratch.Path("job.json")}' --out '{scratch.Path("out")}' --threads 1 {streams}");
        Assert.Contains(ended.Code, new[] { ExitCodes.LayoutFound, ExitCodes.BadFile });
        Assert.Equal(Files, Names(scratch.Path("out")));
    }

    [Theory]
    [InlineData("inspect {0}.dxf")]
    [InlineData("inspect {0}.nc")]
    [InlineData("check {0}.json")]
    [InlineData("card {0}.json --out {1}")]
    [InlineData("shop {0}.json")]
    [InlineData("board {0}.json --out {1}")]
    [InlineData("plan {0}.json --out {1}")]
    public async Task One_press_of_ctrl_c_ends_every_command(string command)
    {
        // A file that nobody writes into: whoever reads it waits for ever.
        using Scratch scratch = new();
        var line = string.Format(System.Globalization.CultureInfo.InvariantCulture, command, scratch.Path("pipe"), scratch.Path("out"));
        var pipe = line.Split(' ').First(w => w.StartsWith(scratch.Folder, StringComparison.Ordinal));
        Assert.Equal(0, Shell($"mkfifo '{pipe}'").Code);
        using var process = Process.Start(new ProcessStartInfo("dotnet", [Dll, .. line.Split(' ')]) { RedirectStandardOutput = true, RedirectStandardError = true })!;
        var error = process.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken);

        // Opening it waits for the reader: only then is the key pressed.
        using FileStream held = new(pipe, FileMode.Open, FileAccess.Write);
        await Task.Delay(200, TestContext.Current.CancellationToken);
        Assert.Equal(0, Shell($"kill -INT {process.Id}").Code);
        if (!process.WaitForExit(Ceiling))
        {
            process.Kill();
            Assert.Fail("It did not end.");
        }

        Assert.Equal(ExitCodes.Interrupted, process.ExitCode);
        Assert.Equal("podlayout: interrupted before there was a result; nothing is written.\n", await error);
        Assert.False(Directory.Exists(scratch.Path("out")));
    }

    [Fact]
    public void A_disk_that_fills_up_leaves_the_old_set()
    {
        using Scratch scratch = new();
        SmallJobs.Put(scratch);
        Assert.Equal(0, SmallJobs.Plan(scratch, "out").Code);
        var before = Names(scratch.Path("out")).Select(n => File.ReadAllText(scratch.Path("out/" + n))).ToList();
        SmallJobs.Put(scratch, """, "name": "another" """);
        // No file may grow beyond 8 blocks of 512 bytes, and the signal that tells of it is not heeded: writing fails as on a full disk.
        // The runtime itself would write larger ones in memory unless it is told not to.
        var ended = Shell($"trap '' XFSZ; ulimit -f 8; DOTNET_EnableDiagnostics=0 DOTNET_EnableWriteXorExecute=0 {Program} plan '{scratch.Path("job.json")}' --out '{scratch.Path("out")}' --threads 1");
        Assert.Equal(ExitCodes.BadFile, ended.Code);
        Assert.Contains("the results cannot be written", ended.Error, StringComparison.Ordinal);
        Assert.Equal(Files, Names(scratch.Path("out")));
        Assert.Equal(before, Names(scratch.Path("out")).Select(n => File.ReadAllText(scratch.Path("out/" + n))));
    }

    private static string Program => $"dotnet '{Dll}'";

    private static string Dll => Path.Combine(AppContext.BaseDirectory, "PodLayout.Cli.dll");

    private static string[] Names(string folder) => [.. Directory.GetFileSystemEntries(folder).Select(f => Path.GetFileName(f)!).Order(StringComparer.Ordinal)];

    private static (int Code, string Error) Shell(string line)
    {
        using var process = Process.Start(new ProcessStartInfo("/bin/sh", ["-c", line]) { RedirectStandardOutput = true, RedirectStandardError = true, RedirectStandardInput = true })!;
        process.StandardInput.Close();
        var (output, error) = (process.StandardOutput.ReadToEndAsync(), process.StandardError.ReadToEndAsync());
        if (!process.WaitForExit(Ceiling))
        {
            process.Kill(entireProcessTree: true);
            Assert.Fail($"It did not end within {Ceiling}: {line}");
        }

        Assert.NotNull(output);
        return (process.ExitCode, error.GetAwaiter().GetResult());
    }
}
