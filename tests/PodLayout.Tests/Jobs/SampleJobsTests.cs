using PodLayout.Jobs.Written;
using PodLayout.Parts;
using PodLayout.Reading;
using PodLayout.Shops.Written;

namespace PodLayout.Tests.Jobs;

public class SampleJobsTests
{
    [Theory]
    [InlineData("kidney-table")]
    [InlineData("u-yoke")]
    [InlineData("crest-rail")]
    [InlineData("chair-seat")]
    [InlineData("tray")]
    [InlineData("wash-stand")]
    public void A_sample_job_with_its_shop_and_drawing_is_read_without_a_finding(string sample)
    {
        var file = Repository.Path("samples", sample, "job.json");
        var job = JobReading.Read(file, File.ReadAllBytes(file), []);
        Assert.True(job.Succeeded);
        Assert.Empty(job.Findings);
        var shopFile = Path.Combine(Path.GetDirectoryName(file)!, job.Value.ShopPath!);
        Assert.Empty(ShopReading.Read(shopFile, File.ReadAllBytes(shopFile)).Findings);
        var drawing = Path.Combine(Path.GetDirectoryName(file)!, job.Value.DrawingPath);
        var shape = DrawingReader.Read(drawing, File.ReadAllBytes(drawing), job.Value.Reading)
            .Then(d => PartShaping.From(d, job.Value.Layers));
        Assert.True(shape.Succeeded);
        Assert.Empty(shape.Findings);
    }
}
