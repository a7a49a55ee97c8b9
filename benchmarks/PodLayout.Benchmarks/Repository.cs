namespace PodLayout.Benchmarks;

/// <summary>The folder that holds the sources, wherever the program runs from.</summary>
internal static class Repository
{
    public static string Path(params string[] parts)
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(System.IO.Path.Combine(folder.FullName, "PodLayout.sln")))
        {
            folder = folder.Parent ?? throw new InvalidOperationException("Not inside the repository.");
        }

        return System.IO.Path.Combine([folder.FullName, .. parts]);
    }
}
