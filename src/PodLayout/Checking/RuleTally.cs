using PodLayout.Findings;

namespace PodLayout.Checking;

/// <summary>Collects the figures of one rule: the worst of all, and the worst breach of each pod.</summary>
internal sealed class RuleTally(CheckedRule rule, Measure measure, double tolerance)
{
    private readonly SortedDictionary<(int, int), (double Spare, Finding Breach)> _breaches = [];
    private double _leastSpare = double.PositiveInfinity;
    private double? _worst;
    private double? _needed;
    private string _where = "";

    /// <summary>One figure.</summary>
    /// <param name="found">What is.</param>
    /// <param name="needed">What is needed or allowed.</param>
    /// <param name="where">Whose figure it is.</param>
    /// <param name="about">Pods it is about: of several breaches of the same pods only the worst is told.</param>
    /// <param name="breach">What to say when the rule is broken: what was found, and what mends it.</param>
    public void Add(double found, double needed, string where, (int, int) about, Func<(string Message, string Remedy)> breach)
    {
        var spare = measure is Measure.LeastMm or Measure.LeastCount or Measure.LeastFactor ? found - needed : needed - found;
        if (spare < _leastSpare || _worst is null)
        {
            (_leastSpare, _worst, _needed, _where) = (spare, found, needed, where);
        }

        if (spare >= -tolerance || (_breaches.TryGetValue(about, out var known) && known.Spare <= spare))
        {
            return;
        }

        var (message, remedy) = breach();
        _breaches[about] = (spare, new(CheckWords.Code(rule), Severity.Refused, FindingKind.BrokenRule, message, null, remedy));
    }

    /// <summary>What became of the rule.</summary>
    /// <param name="otherwise">What to say when no figure was added.</param>
    public RuleCheck Done(string otherwise) => new(
        rule, measure, _worst, _needed, _worst is null ? otherwise : _where, [.. _breaches.Values.Select(b => b.Breach)])
    {
        Pods = [.. Pods()],
    };

    // Which of the numbers that a breach is about are those of pods.
    private IEnumerable<int> Pods() => rule switch
    {
        CheckedRule.PodsApart => _breaches.Keys.SelectMany(k => new[] { k.Item1, k.Item2 }).Distinct().Order(),
        CheckedRule.SealInSoundWood or CheckedRule.BodyClearOfCuts or CheckedRule.OnTheLattice or CheckedRule.InsideUsableArea
            or CheckedRule.ClearOfObstacles or CheckedRule.EnoughPorts or CheckedRule.PortsWork or CheckedRule.PortsInsideSeal
            or CheckedRule.NoOpenPortUnderSeal or CheckedRule.QuarterTurn or CheckedRule.OneHeight => _breaches.Keys.Select(k => k.Item1).Distinct(),
        _ => [],
    };
}
