using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;

namespace PodLayout.Findings;

/// <summary>What a step hands over: a value, or a refusal; and all that was found on the way.</summary>
/// <typeparam name="T">Type of the value.</typeparam>
public sealed class Outcome<T>
    where T : class
{
    private Outcome(T? value, ImmutableArray<Finding> findings)
    {
        Value = value;
        Findings = findings;
    }

    /// <summary>The value; null when the step refused.</summary>
    public T? Value { get; }

    /// <summary>All findings in the order in which they were made.</summary>
    public ImmutableArray<Finding> Findings { get; }

    /// <summary>Whether there is a value.</summary>
    [MemberNotNullWhen(true, nameof(Value))]
    public bool Succeeded => Value is not null;

    /// <summary>The first refusal; null when the step succeeded.</summary>
    public Finding? Refusal => Findings.FirstOrDefault(f => f.Severity == Severity.Refused);

    /// <summary>A value with the findings made on the way.</summary>
    public static Outcome<T> Of(T value, params IEnumerable<Finding> findings) => new(value, [.. findings]);

    /// <summary>A refusal; at least one finding must be of severity <see cref="Severity.Refused"/>.</summary>
    public static Outcome<T> Refuse(params IEnumerable<Finding> findings)
    {
        ImmutableArray<Finding> all = [.. findings];
        return all.Any(f => f.Severity == Severity.Refused)
            ? new(null, all)
            : throw new ArgumentException("A refusal needs a finding of severity Refused.", nameof(findings));
    }

    /// <summary>Goes on with the next step when this one succeeded; keeps all findings either way.</summary>
    public Outcome<TNext> Then<TNext>(Func<T, Outcome<TNext>> next)
        where TNext : class
    {
        if (!Succeeded)
        {
            return Outcome<TNext>.Refuse(Findings);
        }

        var outcome = next(Value);
        return outcome.Succeeded
            ? Outcome<TNext>.Of(outcome.Value, Findings.AddRange(outcome.Findings))
            : Outcome<TNext>.Refuse(Findings.AddRange(outcome.Findings));
    }
}
