using PodLayout.Cuts;
using PodLayout.Findings;
using PodLayout.Jobs;
using PodLayout.Jobs.Written;
using PodLayout.Parts;
using PodLayout.Programs;
using PodLayout.Reading;
using PodLayout.Shops.Written;

namespace PodLayout.Tests.Cuts;

/// <summary>A job of the samples folder with its cuts, and what it was made of.</summary>
internal sealed record SampleJob(Job Job, IEnumerable<Finding> Findings, ToolPath? Path, CutRequest Cuts)
{
    public static string FileOf(string sample, string name) => Repository.Path("samples", sample, name);

    public static SampleJob Read(string sample, string file)
    {
        byte[] Bytes(string name) => File.ReadAllBytes(FileOf(sample, name));
        var request = JobReading.Read(file, Bytes(file), []).Value!;
        var shop = ShopReading.Read("shop.json", Bytes(System.IO.Path.Combine("..", "shop.json"))).Value!;
        var drawing = DrawingReader.Read("part.dxf", Bytes("part.dxf"), request.Reading).Value!;
        var shape = PartShaping.From(drawing, request.Layers).Value!;
        var path = request.Cuts.Program is { } program ? ProgramReading.Read("part.nc", Bytes("part.nc"), program.Options).Value : null;
        var job = Cutting.Apply(request.With(shape, shop).Value!, drawing, request.Cuts, path, file);
        Assert.True(job.Succeeded, job.Refusal?.ToString());
        return new(job.Value, job.Findings, path, request.Cuts);
    }
}
