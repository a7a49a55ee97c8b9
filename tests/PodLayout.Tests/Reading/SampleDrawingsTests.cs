namespace PodLayout.Tests.Reading;

public class SampleDrawingsTests
{
    [Theory]
    [InlineData("kidney-table", 1000, 600, 1)]
    [InlineData("u-yoke", 700, 500, 0)]
    [InlineData("crest-rail", 520, 125, 0)]
    [InlineData("chair-seat", 17.5 * 25.4, 16.5 * 25.4, 0)]
    public void A_sample_becomes_a_part_of_about_its_stated_size_without_a_warning(string name, double width, double height, int holes)
    {
        var outcome = Drawings.Part(File.ReadAllBytes(Drawings.Sample(name)));
        Assert.True(outcome.Succeeded, string.Join('\n', outcome.Findings));
        Assert.Empty(outcome.Findings);
        Assert.Equal(holes, outcome.Value.Holes.Length);
        Assert.InRange(outcome.Value.Outline.Bounds.Width, width * 0.95, width * 1.05);
        Assert.InRange(outcome.Value.Outline.Bounds.Height, height * 0.9, height * 1.1);
    }
}
