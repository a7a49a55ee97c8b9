using System.Text;
using PodLayout.Jobs.Written;
using PodLayout.JsonFiles;
using PodLayout.Shops.Written;

namespace PodLayout.Schemas;

/// <summary>The JSON Schemas of the files that people write.</summary>
public static class PublishedSchemas
{
    /// <summary>The schema of <c>shop.json</c>, as published.</summary>
    public static string Shop => Encoding.UTF8.GetString(Embedded.Bytes("shop.schema.json"));

    /// <summary>The schema of <c>job.json</c>, as published.</summary>
    public static string Job => Encoding.UTF8.GetString(Embedded.Bytes("job.schema.json"));

    /// <summary>The shop's schema made anew from the types; a test holds the published one against it.</summary>
    internal static string ShopFromTypes => SchemaWriter.Write(typeof(WrittenShop), "PodLayout shop", "urn:podlayout:shop:1");

    /// <summary>The job's schema made anew from the types.</summary>
    internal static string JobFromTypes => SchemaWriter.Write(typeof(WrittenJob), "PodLayout job", "urn:podlayout:job:1");
}
