using System.Collections.Immutable;
using System.ComponentModel;
using System.Reflection;
using System.Runtime.CompilerServices;
using System.Text.RegularExpressions;

namespace PodLayout.JsonFiles;

/// <summary>One member of a JSON object, read off the property it is bound to.</summary>
internal sealed partial record FileMember(
    PropertyInfo Property,
    string Name,
    bool Required,
    string Says,
    BoundsAttribute Bounds,
    string? NullMeans,
    int AtLeast,
    int AtMost,
    ManyOfAttribute? Many,
    double MmPerUnit = 1)
{
    private const double MmPerInch = 25.4;

    private static readonly System.Collections.Concurrent.ConcurrentDictionary<Type, ImmutableArray<FileMember>> Known = new();
    private static readonly System.Collections.Concurrent.ConcurrentDictionary<PropertyInfo, FileMember?> KnownInInches = new();

    /// <summary>Characters of a text.</summary>
    public int LongestText => Property.GetCustomAttribute<LongestTextAttribute>()?.Count ?? LongestTextAttribute.Usual;

    /// <summary>The type of the value, without the mark that it may be absent.</summary>
    public Type Type => Nullable.GetUnderlyingType(Property.PropertyType) ?? Property.PropertyType;

    /// <summary>The members of a type, in the order in which they are declared.</summary>
    public static ImmutableArray<FileMember> Of(Type type) => Known.GetOrAdd(type, t => [.. FileForm.Properties(t).Select(Of)]);

    /// <summary>The same member given in inches; null where there is none.</summary>
    public FileMember? InInches() => KnownInInches.GetOrAdd(Property, _ =>
        MmEnd().IsMatch(Name) && Property.DeclaringType!.IsDefined(typeof(InchesTooAttribute), false)
            ? WithUnit(MmPerInch) with { Name = MmEnd().Replace(Name, "In") }
            : null);

    /// <summary>The same member in another unit.</summary>
    public FileMember WithUnit(double mmPerUnit) => mmPerUnit == MmPerUnit ? this : this with
    {
        MmPerUnit = mmPerUnit,
        Says = MmWord().Replace(Says, "inches"),
        Bounds = new() { Over = Bounds.Over / mmPerUnit, From = Bounds.From / mmPerUnit, To = Bounds.To / mmPerUnit },
    };

    [GeneratedRegex("Mm(?=$|PerMin$)")]
    private static partial Regex MmEnd();

    [GeneratedRegex(@"\bmm\b")]
    private static partial Regex MmWord();

    private static FileMember Of(PropertyInfo property) => new(
        property,
        JsonWords.MemberName(property.Name),
        property.IsDefined(typeof(RequiredMemberAttribute), false),
        property.GetCustomAttribute<DescriptionAttribute>()?.Description
            ?? throw new InvalidOperationException($"{property.DeclaringType?.Name}.{property.Name} has no description."),
        property.GetCustomAttribute<BoundsAttribute>() ?? BoundsAttribute.Widest,
        property.GetCustomAttribute<NullMeansAttribute>()?.Meaning,
        property.GetCustomAttribute<AtLeastAttribute>()?.Count ?? 0,
        property.GetCustomAttribute<AtMostAttribute>()?.Count ?? AtMostAttribute.Usual,
        property.GetCustomAttribute<ManyOfAttribute>());
}
