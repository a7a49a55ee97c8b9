using System.Collections.Immutable;
using PodLayout.Layouts;

namespace PodLayout.Checking;

/// <summary>A layout held against every rule.</summary>
/// <param name="Rules">All rules, in the order of <see cref="CheckedRule"/>.</param>
public sealed record LayoutReport(ImmutableArray<RuleCheck> Rules)
{
    /// <summary>Whether every rule holds.</summary>
    public bool AllHold => Rules.All(r => r.Holds);

    /// <summary>Whether points stay unsupported that the plan left so.</summary>
    public bool LeavesUnsupported => Rules.Any(r => r.Warnings.Any(w => w.Code == UnsupportedFindings.Code));

    /// <summary>One rule.</summary>
    public RuleCheck this[CheckedRule rule] => Rules.Single(r => r.Rule == rule);
}
