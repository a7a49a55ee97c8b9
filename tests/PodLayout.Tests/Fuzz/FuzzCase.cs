using System.Diagnostics;
using System.Text;
using System.Text.RegularExpressions;
using PodLayout.Cli;
using PodLayout.Handover;
using PodLayout.Tests.Cli;
using PodLayout.Tests.Faults;

namespace PodLayout.Tests.Fuzz;

/// <summary>One damaged file, and what a command made of it.</summary>
/// <param name="Kind">Kind of the file.</param>
/// <param name="Code">Exit code.</param>
/// <param name="Took">How long it took.</param>
/// <param name="Wrong">What must not be; null where all is well.</param>
internal sealed partial record FuzzCase(string Kind, int Code, TimeSpan Took, string? Wrong)
{
    /// <summary>Makes and runs case <paramref name="index"/>: the same for the same seed.</summary>
    public static FuzzCase Of(Seeds seeds, int seed, int index, TimeSpan limit)
    {
        Random random = new(unchecked(seed * 1_000_003 + index));
        var kind = Seeds.Kinds[index % Seeds.Kinds.Length];
        var known = seeds.Of(kind);
        var content = Mutation.Of(known[random.Next(known.Length)], known[random.Next(known.Length)], random);
        using Scratch scratch = new();
        var args = Command(scratch, kind, content, random);
        var clock = Stopwatch.StartNew();
        using StringWriter output = new(), error = new();
        var run = Task.Run(() => CommandLine.Run(args, output, error, TestContext.Current.CancellationToken));
#pragma warning disable xUnit1031 // A case that does not end must not keep the others from being run.
        if (!run.Wait(limit))
        {
            return new(kind, -1, clock.Elapsed, $"over time: {string.Join(' ', args)}\n{Kept(kind, content, index)}");
        }

        var code = run.Result;
#pragma warning restore xUnit1031
        var took = clock.Elapsed;
        var wrong = WrongIn(code, output.ToString(), error.ToString()) ?? WrongFiles(scratch, code) ?? WrongLayout(scratch, code);
        return new(kind, code, took, wrong is null ? null : $"{wrong}: {string.Join(' ', args)}\n{error}\n{Kept(kind, content, index)}");
    }

    private static string[] Command(Scratch scratch, string kind, byte[] content, Random random)
    {
        string[] planned = ["--out", scratch.Path("out"), "--threads", "1", "--time-limit", "2"];
        var plans = random.Next(12) == 0;
        switch (kind)
        {
            case "dxf" or "binary" or "svg":
                var drawing = scratch.Put(kind == "svg" ? "part.svg" : "part.dxf", content);
                return plans ? ["plan", drawing, "--thickness", "30", "--at", "105,105", "--overhang", "90", .. planned] : ["inspect", drawing, "--tool", "1=12", .. random.Next(2) == 0 ? ["--json"] : Array.Empty<string>()];
            case "program" when plans:
                scratch.Put("part.nc", content);
                SmallJobs.Put(scratch, """, "program": { "file": "part.nc", "zZero": "partFace", "tools": [{ "number": 1, "diameterMm": 12 }, { "number": 2, "diameterMm": 6 }, { "number": 3, "diameterMm": 10 }] } """);
                return ["plan", scratch.Path("job.json"), .. planned];
            case "program":
                return ["inspect", scratch.Put("part.nc", content), "--tool", "1=12"];
            case "shop" when plans:
                SmallJobs.Put(scratch);
                return ["plan", scratch.Path("job.json"), "--shop", scratch.Put("shop.json", content), .. planned];
            case "shop":
                return ["shop", scratch.Put("shop.json", content)];
            case "board":
                return ["board", scratch.Put("shop.json", content), "--out", scratch.Path("board")];
            case "job":
                SmallJobs.Put(scratch);
                return ["plan", scratch.Put("job.json", content), .. planned];
            default:
                return random.Next(3) == 0 ? ["card", scratch.Put("layout.json", content), "--out", scratch.Path("card")] : ["check", scratch.Put("layout.json", content)];
        }
    }

    private static string? WrongIn(int code, string output, string error)
    {
        var errors = ErrorLine().Count(error);
        return !ExitCodes.All.Any(c => c.Code == code) || code == ExitCodes.InternalError ? $"exit {code}"
            : error.Contains("   at ", StringComparison.Ordinal) || error.Contains("Exception", StringComparison.Ordinal) ? "a trace"
            : code is ExitCodes.BadCommandLine or ExitCodes.BadRequest or ExitCodes.BadFile && errors != 1 ? $"{errors} lines of errors"
            : (output + error).EnumerateRunes().Any(r => Rune.IsControl(r) && r.Value is not ('\n' or '\r' or '\t')) ? "a control character"
            : null;
    }

    // None, or the whole set with one mark, and nothing that waits.
    private static string? WrongFiles(Scratch scratch, int code)
    {
        var folder = scratch.Path("out");
        if (!Directory.Exists(folder))
        {
            return null;
        }

        string[] files = [.. Directory.GetFileSystemEntries(folder).Select(f => Path.GetFileName(f)!).Order(StringComparer.Ordinal)];
        if (!files.SequenceEqual(["layout.json", "layout.svg", "pods.csv", "ports.csv"]))
        {
            return $"a part of the files: {string.Join(", ", files)}";
        }

        return code is not (ExitCodes.LayoutFound or ExitCodes.NoLayout or ExitCodes.DoesNotHold) ? $"files with exit {code}"
            : files.Select(f => LayoutMark.In(f, File.ReadAllBytes(Path.Combine(folder, f)))).Where(m => m != "").Distinct().Count() != 1 ? "files of several marks" : null;
    }

    private static string? WrongLayout(Scratch scratch, int code)
    {
        if (code is not ExitCodes.LayoutFound || !File.Exists(scratch.Path("out/layout.json")))
        {
            return null;
        }

        var check = Ran.Of("check", scratch.Path("out/layout.json"));
        return check.Code == ExitCodes.LayoutFound ? null : $"a layout that fails its check with {check.Code}: {check.Error}";
    }

    // For looking at by hand.
    private static string Kept(string kind, byte[] content, int index)
    {
        var path = Path.Combine(Path.GetTempPath(), $"podlayout-fuzz-{index}.{kind}");
        File.WriteAllBytes(path, content);
        return path;
    }

    [GeneratedRegex("^podlayout: (error|internal error):", RegexOptions.Multiline)]
    private static partial Regex ErrorLine();
}
