using PodLayout.Cli;

namespace PodLayout.Tests.Cli;

public class ProgressLinesTests
{
    [Fact]
    public void The_first_layout_is_told_at_once_and_nothing_else_in_the_first_seconds()
    {
        StringWriter error = new();
        ProgressLines lines = new(error, fromTheStart: false);
        lines.Report(new(null, 0, 0, 1));
        lines.Report(new(7, 0, 1, 1));
        lines.Report(new(6, 5, 2, 1));
        Assert.Equal("podlayout: 0 s: best 7 pods, at least 0; 1 placements looked at, 1 open", error.ToString().TrimEnd());
    }

    [Fact]
    public void Where_progress_is_asked_for_it_is_told_from_the_start_and_the_first_layout_within_the_second()
    {
        StringWriter error = new();
        ProgressLines lines = new(error, fromTheStart: true);
        lines.Report(new(null, 0, 0, 1));
        lines.Report(new(null, 0, 1, 1));
        lines.Report(new(7, null, 2, 1));
        Assert.Equal(
            ["podlayout: 0 s: no layout yet, at least 0; 0 placements looked at, 1 open", "podlayout: 0 s: best 7 pods, none possible so far; 2 placements looked at, 1 open"],
            error.ToString().Split('\n', StringSplitOptions.RemoveEmptyEntries));
    }
}
