using PodLayout.Cli;
using PodLayout.Findings;

namespace PodLayout.Tests.Cli;

public class OutputFolderTests
{
    private static readonly (string, string)[] Files = [("a.json", "{}\n"), ("b.csv", "x\n")];

    [Fact]
    public void All_files_are_written_and_nothing_else()
    {
        using Scratch scratch = new();
        Assert.Null(OutputFolder.Write(scratch.Path("deep/er"), Files));
        Assert.Equal(["a.json", "b.csv"], Directory.GetFileSystemEntries(scratch.Path("deep/er")).Select(Path.GetFileName).Order());
        Assert.Equal("{}\n", File.ReadAllText(scratch.Path("deep/er/a.json")));
    }

    [Fact]
    public void A_folder_that_is_a_file_is_refused_and_left_alone()
    {
        using Scratch scratch = new();
        var file = scratch.Put("out", "mine");
        Assert.Equal(FindingKind.File, OutputFolder.Write(file, Files)!.Kind);
        Assert.Equal("mine", File.ReadAllText(file));
    }

    [Fact]
    public void When_one_file_cannot_be_written_none_is_and_new_folders_go()
    {
        using Scratch scratch = new();
        var longName = new string('x', 300);
        Assert.Equal(FindingKind.File, OutputFolder.Write(scratch.Path("new/out"), [.. Files, (longName, "x")])!.Kind);
        Assert.Empty(Directory.GetFileSystemEntries(scratch.Folder));
    }

    [Fact]
    public void Older_results_stay_whole_when_new_ones_cannot_be_written()
    {
        using Scratch scratch = new();
        scratch.Put("out/a.json", "old");
        Assert.NotNull(OutputFolder.Write(scratch.Path("out"), [.. Files, (new string('x', 300), "x")]));
        Assert.Equal("old", File.ReadAllText(scratch.Path("out/a.json")));
        Assert.Single(Directory.GetFileSystemEntries(scratch.Path("out")));
    }

    [Fact]
    public void Trying_a_folder_leaves_it_as_it_was()
    {
        using Scratch scratch = new();
        Assert.Null(OutputFolder.Try(scratch.Path("new/out")));
        Assert.Empty(Directory.GetFileSystemEntries(scratch.Folder));
        Assert.NotNull(OutputFolder.Try(scratch.Put("file", "mine")));
    }
}
