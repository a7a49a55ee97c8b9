using System.Text;
using PodLayout.Findings;

namespace PodLayout.Cli;

/// <summary>
/// Writes the result files: all of them under passing names first, then each renamed in one step, so that a full disk or a
/// missing right leaves no half-written file behind.
/// </summary>
internal static class OutputFolder
{
    private static readonly UTF8Encoding Utf8 = new(encoderShouldEmitUTF8Identifier: false);

    /// <summary>
    /// Tries whether the folder can be written to, and leaves it as it was: better to know before a long search than after.
    /// </summary>
    public static Finding? Try(string folder) => Write(folder, [("try", [])], keep: false);

    /// <summary>Writes files of text; null, or what stood against it.</summary>
    public static Finding? Write(string folder, IReadOnlyList<(string Name, string Content)> files) =>
        Write(folder, [.. files.Select(f => (f.Name, Utf8.GetBytes(f.Content)))], keep: true);

    /// <summary>Writes the files; null, or what stood against it.</summary>
    public static Finding? Write(string folder, IReadOnlyList<(string Name, byte[] Content)> files) => Write(folder, files, keep: true);

    private static Finding? Write(string folder, IReadOnlyList<(string Name, byte[] Content)> files, bool keep)
    {
        var made = NewFolders(folder);
        List<string> passing = [];
        try
        {
            Directory.CreateDirectory(folder);
            foreach (var (name, content) in files)
            {
                var path = Path.Combine(folder, $".{name}.{Environment.ProcessId}.tmp");
                passing.Add(path);
                File.WriteAllBytes(path, content);
            }

            if (keep)
            {
                for (var i = 0; i < files.Count; i++)
                {
                    File.Move(passing[i], Path.Combine(folder, files[i].Name), overwrite: true);
                }
            }
            else
            {
                Discard(passing, made);
            }

            return null;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            Discard(passing, made);
            return new(
                "folder-unwritable",
                Severity.Refused,
                FindingKind.File,
                $"the results cannot be written: {e.Message}",
                new Place.InFile(folder),
                "Name a folder you may write to with --out.");
        }
    }

    /// <summary>The folders on the way that do not exist yet, the innermost first.</summary>
    private static List<string> NewFolders(string folder)
    {
        List<string> missing = [];
        for (var at = folder; !string.IsNullOrEmpty(at) && !Directory.Exists(at); at = Path.GetDirectoryName(at))
        {
            missing.Add(at);
        }

        return missing;
    }

    private static void Discard(List<string> files, List<string> folders)
    {
        foreach (var away in (IEnumerable<Action>)[
            .. files.Select(file => (Action)(() => File.Delete(file))),
            .. folders.Where(Directory.Exists).Select(folder => (Action)(() => Directory.Delete(folder)))])
        {
            try
            {
                away();
            }
            catch (Exception e) when (e is IOException or UnauthorizedAccessException)
            {
                // The refusal already says that the folder cannot be written; the rest is taken away all the same.
            }
        }
    }
}
