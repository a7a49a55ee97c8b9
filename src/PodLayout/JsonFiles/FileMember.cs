using System.Collections.Immutable;
using System.ComponentModel;
using System.Reflection;
using System.Runtime.CompilerServices;

namespace PodLayout.JsonFiles;

/// <summary>One member of a JSON object, read off the property it is bound to.</summary>
internal sealed record FileMember(
    PropertyInfo Property,
    string Name,
    bool Required,
    string Says,
    BoundsAttribute Bounds,
    string? NullMeans,
    int AtLeast)
{
    private static readonly System.Collections.Concurrent.ConcurrentDictionary<Type, ImmutableArray<FileMember>> Known = new();

    /// <summary>The type of the value, without the mark that it may be absent.</summary>
    public Type Type => Nullable.GetUnderlyingType(Property.PropertyType) ?? Property.PropertyType;

    /// <summary>The members of a type, in the order in which they are declared.</summary>
    public static ImmutableArray<FileMember> Of(Type type) => Known.GetOrAdd(type, t =>
        [.. t.GetProperties(BindingFlags.Public | BindingFlags.Instance)
            .Where(p => p.SetMethod is not null)
            .OrderBy(p => p.MetadataToken)
            .Select(Of)]);

    private static FileMember Of(PropertyInfo property) => new(
        property,
        JsonWords.MemberName(property.Name),
        property.IsDefined(typeof(RequiredMemberAttribute), false),
        property.GetCustomAttribute<DescriptionAttribute>()?.Description
            ?? throw new InvalidOperationException($"{property.DeclaringType?.Name}.{property.Name} has no description."),
        property.GetCustomAttribute<BoundsAttribute>() ?? BoundsAttribute.Widest,
        property.GetCustomAttribute<NullMeansAttribute>()?.Meaning,
        property.GetCustomAttribute<AtLeastAttribute>()?.Count ?? 0);
}
