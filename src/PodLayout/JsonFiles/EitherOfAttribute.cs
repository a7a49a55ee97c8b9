namespace PodLayout.JsonFiles;

/// <summary>A value that may be written in several forms, told apart by the kind of JSON value.</summary>
/// <param name="forms">Types derived from the one that carries the attribute; at most one is written as an object.</param>
[AttributeUsage(AttributeTargets.Class)]
internal sealed class EitherOfAttribute(params Type[] forms) : Attribute
{
    public IReadOnlyList<Type> Forms { get; } = forms;
}

/// <summary>Marks a form whose only property is written as a bare value instead of as an object.</summary>
[AttributeUsage(AttributeTargets.Class)]
internal sealed class BareAttribute : Attribute;

/// <summary>Marks a member that may be null, and what null means.</summary>
/// <param name="meaning">In words.</param>
[AttributeUsage(AttributeTargets.Property)]
internal sealed class NullMeansAttribute(string meaning) : Attribute
{
    public string Meaning { get; } = meaning;
}

/// <summary>Marks an array that may have at most this many items.</summary>
/// <param name="count">How many.</param>
[AttributeUsage(AttributeTargets.Property)]
internal sealed class AtMostAttribute(int count) : Attribute
{
    /// <summary>Of an array that says nothing else: more are written by no person, and whoever lets them be written errs.</summary>
    public const int Usual = 10_000;

    public int Count { get; } = count;
}

/// <summary>Marks an array that needs at least this many items.</summary>
/// <param name="count">How many.</param>
[AttributeUsage(AttributeTargets.Property)]
internal sealed class AtLeastAttribute(int count) : Attribute
{
    public int Count { get; } = count;
}

/// <summary>Marks a text that may have at most this many characters.</summary>
/// <param name="count">How many.</param>
[AttributeUsage(AttributeTargets.Property)]
internal sealed class LongestTextAttribute(int count) : Attribute
{
    /// <summary>Of a text that says nothing else: names stand in tables and on pictures.</summary>
    public const int Usual = 1000;

    /// <summary>Of a remark, which stands nowhere.</summary>
    public const int Remark = 10_000;

    public int Count { get; } = count;
}
