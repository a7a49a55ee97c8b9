using System.Collections.Immutable;

namespace PodLayout.JsonFiles;

/// <summary>
/// Marks a member that holds many values, and makes its collection. The type is named in the attribute, and not found out at run
/// time, so that a program compiled ahead of time has the collection's code.
/// </summary>
[AttributeUsage(AttributeTargets.Property)]
internal abstract class ManyOfAttribute : Attribute
{
    /// <summary>The type of one value.</summary>
    public abstract Type ItemType { get; }
}

/// <summary>Marks a list.</summary>
/// <typeparam name="T">What it lists.</typeparam>
[AttributeUsage(AttributeTargets.Property)]
internal sealed class ListOfAttribute<T> : ListOfAttribute
{
    public override Type ItemType => typeof(T);

    public override object Made(IEnumerable<object?> items) => items.Cast<T>().ToImmutableArray();
}

/// <summary>A list of something.</summary>
[AttributeUsage(AttributeTargets.Property)]
internal abstract class ListOfAttribute : ManyOfAttribute
{
    /// <summary>The list, of items in their order.</summary>
    public abstract object Made(IEnumerable<object?> items);
}

/// <summary>Marks an object whose members are names of the user's own.</summary>
/// <typeparam name="T">What stands under each name.</typeparam>
[AttributeUsage(AttributeTargets.Property)]
internal sealed class MapOfAttribute<T> : MapOfAttribute
{
    public override Type ItemType => typeof(T);

    public override object Made(IEnumerable<KeyValuePair<string, object?>> items) =>
        items.ToImmutableSortedDictionary(i => i.Key, i => (T)i.Value!, StringComparer.Ordinal);
}

/// <summary>A map from names to something.</summary>
[AttributeUsage(AttributeTargets.Property)]
internal abstract class MapOfAttribute : ManyOfAttribute
{
    /// <summary>The map.</summary>
    public abstract object Made(IEnumerable<KeyValuePair<string, object?>> items);
}
