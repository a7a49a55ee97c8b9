using System.Collections.Immutable;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using PodLayout.Findings;
using PodLayout.Geometry;
using PodLayout.Parts;
using PodLayout.Reading;

namespace PodLayout.Cli;

/// <summary>What was read from a drawing and what would be planned of it, for scripts. Lengths in millimetres whatever the drawing's unit.</summary>
internal static class DrawingJson
{
    private static readonly JsonWriterOptions Form = new() { Indented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    public static string Write(string path, Drawing? drawing, DrawnPart? part, ImmutableArray<Finding> findings)
    {
        using MemoryStream stream = new();
        using (Utf8JsonWriter json = new(stream, Form))
        {
            json.WriteStartObject();
            json.WriteString("file", path);
            json.WriteBoolean("isPlanned", part?.Shape.Succeeded == true);
            if (drawing is not null && part is not null)
            {
                WriteDrawing(json, drawing, part);
            }

            json.WriteStartArray("findings");
            foreach (var finding in findings)
            {
                WriteFinding(json, finding);
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(stream.ToArray()) + "\n";
    }

    private static void WriteDrawing(Utf8JsonWriter json, Drawing drawing, DrawnPart part)
    {
        json.WriteString("format", drawing.Format);
        json.WriteString("unit", drawing.UnitName);
        json.WriteNumber("mmPerUnit", drawing.MmPerUnit);
        json.WriteNumber("joinGapMm", drawing.JoinGapMm);
        json.WriteStartArray("rings");
        for (var i = 0; i < drawing.Rings.Length; i++)
        {
            var ring = drawing.Rings[i];
            json.WriteStartObject();
            json.WriteNumber("number", i + 1);
            json.WriteString("layer", ring.Layer);
            json.WriteString("meaning", Word(part.Meanings[i]));
            json.WriteNumber("areaMm2", ring.TrueAreaMm2);
            json.WriteNumber("perimeterMm", ring.TrueLengthMm);
            json.WriteNumber("points", ring.Ring.Points.Length);
            WriteBox(json, ring.Ring.Bounds);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteStartArray("openContours");
        foreach (var open in drawing.OpenContours)
        {
            json.WriteStartObject();
            json.WriteString("layer", open.Layer);
            WritePoint(json, "fromMm", open.Points[0]);
            WritePoint(json, "toMm", open.Points[^1]);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteStartArray("layers");
        foreach (var layer in drawing.Layers)
        {
            json.WriteStartObject();
            json.WriteString("name", layer.Name);
            json.WriteNumber("pieces", layer.Pieces);
            json.WriteNumber("rings", layer.Rings);
            json.WriteNumber("open", layer.OpenContours);
            json.WriteBoolean("isLeftOut", layer.LeftOut);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteStartArray("parts");
        foreach (var candidate in part.Candidates)
        {
            json.WriteStartObject();
            json.WriteNumber("number", candidate.Number);
            json.WriteString("layer", candidate.Layer);
            json.WriteNumber("holes", candidate.Holes.Length);
            WriteBox(json, candidate.Outline.Bounds);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static string Word(RingMeaning meaning) => JsonNamingPolicy.CamelCase.ConvertName(meaning.ToString());

    private static void WriteBox(Utf8JsonWriter json, Box2 box)
    {
        json.WriteStartObject("boxMm");
        json.WriteNumber("minX", box.MinX);
        json.WriteNumber("minY", box.MinY);
        json.WriteNumber("maxX", box.MaxX);
        json.WriteNumber("maxY", box.MaxY);
        json.WriteEndObject();
    }

    private static void WritePoint(Utf8JsonWriter json, string name, Point2 p)
    {
        json.WriteStartArray(name);
        json.WriteNumberValue(p.X);
        json.WriteNumberValue(p.Y);
        json.WriteEndArray();
    }

    private static void WriteFinding(Utf8JsonWriter json, Finding finding)
    {
        json.WriteStartObject();
        json.WriteString("code", finding.Code);
        json.WriteString("severity", JsonNamingPolicy.CamelCase.ConvertName(finding.Severity.ToString()));
        json.WriteString("message", finding.Message);
        if (finding.Remedy is { } remedy)
        {
            json.WriteString("remedy", remedy);
        }

        if (finding.Place is Place.InDrawing at)
        {
            WritePoint(json, "atMm", new(at.XMm, at.YMm));
        }
        else if (finding.Place is Place.InFile { Line: { } line })
        {
            json.WriteNumber("line", line);
        }

        json.WriteEndObject();
    }
}
