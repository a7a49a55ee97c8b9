using static PodLayout.Tests.Reading.Drawings;

namespace PodLayout.Tests.Reading;

/// <summary>Entities (XML 1.0, fifth edition, sections 4.1 to 4.5) and the names of layers.</summary>
public class SvgDocumentTests
{
    private static string Of(string subset, string inner, string id = "") =>
        $"<?xml version='1.0'?><!DOCTYPE svg {id}[{subset}]><svg xmlns='http://www.w3.org/2000/svg' width='90mm' height='90mm' viewBox='0 0 90 90'>{inner}</svg>";

    [Theory]
    [InlineData("<!ENTITY w '50'>", "<rect width='&w;' height='40'/>")]
    [InlineData("<!ENTITY a '5'><!ENTITY b '&a;0'>", "<rect width='&b;' height='40'/>")]
    [InlineData("<!ENTITY st0 'fill:none;'><!ENTITY st1 'fill:#000;'>", "<circle style='&st0;' r='80'/><rect style='&st1;' width='50' height='40'/>")]
    [InlineData("<!ENTITY part \"<rect width='50' height='40'/>\">", "&part;")]
    [InlineData("<!ATTLIST svg a CDATA #IMPLIED><!ENTITY unused SYSTEM 'http://example.org/a'>", "<rect width='50' height='40'/>")]
    public void Entities_that_the_file_declares_itself_are_read(string subset, string inner) =>
        Assert.Equal(2000, Shape(Of(subset, inner)).AreaMm2, 1e-6);

    [Fact]
    public void A_document_type_elsewhere_is_not_fetched() => Assert.True(Read(
        "<!DOCTYPE svg PUBLIC '-//W3C//DTD SVG 1.1//EN' 'http://www.w3.org/Graphics/SVG/1.1/DTD/svg11.dtd'><svg width='90mm' height='90mm'><rect width='5' height='5'/></svg>").Succeeded);

    [Theory]
    [InlineData("<!ENTITY x SYSTEM 'file:///etc/hostname'>", "<text>&x;</text><rect width='5' height='5'/>")]
    [InlineData("<!ENTITY x PUBLIC 'p' 'http://example.org/x'>", "<rect width='5' height='5'/>&x;")]
    [InlineData("<!ENTITY % x SYSTEM 'http://example.org/x.dtd'> %x;", "<rect width='5' height='5'/>")]
    public void An_entity_in_another_file_is_never_fetched_and_refused_by_its_name(string subset, string inner)
    {
        var refusal = Part(Of(subset, inner)).Refusal!;
        Assert.Equal("svg-entity", refusal.Code);
        Assert.Contains("\"x\"", refusal.Message);
    }

    [Fact]
    public void Entities_that_grow_without_end_are_refused()
    {
        var deep = "<!ENTITY a0 'ha'>" + string.Concat(Enumerable.Range(1, 30).Select(i => $"<!ENTITY a{i} '&a{i - 1};&a{i - 1};&a{i - 1};'>"));
        var wide = $"<!ENTITY a '{new string('x', 60_000)}'>";
        Assert.Equal("svg-entity", Part(Of(deep, "<text>&a30;</text>")).Refusal!.Code);
        Assert.Equal("svg-damaged", Part(Of(wide, "<text>" + string.Concat(Enumerable.Repeat("&a;", 400)) + "</text><rect width='5' height='5'/>")).Refusal!.Code);
        Assert.Equal("svg-entity", Part(Of("<!ENTITY a '&b;'><!ENTITY b '&a;'>", "<text>&a;</text><rect width='5' height='5'/>")).Refusal!.Code);
    }

    [Fact]
    public void Prefixes_that_a_program_forgot_to_declare_are_known() => Assert.True(Read(
        "<svg width='90mm' height='90mm'><g inkscape:label='CUT'><rect width='5' height='5' xlink:title='a'/></g></svg>").Succeeded);

    [Theory]
    [InlineData("<g id='CUT'><g><rect width='9' height='9'/></g></g>", "CUT")]
    [InlineData("<g id='layer1' inkscape:label='Outline' inkscape:groupmode='layer'><rect width='9' height='9'/></g>", "Outline")]
    [InlineData("<g id='layer1' inkscape:label='Outline' inkscape:groupmode='layer'><g id='bore' inkscape:label='old'><rect width='9' height='9'/></g></g>", "Outline")]
    [InlineData("<g inkscape:label='A' inkscape:groupmode='layer'><g inkscape:label='B' inkscape:groupmode='layer'><rect width='9' height='9'/></g></g>", "B")]
    [InlineData("<g id='OUTLINE'><g id='g1234'><rect width='9' height='9'/></g></g>", "OUTLINE")]
    [InlineData("<g id='g1234'><rect width='9' height='9'/></g>", "g1234")]
    [InlineData("<g id='layer1'><g id='holes'><rect width='9' height='9'/></g></g>", "holes")]
    [InlineData("<g id='Layer_x0020_1' data-name='Part, left'><rect width='9' height='9'/></g>", "Part, left")]
    [InlineData("<g id='Cut_x0020_line'><rect width='9' height='9'/></g>", "Cut line")]
    [InlineData("<g class='bore big'><rect width='9' height='9'/></g>", "bore")]
    public void A_layer_has_the_name_that_its_author_sees(string inner, string layer) => Assert.Equal(
        layer, Assert.Single(Read($"<svg xmlns='http://www.w3.org/2000/svg' xmlns:inkscape='http://www.inkscape.org/namespaces/inkscape' width='90mm' height='90mm'>{inner}</svg>").Value!.Rings).Layer);
}
