using PodLayout.Findings;
using PodLayout.JsonFiles;

namespace PodLayout.Shops.Written;

/// <summary>From <c>shop.json</c> to the shop.</summary>
public static class ShopReading
{
    /// <summary>Name under which the built-in shop appears in messages.</summary>
    public const string DefaultName = "(built-in shop)";

    /// <summary>Reads and checks a shop file.</summary>
    /// <param name="file">Its name, for messages.</param>
    /// <param name="content">Its bytes.</param>
    public static Outcome<Shop> Read(string file, byte[] content) =>
        RequestFile.Read<WrittenShop>(file, content, []).Then(
            written => ShopMaking.From(written, new FileRefusals(file) { Inches = InchPaths.Of(file, content) }));

    /// <summary>The shop that is used when none is named.</summary>
    public static Shop Default()
    {
        var outcome = Read(DefaultName, DefaultText());
        return outcome.Value ?? throw new InvalidOperationException(outcome.Refusal!.ToString());
    }

    /// <summary>The built-in shop as a file, to start one's own from.</summary>
    public static byte[] DefaultText() => Embedded.Bytes("default-shop.json");
}
