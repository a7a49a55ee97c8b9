using System.Diagnostics.CodeAnalysis;
using System.Reflection;

namespace PodLayout.JsonFiles;

/// <summary>The types that files are bound to, looked at while the program runs.</summary>
/// <remarks>A program compiled ahead of time keeps them all: it takes the whole library as a root.</remarks>
internal static class FileForm
{
    private const string Kept = "Forms are types of this library, which is kept whole (TrimmerRootAssembly of the command-line tool).";

    /// <summary>The properties that are set from a file, in the order in which they are declared.</summary>
    /// <remarks>Compiled ahead of time there are no tokens, and reflection gives the properties in that order by itself.</remarks>
    [UnconditionalSuppressMessage("Trimming", "IL2070", Justification = Kept)]
    public static IEnumerable<PropertyInfo> Properties(Type form) => form.GetProperties(BindingFlags.Public | BindingFlags.Instance)
        .Where(p => p.SetMethod is not null)
        .OrderBy(p => p.HasMetadataToken() ? p.MetadataToken : 0);

    /// <summary>A form with nothing read into it yet: every member has its default.</summary>
    [UnconditionalSuppressMessage("Trimming", "IL2067", Justification = Kept)]
    public static object Fresh(Type form) => Activator.CreateInstance(form)!;
}
