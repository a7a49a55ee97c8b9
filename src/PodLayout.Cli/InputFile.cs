using PodLayout.Findings;

namespace PodLayout.Cli;

/// <summary>Reads input files; what the system says against it becomes a finding.</summary>
internal static class InputFile
{
    /// <summary>No drawing of a part is larger, and a device that never ends must end somewhere.</summary>
    private const long LargestBytes = 512L << 20;

    /// <summary>
    /// What a file is called in findings and results: as in the job that names it. Where the job lies, and how its path was typed,
    /// is of this machine and of no use to others.
    /// </summary>
    public static string NameOf(string pathInJob) => Path.IsPathRooted(pathInJob) ? Path.GetFileName(pathInJob) : pathInJob;

    /// <summary>A file's content.</summary>
    /// <param name="path">Its path.</param>
    /// <param name="isOfJob">Whether the path stands in a job file, and not on the command line.</param>
    public static Outcome<byte[]> Read(string path, bool isOfJob = false)
    {
        try
        {
            if (Directory.Exists(path))
            {
                return Refuse(path, "this is a folder; expected a file.", "Name a file in it.");
            }

            using FileStream stream = new(path, FileMode.Open, FileAccess.Read, FileShare.Read);
            using MemoryStream content = new();
            var buffer = new byte[1 << 16];
            int count;
            while ((count = stream.Read(buffer)) > 0)
            {
                content.Write(buffer, 0, count);
                if (content.Length > LargestBytes)
                {
                    return Refuse(path, $"the file is larger than {LargestBytes >> 20} MB.", "Name the part's own drawing, job or shop file.");
                }
            }

            return Outcome<byte[]>.Of(content.ToArray());
        }
        catch (Exception e) when (e is FileNotFoundException or DirectoryNotFoundException)
        {
            return Refuse(path, "there is no such file.", isOfJob
                ? "Check the path; paths inside a job file are taken from its own folder."
                : "Check the path; it is taken from the folder in which the command is given.");
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            return Refuse(path, $"the file cannot be read: {e.Message}", "Check the path and the rights to the file.");
        }
    }

    private static Outcome<byte[]> Refuse(string path, string message, string remedy) => Outcome<byte[]>.Refuse(
        new Finding("file-unreadable", Severity.Refused, FindingKind.File, message, new Place.InFile(path), remedy));
}
