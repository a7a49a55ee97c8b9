using System.Text;
using PodLayout.Jobs;
using PodLayout.Shops.Written;
using PodLayout.Tests.Independent;
using PodLayout.Tests.Shops;

namespace PodLayout.Tests.Placing;

public class PodHeightsTests
{
    [Fact]
    public void A_layout_never_mixes_heights_and_uses_the_height_that_takes_fewest_pods()
    {
        var random = new Random(52);
        var (low, high) = (0, 0);
        for (var i = 0; i < 10; i++)
        {
            var shape = new PodLayout.Parts.PartShape(
                Shapes.Wavy(150 + (100 * random.NextDouble()), 0.5 + (0.4 * random.NextDouble()), [(2, 0.2, random.NextDouble()), (3, 0.12, 2)], 60), [], []);
            var lowPods = new[] { Shapes.Pod(120, 120), Shapes.Pod(60, 60) };
            var highPods = new[] { Shapes.Pod(150, 90, mayTurn: true) with { HeightMm = 80 }, Shapes.Pod(120, 60, mayTurn: true) with { HeightMm = 80 } };
            Job With(IEnumerable<PodLayout.Shops.PodType> pods) => Shapes.JobFor(
                shape, Shapes.Board(900, 900, 60), pods, 70, placement: new PlacementWish.Given(new(450, 450), 10 * i));
            var mixed = PlannedLayoutsTests.Plan(With([lowPods[0], highPods[0], lowPods[1], highPods[1]]));
            int?[] alone = [PlannedLayoutsTests.Plan(With(lowPods)).Layout?.Pods.Length, PlannedLayoutsTests.Plan(With(highPods)).Layout?.Pods.Length];
            Assert.Equal(alone.Min(), mixed.Layout?.Pods.Length);
            if (mixed.Layout is { } layout)
            {
                Assert.Single(layout.Pods.Select(p => p.Type.HeightMm).Distinct());
                Assert.Empty(LayoutChecker.Check(mixed).Violations);
                (low, high) = layout.Pods[0].Type.HeightMm < 60 ? (low + 1, high) : (low, high + 1);
            }
        }

        Assert.True(low > 0 && high > 0, $"{low} low, {high} high");
    }

    [Fact]
    public void A_shop_file_may_list_pods_of_several_heights()
    {
        var text = ShopReadingTests.Change(Encoding.UTF8.GetString(ShopReading.DefaultText()), "pods[2].heightMm", "80");
        var pods = ShopReading.Read("shop.json", Encoding.UTF8.GetBytes(text)).Value!.Pods;
        Assert.Equal(80, pods[2].HeightMm);
        Assert.NotEqual(80, pods[0].HeightMm);
    }

    [Fact]
    public void Heights_that_differ_by_less_than_contact_count_as_one()
    {
        var height = ShopReading.Default().Pods[0].HeightMm;
        var text = ShopReadingTests.Change(Encoding.UTF8.GetString(ShopReading.DefaultText()), "pods[2].heightMm", System.FormattableString.Invariant($"{height + 0.005}"));
        var pods = ShopReading.Read("shop.json", Encoding.UTF8.GetBytes(text)).Value!.Pods;
        Assert.Equal(height, pods[2].HeightMm);
    }
}
