namespace PodLayout.Tests.Cli;

/// <summary>A folder that lasts as long as a test.</summary>
internal sealed class Scratch : IDisposable
{
    public string Folder { get; } = Directory.CreateTempSubdirectory("podlayout-test-").FullName;

    public string Put(string name, string content) => Put(name, System.Text.Encoding.UTF8.GetBytes(content));

    public string Put(string name, byte[] content)
    {
        var path = Path(name);
        Directory.CreateDirectory(System.IO.Path.GetDirectoryName(path)!);
        File.WriteAllBytes(path, content);
        return path;
    }

    public string Path(string name) => System.IO.Path.Combine(Folder, name);

    public void Dispose() => Directory.Delete(Folder, recursive: true);
}
