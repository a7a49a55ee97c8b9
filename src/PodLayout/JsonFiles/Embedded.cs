namespace PodLayout.JsonFiles;

/// <summary>Files that are built into the library.</summary>
internal static class Embedded
{
    /// <summary>The bytes of a built-in file; a missing one is a fault of the build.</summary>
    public static byte[] Bytes(string name)
    {
        using var stream = typeof(Embedded).Assembly.GetManifestResourceStream(name)
            ?? throw new InvalidOperationException($"{name} is not built in.");
        using MemoryStream bytes = new();
        stream.CopyTo(bytes);
        return bytes.ToArray();
    }
}
