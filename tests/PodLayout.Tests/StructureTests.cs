using System.Text.RegularExpressions;

namespace PodLayout.Tests;

/// <summary>What the folders of the library may know of each other and of other libraries.</summary>
public class StructureTests
{
    private static readonly string Library = Repository.Path("src", "PodLayout");

    [Theory]
    [InlineData("NetTopologySuite", "Geometry")]
    [InlineData("Google.OrTools", "Choice")]
    public void A_library_is_used_where_it_belongs_only(string library, params string[] folders)
    {
        var users = Sources().Where(s => s.Text.Contains(library, StringComparison.Ordinal) && !s.Text.Contains("/// <remarks>The polygon engine", StringComparison.Ordinal))
            .Select(s => s.Folder).Distinct().Order().ToList();
        Assert.Equal(folders, users);
        Assert.All(folders, folder => Assert.Contains(
            Sources(), s => s.Folder == folder && s.Text.Contains($"using {library}", StringComparison.Ordinal)));
    }

    [Theory]
    [InlineData(@"\bConsole\.")]
    [InlineData(@"\bDateTime(Offset)?\.(Utc)?Now\b")]
    [InlineData(@"\bnew Random\(|\bRandom\.Shared\b|\bGuid\.NewGuid\b")]
    [InlineData(@"\bFile\.(Read|Write|Open|Create|Delete|Exists|Move)")]
    public void The_library_does_not_touch_the_console_the_clock_chance_or_files(string forbidden) =>
        Assert.DoesNotContain(Sources(), s => Regex.IsMatch(s.Text, forbidden));

    [Fact]
    public void No_folder_depends_on_one_that_depends_on_it()
    {
        var uses = Sources().Where(s => s.Folder.Length > 0).GroupBy(s => s.Folder).ToDictionary(
            g => g.Key,
            g => g.SelectMany(s => Regex.Matches(s.Text, @"^using PodLayout\.(\w+)", RegexOptions.Multiline).Select(m => m.Groups[1].Value))
                .Where(used => used != g.Key).ToHashSet());
        Assert.True(uses.Count > 10);
        foreach (var folder in uses.Keys)
        {
            // Everything reached from the folder, by any way.
            var reached = new HashSet<string>();
            var open = new Queue<string>(uses[folder]);
            while (open.TryDequeue(out var next))
            {
                if (reached.Add(next) && uses.TryGetValue(next, out var further))
                {
                    foreach (var f in further)
                    {
                        open.Enqueue(f);
                    }
                }
            }

            Assert.DoesNotContain(folder, reached);
        }
    }

    private static IEnumerable<(string Folder, string Text)> Sources() =>
        from path in Directory.EnumerateFiles(Library, "*.cs", SearchOption.AllDirectories)
        let parts = Path.GetRelativePath(Library, path).Split(Path.DirectorySeparatorChar)
        where parts[0] is not ("bin" or "obj")
        select (parts.Length > 1 ? parts[0] : "", File.ReadAllText(path));
}
