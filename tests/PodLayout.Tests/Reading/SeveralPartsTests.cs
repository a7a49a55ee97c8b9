using PodLayout.Findings;
using PodLayout.Parts;
using static PodLayout.Tests.Reading.Drawings;

namespace PodLayout.Tests.Reading;

public class SeveralPartsTests
{
    private static readonly string Three = Dxf(Rectangle(0, 0, 200, 100) + Circle(50, 50, 10) + Circle(400, 50, 50, "B") + Rectangle(500, 0, 90, 40));

    private static LayerRoles Numbered(int number) => LayerRoles.ByShape with { Part = number };

    [Fact]
    public void Several_parts_are_listed_with_number_size_and_place()
    {
        var refusal = Part(Three).Refusal!;
        Assert.Equal("parts-several", refusal.Code);
        // Chords of a circle miss its lowest point by up to 0.01 mm.
        Assert.Matches("holds 3 parts: part 1 of 200 x 100 mm from \\(0, 0\\) on layer 0 with 1 hole; part 2 of (100|99.9\\d) x (100|99.9\\d) mm from \\(350, 0\\) on layer B; part 3 of 90 x 40 mm from \\(500, 0\\) on layer 0\\.", refusal.Message);
        Assert.Contains("--part NUMBER", refusal.Remedy);
    }

    [Theory]
    [InlineData(1, 20000 - 100 * Math.PI, 1)]
    [InlineData(2, 2500 * Math.PI, 0)]
    [InlineData(3, 3600, 0)]
    public void A_part_is_taken_by_its_number(int number, double area, int holes)
    {
        var shape = Shape(Three, roles: Numbered(number));
        Assert.Equal(holes, shape.Holes.Length);
        Assert.Equal(area, shape.AreaMm2, 4.0);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(4)]
    public void A_number_that_no_part_has_is_refused_with_the_list(int number)
    {
        var refusal = Part(Three, roles: Numbered(number)).Refusal!;
        Assert.Equal("part-missing", refusal.Code);
        Assert.Contains("part 3 of 90 x 40 mm", refusal.Message);
    }

    [Fact]
    public void A_part_that_lies_in_the_hole_of_another_has_its_own_number()
    {
        var text = Dxf(Rectangle(0, 0, 400, 300) + Rectangle(50, 50, 300, 200) + Rectangle(60, 60, 200, 100));
        Assert.Equal("ring-nested", Part(text).Refusal!.Code);
        Assert.Equal(120000 - 60000, Shape(text, roles: Numbered(1)).AreaMm2, 1e-6);
        Assert.Equal(20000, Shape(text, roles: Numbered(2)).AreaMm2, 1e-6);
    }

    [Fact]
    public void Small_signs_on_another_layer_beside_the_part_are_left_out_with_a_warning()
    {
        var outcome = Part(Dxf(Rectangle(0, 0, 200, 100) + Circle(260, 50, 4, "MARKS")));
        Assert.True(outcome.Succeeded);
        Assert.Contains(outcome.Findings, f => f is { Code: "ring-outside", Severity: Severity.Warning });
        Assert.Equal("parts-several", Part(Dxf(Rectangle(0, 0, 200, 100) + Circle(260, 50, 4))).Refusal!.Code);
    }

    [Fact]
    public void What_is_wrong_with_another_part_does_not_matter_to_the_one_that_is_asked_for()
    {
        var bowTie = Closed("0", (300, 0), (400, 100), (400, 0), (300, 100));
        Assert.Equal(20000, Shape(Dxf(Rectangle(0, 0, 200, 100) + bowTie), roles: Numbered(1)).AreaMm2, 1e-6);
    }
}
