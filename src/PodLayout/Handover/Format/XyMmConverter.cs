using System.Globalization;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace PodLayout.Handover.Format;

/// <summary>Writes a point as <c>[x, y]</c> on one line, so that an outline stays readable.</summary>
internal sealed class XyMmConverter : JsonConverter<XyMm>
{
    public override XyMm Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
    {
        Expect(reader.TokenType == JsonTokenType.StartArray);
        var x = Number(ref reader);
        var y = Number(ref reader);
        Expect(reader.Read() && reader.TokenType == JsonTokenType.EndArray);
        return new(x, y);
    }

    public override void Write(Utf8JsonWriter writer, XyMm value, JsonSerializerOptions options) =>
        writer.WriteRawValue(string.Create(CultureInfo.InvariantCulture, $"[{value.X:R}, {value.Y:R}]"));

    private static double Number(ref Utf8JsonReader reader)
    {
        Expect(reader.Read() && reader.TokenType == JsonTokenType.Number);
        return reader.GetDouble();
    }

    private static void Expect(bool condition)
    {
        if (!condition)
        {
            throw new JsonException("A point is two numbers: [x, y].");
        }
    }
}
