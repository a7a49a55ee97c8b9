using PodLayout.Jobs.Written;
using PodLayout.Shops.Written;

namespace PodLayout.Tests.Jobs;

public class SampleJobsTests
{
    [Theory]
    [InlineData("kidney-table")]
    [InlineData("u-yoke")]
    [InlineData("crest-rail")]
    [InlineData("chair-seat")]
    public void A_sample_job_and_its_shop_are_read_without_a_finding(string sample)
    {
        var file = Repository.Path("samples", sample, "job.json");
        var job = JobReading.Read(file, File.ReadAllBytes(file), []);
        Assert.True(job.Succeeded);
        Assert.Empty(job.Findings);
        var shopFile = Path.Combine(Path.GetDirectoryName(file)!, job.Value.ShopPath!);
        Assert.Empty(ShopReading.Read(shopFile, File.ReadAllBytes(shopFile)).Findings);
    }
}
