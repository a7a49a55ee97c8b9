using PodLayout.Woods;

namespace PodLayout.Tests.Woods;

public class WoodTableTests
{
    // Wood Handbook, FPL-GTR-282, chapter 4, equation 4-14 worked for red oak: 62.43 x 0.63 x 1.12 = 44.05 lb/ft3.
    [Fact]
    public void Red_oak_weighs_44_pounds_a_cubic_foot() =>
        Assert.Equal(44.05, WoodTable.Find("red oak")!.DensityKgPerM3 / 16.01846, 0.02);

    // Wood Handbook, tables 5-3 and 5-5: specific gravity and modulus at 12 %.
    [Theory]
    [InlineData("sugar maple", .63, 12.6)]
    [InlineData("northern red oak", .63, 12.5)]
    [InlineData("white oak", .68, 12.3)]
    [InlineData("black walnut", .55, 11.6)]
    [InlineData("black cherry", .50, 10.3)]
    [InlineData("white ash", .60, 12.0)]
    [InlineData("yellow birch", .62, 13.9)]
    [InlineData("yellow-poplar", .42, 10.9)]
    [InlineData("Douglas fir", .48, 13.4)]
    [InlineData("eastern white pine", .35, 8.55)]
    [InlineData("teak", .63, 11.0)]
    public void Rows_are_those_of_the_Wood_Handbook(string name, double gravity, double gPa)
    {
        var wood = WoodTable.Find(name)!;
        Assert.Equal((gravity, gPa, false), (wood.SpecificGravity.Value, wood.BendingGPa.Value, wood.SpecificGravity.IsFromMemory));
    }

    // Wood Handbook, chapter 5: a bending test's modulus grows by a tenth when the beam's shear is taken out.
    [Fact]
    public void Hard_maple_has_13860_MPa_along_the_grain() => Assert.Equal(13_860, WoodTable.Find("hard maple")!.AlongGrainMPa, 0.1);

    [Fact]
    public void Names_of_the_trade_are_known_in_any_case_and_with_or_without_hyphens()
    {
        Assert.Equal("black cherry", WoodTable.Find("Cherry")!.Name);
        Assert.Equal("yellow-poplar", WoodTable.Find("  yellow   POPLAR ")!.Name);
        Assert.Equal("MDF", WoodTable.Find("mdf")!.Name);
    }

    [Fact]
    public void No_name_stands_for_two_woods() => Assert.All(
        WoodTable.All.SelectMany(w => w.AlsoCalled.Prepend(w.Name).Select(n => (Name: n, Wood: w))), n => Assert.Same(n.Wood, WoodTable.Find(n.Name)));

    [Theory]
    [InlineData("maple", "hard maple", "red maple")]
    [InlineData("oak", "northern red oak", "white oak")]
    [InlineData("European oak", "northern red oak", "white oak")]
    [InlineData("sapelle mahogany", "true mahogany", "African mahogany")]
    [InlineData("hrad maple", "hard maple", "red maple")]
    [InlineData("wallnut", "black walnut")]
    [InlineData("teek", "teak")]
    public void A_name_that_could_be_several_woods_or_none_is_not_guessed_but_the_nearest_are_named(string name, params string[] near)
    {
        Assert.Null(WoodTable.Find(name));
        Assert.Equal(near, WoodTable.Near(name));
    }

    [Fact]
    public void An_unknown_wood_is_light_where_weight_holds_and_heavy_where_it_is_cut()
    {
        var unknown = Wood.Unknown("lignum");
        Assert.All(WoodTable.All, w => Assert.True(w.DensityKgPerM3 < unknown.CutKgPerM3));
        Assert.True(unknown.WeightKgPerM3 <= WoodTable.All.Select(w => w.DensityKgPerM3).Order().ElementAt(1));
    }
}
