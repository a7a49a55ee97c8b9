using PodLayout.Findings;
using PodLayout.Shops;
using PodLayout.Woods;

namespace PodLayout.Jobs;

/// <summary>What a job says of its wood and of how firmly its part is held, before the shop is read.</summary>
/// <param name="Wood">The wood.</param>
/// <param name="IsRough">Whether the underside is rough.</param>
/// <param name="TargetFactor">The factor to aim at; null for the shop's.</param>
/// <param name="LeastFactor">The least factor; null for the shop's.</param>
/// <param name="AcceptLessBecause">Why the least factor may be less than the shop's; null when it may not.</param>
/// <param name="Friction">Friction on this wood; null for the shop's.</param>
public sealed record HoldingRequest(
    Wood Wood, bool IsRough, double? TargetFactor, double? LeastFactor, string? AcceptLessBecause, double? Friction)
{
    /// <summary>Nothing is said.</summary>
    public static HoldingRequest None { get; } = new(Wood.Unknown(""), false, null, null, null, null);

    /// <summary>The shop by whose rules this job is held, and whose pods leak as its wood lets them.</summary>
    /// <param name="shop">The shop as it is.</param>
    /// <param name="file">The job file, for messages.</param>
    public Outcome<Shop> Applied(Shop shop, string file)
    {
        var rules = shop.Holding;
        var least = LeastFactor ?? rules.LeastFactor;
        if (least < rules.LeastFactor && AcceptLessBecause is null)
        {
            return Refuse("least-factor-lowered", "leastFactor", FormattableString.Invariant(
                $"found {least:0.###}, less than the shop's least factor of {rules.LeastFactor:0.###}."),
                "Take it out, or say in acceptLessBecause why this job may be held less firmly.");
        }

        var target = TargetFactor ?? Math.Max(rules.TargetFactor, least);
        if (target < least)
        {
            return Refuse("factors-crossed", "targetFactor", FormattableString.Invariant(
                $"found {target:0.###}, less than the least factor of {least:0.###}."),
                "Aim at no less than the least factor; to go below the shop's, say why in acceptLessBecause.");
        }

        var vacuum = shop.Vacuum;
        return Outcome<Shop>.Of(shop with
        {
            Holding = new(target, least, Friction ?? rules.Friction),
            Vacuum = vacuum with
            {
                Leak = new(IsRough ? vacuum.RoughSealLPerMinPerM : vacuum.Leak.SealLPerMinPerM, Wood.LeakLPerMinPerM2),
            },
        });

        Outcome<Shop> Refuse(string code, string member, string message, string remedy) => Outcome<Shop>.Refuse(
            new Finding(code, Severity.Refused, FindingKind.Request, message, new Place.InJson(file, "$.holding." + member), remedy));
    }
}
