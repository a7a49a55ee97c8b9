using PodLayout.Reading;
using static PodLayout.Tests.Reading.Drawings;

namespace PodLayout.Tests.Reading;

public class SvgTests
{
    private static string Mm(string inner) => $"<svg xmlns='http://www.w3.org/2000/svg' width='400mm' height='300mm' viewBox='0 0 400 300'>{inner}</svg>";

    /// <summary>Area by formula; 9760 by numerical integration of the Bézier polynomials outside the program.</summary>
    [Theory]
    [InlineData("<rect x='10' y='10' width='200' height='100'/>", 20000)]
    [InlineData("<rect x='10' y='10' width='200' height='100' rx='20'/>", 20000 - (4 - Math.PI) * 400)]
    [InlineData("<rect x='10' y='10' width='200' height='100' rx='20' ry='500'/>", 20000 - (4 - Math.PI) * 20 * 50)]
    [InlineData("<circle cx='200' cy='150' r='100'/>", Math.PI * 10000)]
    [InlineData("<ellipse cx='200' cy='150' rx='100' ry='50'/>", Math.PI * 5000)]
    [InlineData("<polygon points='0,0 100,0 100,80'/>", 4000)]
    [InlineData("<polyline points='0 0 100 0 100 80 0 0'/>", 4000)]
    [InlineData("<path d='M10-5l100 0v80h-100z'/>", 8000)]
    [InlineData("<path d='m10 10h100V90H10Z'/>", 8000)]
    [InlineData("<path d='M0 0 100 0 100 80z'/>", 4000)]
    [InlineData("<path d='M100 50a50 50 0 1 1-1e-3 0z'/>", Math.PI * 2500)]
    [InlineData("<path d='M0 100A100 100 0 01200 100z'/>", Math.PI * 5000)]
    [InlineData("<path d='M0 100A10 10 0 01200 100z'/>", Math.PI * 5000)]
    [InlineData("<path d='M0 0Q60 90 120 0z'/>", 2.0 / 3 * 5400)]
    [InlineData("<path d='M0 0q30 60 60 0t60 0v-50h-120z'/>", 6000)]
    [InlineData("<path d='M0 0C40 0 80 40 80 80S40 160 0 160z'/>", 9760)]
    [InlineData("<g transform='rotate(30 5 5) scale(2,3) skewX(20)'><rect width='50' height='40'/></g>", 12000)]
    [InlineData("<g transform='translate(10)matrix(0 1-1 0 50 50)'><rect width='50' height='40'/></g>", 2000)]
    [InlineData("<defs><rect id='a' width='50' height='40'/></defs><use href='#a' x='20' transform='scale(2)'/>", 8000)]
    [InlineData("<symbol id='s' viewBox='0 0 10 10'><rect width='10' height='10'/></symbol><use href='#s' width='80' height='80'/>", 6400)]
    [InlineData("<svg x='5' y='5' width='100' height='50' viewBox='0 0 10 10'><rect width='10' height='10'/></svg>", 2500)]
    [InlineData("<rect width='50mm' height='1in'/>", 50 / (25.4 / 96) * 96)]
    [InlineData("<rect width='100' height='90'/><g visibility='hidden'><circle cx='50' cy='50' r='5'/></g><g style='display: none'><circle r='3'/></g>", 9000)]
    public void A_shape_has_the_area_that_the_standard_gives_it(string inner, double area)
    {
        var shape = Shape(Mm(inner), ReadingOptions.Default with { ChordToleranceMm = 1e-4 });
        Assert.Empty(shape.Holes);
        Assert.Equal(area, shape.AreaMm2, 0.1);
    }

    [Fact]
    public void Up_is_up_and_zero_is_the_lower_left_corner()
    {
        var box = Shape(Mm("<rect x='10' y='20' width='100' height='50'/>")).Outline.Bounds;
        Assert.Equal((10, 230, 110, 280), (Math.Round(box.MinX, 9), Math.Round(box.MinY, 9), Math.Round(box.MaxX, 9), Math.Round(box.MaxY, 9)));
    }

    [Theory]
    [InlineData("width='10in' height='5in' viewBox='0 0 100 50'", 2.54)]
    [InlineData("width='96' height='48'", 25.4 / 96)]
    [InlineData("width='72pt' height='36pt' viewBox='0 0 10 5'", 2.54)]
    [InlineData("width='10cm' viewBox='0 0 100 50'", 1)]
    [InlineData("width='100mm' height='400mm' viewBox='0 0 100 100'", 1)]
    public void The_unit_follows_from_size_and_view_box(string size, double mmPerUnit)
    {
        var drawing = Read($"<svg {size}><circle cx='5' cy='5' r='4'/></svg>").Value!;
        Assert.Equal(mmPerUnit, drawing.MmPerUnit, 12);
        Assert.Equal(8 * mmPerUnit, Assert.Single(drawing.Rings).Ring.Bounds.Width, 0.01);
    }

    [Fact]
    public void An_override_takes_a_unit_of_the_coordinates() => Assert.Equal(
        200 * 25.4 * 25.4, Shape("<svg viewBox='0 0 20 10'><rect width='20' height='10'/></svg>", ReadingOptions.Default with { UnitOverride = LengthUnit.Inch }).AreaMm2, 6);

    [Fact]
    public void Layers_are_the_ids_of_groups()
    {
        var rings = Read(Mm("<g id='CUT'><g><rect width='90' height='90'/></g></g><circle cx='20' cy='20' r='5'/><g class='bore big'><circle cx='50' cy='50' r='3'/></g>")).Value!.Rings;
        Assert.Equal(["CUT", "0", "bore"], rings.Select(r => r.Layer));
    }
}
