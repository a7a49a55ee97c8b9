using PodLayout.Cli;

namespace PodLayout.Tests.Cli;

/// <summary>One command, run in the tests' own process.</summary>
internal sealed record Ran(int Code, string Out, string Error)
{
    public static Ran Of(params string[] args)
    {
        using StringWriter output = new(), error = new();
        var code = CommandLine.Run(args, output, error, TestContext.Current.CancellationToken);
        return new(code, output.ToString(), error.ToString());
    }

    /// <summary>The one line that says what is wrong: nothing before or after it, no stack trace.</summary>
    public string OnlyError()
    {
        Assert.Equal("", Out);
        Assert.EndsWith("\n", Error, StringComparison.Ordinal);
        var line = Error[..^1];
        Assert.DoesNotContain('\n', line);
        Assert.StartsWith("podlayout: error: ", line, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", line, StringComparison.Ordinal);
        Assert.DoesNotContain("Exception", line, StringComparison.Ordinal);
        return line;
    }
}
