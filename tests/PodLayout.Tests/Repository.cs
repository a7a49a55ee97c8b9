namespace PodLayout.Tests;

/// <summary>Files of the repository, found from where the tests run.</summary>
internal static class Repository
{
    public static string Root { get; } = Find(AppContext.BaseDirectory);

    public static string Path(params string[] parts) => System.IO.Path.Combine([Root, .. parts]);

    private static string Find(string folder) => File.Exists(System.IO.Path.Combine(folder, "PodLayout.sln"))
        ? folder
        : Find(Directory.GetParent(folder)?.FullName ?? throw new InvalidOperationException("The tests run outside the repository."));
}
