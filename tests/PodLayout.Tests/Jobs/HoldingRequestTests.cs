using System.Text;
using PodLayout.Findings;
using PodLayout.Jobs;
using PodLayout.Jobs.Written;
using PodLayout.Parts;
using PodLayout.Shops;
using PodLayout.Shops.Written;
using PodLayout.Tests.Shops;

namespace PodLayout.Tests.Jobs;

public class HoldingRequestTests
{
    [Fact]
    public void The_shop_s_rules_hold_where_the_job_says_nothing()
    {
        var job = Job("").Value!;
        Assert.Equal((new HoldingRules(2, 1.5, 0.4), new HoldingWish(1.5, null)), (job.Shop.Holding, job.Holding));
    }

    [Fact]
    public void A_job_may_aim_higher_or_down_to_the_least_factor()
    {
        Assert.Equal(3, Job("\"holding\":{\"targetFactor\":3}").Value!.Shop.Holding.TargetFactor);
        Assert.Equal(1.5, Job("\"holding\":{\"targetFactor\":1.5,\"friction\":0.6}").Value!.Shop.Holding.TargetFactor);
        Assert.Equal("job.json $.holding.targetFactor", Job("\"holding\":{\"targetFactor\":1.4}").Refusal!.Place?.ToString());
    }

    [Fact]
    public void The_least_factor_goes_below_the_shop_s_only_with_a_reason_which_is_handed_on()
    {
        var refusal = Job("\"holding\":{\"leastFactor\":1.2}").Refusal!;
        Assert.Equal(("least-factor-lowered", "job.json $.holding.leastFactor"), (refusal.Code, refusal.Place?.ToString()));
        var job = Job("\"holding\":{\"leastFactor\":1.2,\"acceptLessBecause\":\"screwed to the board\"}").Value!;
        Assert.Equal((1.2, new HoldingWish(1.5, "screwed to the board")), (job.Shop.Holding.LeastFactor, job.Holding));
        // A reason without a figure lowers nothing.
        Assert.Equal(1.5, Job("\"holding\":{\"acceptLessBecause\":\"foam\"}").Value!.Shop.Holding.LeastFactor);
        // A reason that nothing is lowered for is not printed.
        Assert.Null(Job("\"holding\":{\"leastFactor\":1.8,\"acceptLessBecause\":\"none\"}").Value!.Holding.AcceptLessBecause);
    }

    [Fact]
    public void A_wood_of_the_table_is_taken_by_its_name()
    {
        var part = Job("\"species\":\"Hard Maple\"").Value!.Part;
        Assert.Equal((705.6, 705.6), (part.DensityKgPerM3, part.Wood.CutKgPerM3), Near);
    }

    [Fact]
    public void A_wood_that_could_be_several_is_warned_about_and_reckoned_with_on_both_sides()
    {
        var outcome = Job("\"species\":\"maple\"");
        var warning = outcome.Findings.Single(f => f.Code == "species-unknown");
        Assert.Equal((Severity.Warning, "job.json $.species"), (warning.Severity, warning.Place?.ToString()));
        Assert.Contains("\"hard maple\" or \"red maple\"", warning.Remedy, StringComparison.Ordinal);
        Assert.Equal((400, 900), (outcome.Value!.Part.DensityKgPerM3, outcome.Value.Part.Wood.CutKgPerM3), Near);
    }

    [Fact]
    public void The_job_s_own_density_goes_before_the_table_and_needs_no_known_name()
    {
        var outcome = Job("\"species\":\"bog oak\",\"wood\":{\"densityKgPerM3\":950}");
        Assert.DoesNotContain(outcome.Findings, f => f.Code == "species-unknown");
        Assert.Equal((950, 950), (outcome.Value!.Part.DensityKgPerM3, outcome.Value.Part.Wood.CutKgPerM3), Near);
    }

    [Fact]
    public void A_rough_underside_and_a_porous_wood_leak_more()
    {
        var (tight, rough) = (Job("\"species\":\"cherry\"").Value!.Shop.Vacuum.Leak, Job("\"species\":\"MDF\",\"underside\":\"rough\"").Value!.Shop.Vacuum.Leak);
        Assert.Equal((1, 8), (tight.SealLPerMinPerM, rough.SealLPerMinPerM), Near);
        Assert.True(rough.WoodLPerMinPerM2 > 10 * tight.WoodLPerMinPerM2);
    }

    [Fact]
    public void A_pump_s_figures_are_brought_to_the_altitude_of_the_shop()
    {
        // 85 kPa and 100 m3/h at the inlet; at 89.8763 kPa (1000 m, ISO 2533) both shrink by 0.887.
        var shop = Shop("""{"altitudeM":1000,"pump":{"ultimateKPa":85,"nominalM3PerHour":100}}""");
        var curve = Assert.IsType<VacuumSource.Pump>(shop.Vacuum.Source).Curve;
        Assert.Equal((85 * 0.88701, 0), (curve[^1].VacuumKPa, curve[^1].FreeAirM3PerHour), Near);
        Assert.Equal(100 * 85 / 101.325 * 0.88701, curve[0].FreeAirM3PerHour, 0.01);
        // 60 cfm of free air are 101.94 m3/h; 20 inHg are 67.73 kPa (NIST SP 811).
        var points = Shop("""{"pump":{"flow":[{"vacuumInHg":0,"flowCfm":60},{"vacuumInHg":20,"flowCfm":0}]}}""");
        var read = Assert.IsType<VacuumSource.Pump>(points.Vacuum.Source).Curve;
        Assert.Equal((101.94, 67.73), (read[0].FreeAirM3PerHour, read[1].VacuumKPa), Near);
    }

    private static readonly IEqualityComparer<(double, double)> Near =
        EqualityComparer<(double A, double B)>.Create((a, b) => Math.Abs(a.A - b.A) < 0.05 && Math.Abs(a.B - b.B) < 0.05);

    private static Shop Shop(string vacuum) => ShopReading.Read(
        "shop.json", Encoding.UTF8.GetBytes(ShopReadingTests.Change(Encoding.UTF8.GetString(ShopReading.DefaultText()), "vacuum", vacuum))).Value!;

    private static Outcome<Job> Job(string members) => JobReading.Read(
        "job.json",
        Encoding.UTF8.GetBytes($$"""{"version":1,"drawing":"part.dxf","thicknessMm":30{{(members.Length > 0 ? "," : "")}}{{members}}}"""),
        []).Then(r => r.With(new PartShape(PodLayout.Tests.Shapes.Rectangle(0, 0, 300, 200), [], []), ShopReading.Default()));
}
