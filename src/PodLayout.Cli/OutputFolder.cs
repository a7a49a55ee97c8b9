using System.Text;
using PodLayout.Findings;

namespace PodLayout.Cli;

/// <summary>
/// Writes the result files: all of them or none. They are written into a folder of their own first; a list of what is to be done
/// then makes it final, and they take the places of the older ones one by one. What stands against that on the way is undone; where
/// the program is killed on the way, the next command that uses the folder does the rest (<see cref="Mend"/>).
/// </summary>
internal static class OutputFolder
{
    /// <summary>Where files wait; it is there only while a command writes, or after one was killed.</summary>
    internal const string WaitingName = ".podlayout-writing";

    // The list is complete once it has its name: it is renamed into it.
    private const string ListName = "list", LockName = "lock", New = "new-", Old = "old-";

    private static readonly UTF8Encoding Utf8 = new(encoderShouldEmitUTF8Identifier: false);

    /// <summary>
    /// Tries whether the folder can be written to, and leaves it as it was: better to know before a long search than after.
    /// </summary>
    public static Finding? Try(string folder) => Guarded(folder, waiting => File.WriteAllBytes(Path.Combine(waiting, New + "try"), []), isKept: false);

    /// <summary>Writes files of text; null, or what stood against it.</summary>
    public static Finding? Write(string folder, IReadOnlyList<(string Name, string Content)> files) =>
        Write(folder, [.. files.Select(f => (f.Name, Utf8.GetBytes(f.Content)))]);

    /// <summary>Writes the files; null, or what stood against it.</summary>
    /// <param name="folder">Where to.</param>
    /// <param name="files">The files.</param>
    /// <param name="gone">Files there that go together with the write.</param>
    /// <param name="step">Called before each step that changes what is seen in the folder, for tests of what happens there.</param>
    public static Finding? Write(
        string folder, IReadOnlyList<(string Name, byte[] Content)> files, IReadOnlyList<string>? gone = null, Action<string>? step = null) =>
        Guarded(folder, waiting =>
        {
            if (files.Select(f => f.Name).FirstOrDefault(name => Directory.Exists(Path.Combine(folder, name))) is { } taken)
            {
                throw new IOException($"{taken} is a folder there.");
            }

            foreach (var (name, content) in files)
            {
                File.WriteAllBytes(Path.Combine(waiting, New + name), content);
            }

            var list = Path.Combine(waiting, ListName);
            File.WriteAllLines(list + ".part", [.. files.Select(f => "+" + f.Name), .. (gone ?? []).Select(name => "-" + name)]);
            step?.Invoke(ListName);
            File.Move(list + ".part", list);
            Place(folder, waiting, step);
        });

    /// <summary>Does the rest of what a command left undone that was killed while it wrote; null, or what stands against it.</summary>
    public static Finding? Mend(string folder) =>
        Directory.Exists(Path.Combine(folder.Length == 0 ? "." : folder, WaitingName)) ? Guarded(folder, _ => { }) : null;

    private static Finding? Guarded(string folder, Action<string> write, bool isKept = true)
    {
        var made = NewFolders(folder);
        var waiting = Path.Combine(folder, WaitingName);
        var isDone = false;
        FileStream? mine = null;
        try
        {
            Directory.CreateDirectory(waiting);
            mine = new(Path.Combine(waiting, LockName), FileMode.OpenOrCreate, FileAccess.Write, FileShare.None);
            if (File.Exists(Path.Combine(waiting, ListName)))
            {
                Place(folder, waiting, step: null);
            }

            Empty(waiting);
            write(waiting);
            isDone = true;
            return null;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            return new(
                "folder-unwritable",
                Severity.Refused,
                FindingKind.File,
                mine is null && File.Exists(Path.Combine(waiting, LockName))
                    ? "the results cannot be written: another podlayout is writing into this folder." : $"the results cannot be written: {Reason(e, folder)}",
                new Place.InFile(folder),
                "Name a folder you may write to with --out.");
        }
        finally
        {
            Close(mine, waiting, isDone && isKept ? [] : made);
        }
    }

    // Files that wait are no names that anyone gave.
    private static string Reason(Exception e, string folder) =>
        e.Message.Replace(Path.Combine(Path.GetFullPath(folder), WaitingName, New), Path.Combine(folder, " ").TrimEnd(), StringComparison.Ordinal);

    // Each file takes its place, after what stood there has been laid aside; at the first that cannot, all goes back.
    private static void Place(string folder, string waiting, Action<string>? step)
    {
        List<(string From, string To)> done = [];
        try
        {
            foreach (var line in File.ReadAllLines(Path.Combine(waiting, ListName)).Where(IsStep))
            {
                string name = line[1..], place = Path.Combine(folder, name), comes = Path.Combine(waiting, New + name), goes = Path.Combine(waiting, Old + name);
                // Taken up again after a kill: what waits no longer stands in its place already.
                var isToDo = line[0] == '+' ? File.Exists(comes) : File.Exists(place);
                if (isToDo && File.Exists(place))
                {
                    Rename(place, goes);
                }

                if (line[0] == '+' && isToDo)
                {
                    Rename(comes, place);
                }
            }
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            File.Delete(Path.Combine(waiting, ListName));
            for (var i = done.Count - 1; i >= 0; i--)
            {
                File.Move(done[i].To, done[i].From, overwrite: true);
            }

            throw;
        }

        step?.Invoke("end");
        File.Delete(Path.Combine(waiting, ListName));

        void Rename(string from, string to)
        {
            step?.Invoke(Path.GetFileName(to));
            File.Move(from, to, overwrite: true);
            done.Add((from, to));
        }
    }

    // The list may lie in a folder from elsewhere: a name that leads out of it is none of ours.
    private static bool IsStep(string line) => line.Length > 1 && line[0] is '+' or '-'
        && line[1..] is var name && name is not ("." or "..") && !name.AsSpan().ContainsAny('/', '\\', ':');

    // All that a command of ours may have left there; what anyone else put there stays.
    private static void Empty(string waiting)
    {
        foreach (var file in Directory.GetFiles(waiting).Where(f => Path.GetFileName(f) is var name && name != LockName
            && (name.StartsWith(New, StringComparison.Ordinal) || name.StartsWith(Old, StringComparison.Ordinal) || name.StartsWith(ListName, StringComparison.Ordinal))))
        {
            File.Delete(file);
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

    private static void Close(FileStream? mine, string waiting, List<string> made)
    {
        mine?.Dispose();
        // Who does not hold the lock leaves what another one writes.
        IEnumerable<Action> all = mine is null ? [] :
        [
            () =>
            {
                // With a list still to be done it stays for the next command.
                if (!File.Exists(Path.Combine(waiting, ListName)))
                {
                    Empty(waiting);
                    File.Delete(Path.Combine(waiting, LockName));
                    Directory.Delete(waiting);
                }
            },
        ];
        foreach (var away in all.Concat(made.Where(Directory.Exists).Select(folder => (Action)(() => Directory.Delete(folder)))))
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
