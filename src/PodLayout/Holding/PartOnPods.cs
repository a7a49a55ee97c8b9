using System.Collections.Immutable;

namespace PodLayout.Holding;

/// <summary>A part on some pods, asked how far loads can grow: the lower of two figures, neither of which flatters.</summary>
/// <remarks>
/// <para>
/// A stiff part on stiff pods may be pressed on them in many ways that all balance, and a linear programme picks the way that holds
/// best: load then wanders from pod to pod as no real part lets it. Two figures bound what a part on real pods bears.
/// </para>
/// <para>
/// <b>By springs</b> (<see cref="SealSprings"/>): the seals are springs of so many newtons for each millimetre of their length and
/// each millimetre that they are pressed. They push and never pull. Vacuum and weight press the part on them, the cutter's force
/// changes that, and what comes out is what each pod bears. Friction is then at most the coefficient times that, in the worst
/// combination of slide and twist.
/// </para>
/// <para>
/// <b>By pulls</b> (<see cref="Equilibrium"/> with limits): pushes are shared as well as they can be, as on stiff pods, but the
/// friction of a pod is at most the coefficient times its own pull, however hard the part presses on it. This one is a linear
/// programme; its dual solution is a row that every layout must keep (<see cref="Weakness"/>), so that the search for the fewest
/// pods proves with it.
/// </para>
/// <para>The factor of a load is the lower of the two. Not for two threads at once.</para>
/// </remarks>
public sealed class PartOnPods
{
    private readonly Equilibrium _byPulls;
    private readonly SealSprings _bySprings;

    /// <summary>Prepares a part at rest.</summary>
    /// <param name="pods">Its pods.</param>
    /// <param name="weight">Its weight.</param>
    /// <param name="lengthMm">A length of the size of the part, for scaling.</param>
    /// <param name="besides">Spots without friction that it may lean on besides; what it gives way to hinders none of them.</param>
    public PartOnPods(ImmutableArray<HeldPod> pods, Wrench weight, double lengthMm, ImmutableArray<Contact> besides = default)
    {
        var resting = pods.Aggregate(weight, (sum, p) => sum + p.Pull);
        ImmutableArray<Contact> leaning = besides.IsDefault ? [] : besides;
        _byPulls = new(
            [.. pods.SelectMany(p => p.Contacts), .. leaning],
            resting,
            lengthMm,
            [.. pods.SelectMany((p, i) => Enumerable.Repeat(i, p.Grip.Spots.Length)), .. leaning.Select(_ => -1)],
            [.. pods.Select(p => p.Grip.Friction * p.PullN)]);
        _bySprings = new(pods, resting, lengthMm);
    }

    /// <summary>Whether the part rests without any load.</summary>
    public bool CanRest => _byPulls.CanRest && _bySprings.CanRest;

    /// <summary>How far a load can grow: the lower of the two figures.</summary>
    /// <param name="load">The load.</param>
    /// <param name="enough">When it can grow to at least this, the answer may be any such figure, without a motion.</param>
    public Limit Of(Wrench load, double enough = double.PositiveInfinity)
    {
        if (!CanRest)
        {
            return new(0, default);
        }

        if (!double.IsInfinity(enough) && _bySprings.SurelyBear(load, enough))
        {
            return new(enough, default);
        }

        var springs = _bySprings.Of(load, enough);
        var pulls = _byPulls.Of(load, Math.Min(enough, springs.Factor));
        // Where the springs tip the stiff part's motion is told: it tips too.
        return pulls.Factor <= springs.Factor ? pulls
            : springs.Motion != default || springs.Factor >= enough ? springs
            : new(springs.Factor, _byPulls.Of(load).Motion);
    }

    /// <summary>The figure by pulls alone, with the motion that makes a row.</summary>
    /// <param name="load">The load.</param>
    /// <param name="enough">As for <see cref="Of"/>.</param>
    public Limit ByPulls(Wrench load, double enough = double.PositiveInfinity) => !_byPulls.CanRest ? new(0, default)
        : !double.IsInfinity(enough) && _bySprings.SurelyBear(load, enough) ? new(enough, default) : _byPulls.Of(load, enough);

    /// <summary>The same without asking the springs first: for a part that leans on spots besides.</summary>
    public Limit ByPullsAlone(Wrench load, double enough) => _byPulls.Of(load, enough);

    /// <summary>The figure by springs alone.</summary>
    /// <param name="load">The load.</param>
    /// <param name="enough">As for <see cref="Of"/>.</param>
    public Limit BySprings(Wrench load, double enough = double.PositiveInfinity) =>
        !double.IsInfinity(enough) && _bySprings.SurelyBear(load, enough) ? new(enough, default) : _bySprings.Of(load, enough);

    /// <summary>The least factor of a load at which a corner of a seal bears nothing any more.</summary>
    public double Unloading(Wrench load) => _bySprings.Unloading(load);

    /// <summary>What the part presses on each pod with under a load as it is, by springs, N.</summary>
    public double[] Presses(Wrench load) => _bySprings.Presses(load);
}
