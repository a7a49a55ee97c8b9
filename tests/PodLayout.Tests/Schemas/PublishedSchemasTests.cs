using System.Text.Json;
using Json.Schema;
using PodLayout.Handover;
using PodLayout.Schemas;
using PodLayout.Shops.Written;

namespace PodLayout.Tests.Schemas;

public class PublishedSchemasTests
{
    public static TheoryData<string> Samples() => [.. Directory.GetFiles(Repository.Path("samples"), "*.json", SearchOption.AllDirectories)
        .Select(f => Path.GetRelativePath(Repository.Root, f).Replace('\\', '/')).Order(StringComparer.Ordinal)];

    [Theory]
    [InlineData("shop")]
    [InlineData("job")]
    [InlineData("layout")]
    public void The_published_schema_says_what_the_types_say(string which)
    {
        var fresh = which switch
        {
            "shop" => PublishedSchemas.ShopFromTypes,
            "job" => PublishedSchemas.JobFromTypes,
            _ => LayoutJson.Schema(),
        };
        var file = Repository.Path("src", "PodLayout", "Schemas", which + ".schema.json");
        if (Environment.GetEnvironmentVariable("PODLAYOUT_RENEW") == "1")
        {
            File.WriteAllText(file, fresh);
        }

        Assert.Equal(fresh, File.ReadAllText(file));
    }

    [Theory]
    [MemberData(nameof(Samples))]
    public void Every_sample_validates_against_its_schema(string sample)
    {
        var schema = Path.GetFileName(sample).StartsWith("shop", StringComparison.Ordinal) ? PublishedSchemas.Shop : PublishedSchemas.Job;
        AssertValid(schema, File.ReadAllBytes(Repository.Path(sample)));
    }

    [Fact]
    public void The_built_in_shop_validates_against_the_schema() => AssertValid(PublishedSchemas.Shop, ShopReading.DefaultText());

    // JsonSchema.Net (json-everything), an implementation of the JSON Schema standard that shares nothing with ours.
    internal static bool IsValid(string schema, ReadOnlyMemory<byte> json)
    {
        using var document = JsonDocument.Parse(json);
        return Parsed(schema).Evaluate(document.RootElement).IsValid;
    }

    private static JsonSchema Parsed(string schema) =>
        JsonSchema.FromText(schema, new BuildOptions { SchemaRegistry = new SchemaRegistry() });

    private static void AssertValid(string schema, byte[] json)
    {
        using var document = JsonDocument.Parse(json);
        var results = Parsed(schema).Evaluate(document.RootElement, new EvaluationOptions { OutputFormat = OutputFormat.List });
        var errors = (results.Details ?? []).Where(d => d.Errors is not null)
            .SelectMany(d => d.Errors!.Select(e => $"{d.InstanceLocation}: {e.Value}"));
        Assert.True(results.IsValid, string.Join("; ", errors));
    }
}
