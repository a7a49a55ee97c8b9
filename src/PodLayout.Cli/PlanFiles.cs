using System.Collections.Immutable;
using PodLayout.Findings;
using PodLayout.Handover;
using PodLayout.Handover.Format;

namespace PodLayout.Cli;

/// <summary>The files of a plan, which lie together in a folder and bear one mark.</summary>
internal static class PlanFiles
{
    public const string Layout = "layout.json";

    /// <summary>Code of the warning of files that were made before the layout was changed.</summary>
    public const string OfBefore = "files-of-before";

    private static readonly ImmutableArray<string> Names =
        [Layout, "pods.csv", "ports.csv", "layout.svg", "card.html", "card.pdf", "layout.dxf"];

    /// <summary>
    /// Files of ours in a folder that would be out of date beside new ones: they go together with the write. What has one of our
    /// names and is not of our making stays.
    /// </summary>
    /// <param name="folder">The folder.</param>
    /// <param name="written">Names of what is written there.</param>
    /// <param name="mark">The mark that a file may bear and stay; null when none may.</param>
    public static ImmutableArray<string> OutOfDate(string folder, IEnumerable<string> written, string? mark) =>
        [.. Names.Except(written).Where(name => Content(folder, name) is { } content && IsOurs(content) && (mark is null || LayoutMark.In(name, content) != mark))];

    /// <summary>Whether a folder holds the layout of another plan than that of the mark; null when it does not.</summary>
    public static Finding? OtherLayout(string folder, string mark) =>
        Content(folder, Layout) is { } content && LayoutMark.In(Layout, content) is { } there && there != LayoutMark.PlanOf(mark)
            ? Refuse(Path.Combine(folder, Layout), $"is the layout of the plan {there}, the card is one of the plan {LayoutMark.PlanOf(mark)}; files of two plans must not lie together.",
                "Name another folder with --out, or take that layout and its files away.")
            : null;

    /// <summary>
    /// What speaks against the files beside a layout: a refusal where one is of another plan, warnings where one was made before or
    /// after the layout was changed by hand, or does not tell.
    /// </summary>
    /// <param name="path">The layout's file.</param>
    /// <param name="file">What it holds, as it is read for a card.</param>
    public static ImmutableArray<Finding> Beside(string path, LayoutFile file)
    {
        if (Path.GetFileName(path) != Layout || file.Mark is null)
        {
            return [];
        }

        var (folder, mark) = (Path.GetDirectoryName(path) ?? "", LayoutMark.Of(file));
        List<Finding> found = [];
        foreach (var name in Names.Where(n => n != Layout))
        {
            if (Content(folder, name) is not { } content)
            {
                continue;
            }

            var (place, there) = (Path.Combine(folder, name), LayoutMark.In(name, content));
            if (there is null)
            {
                found.Add(Warn(place, "bears no mark of a plan: it may not be of the layout beside it."));
            }
            else if (LayoutMark.PlanOf(there) != LayoutMark.PlanOf(mark))
            {
                return [Refuse(place, there.Length == 0 ? "is of a plan that found no layout; the layout beside it has pods." : $"is of the plan {there}, the layout beside it of the plan {mark}.",
                    "Take the files of one of the two plans away, or plan the job again into this folder.")];
            }
            else if (there != mark)
            {
                found.Add(Warn(place, "was made of this plan before the layout was last changed."));
            }
        }

        return [.. found];
    }

    // Before files bore marks they named the program.
    private static bool IsOurs(byte[] content) => System.Text.Encoding.Latin1.GetString(content).Contains("podlayout", StringComparison.OrdinalIgnoreCase);

    private static byte[]? Content(string folder, string name)
    {
        try
        {
            return File.ReadAllBytes(Path.Combine(folder, name));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // What is not there, or cannot be read, tells nothing.
            return null;
        }
    }

    private static Finding Warn(string place, string message) => new(
        OfBefore, Severity.Warning, FindingKind.File, message, new Place.InFile(place), "Make the card again.");

    private static Finding Refuse(string place, string message, string remedy) => new(
        "files-of-two-plans", Severity.Refused, FindingKind.Request, message, new Place.InFile(place), remedy);
}
