using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Json.Schema;
using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;
using System.Text.Unicode;
using PodLayout.Findings;
using PodLayout.Handover.Format;
using PodLayout.Layouts;
using PodLayout.Programs;
using PodLayout.Shops;

namespace PodLayout.Handover;

/// <summary><c>layout.json</c>: everything about a layout, written and read back strictly.</summary>
public static class LayoutJson
{
    private static readonly JsonSerializerOptions Options = MakeOptions();
    private static readonly JsonTypeInfo<LayoutFile> FileForm = (JsonTypeInfo<LayoutFile>)Options.GetTypeInfo(typeof(LayoutFile));

    /// <summary>The file's text: members in a fixed order, two spaces of indent, LF at line ends.</summary>
    public static string Write(PlanResult result) => Write(LayoutFiling.File(result));

    /// <summary>The same from the external form.</summary>
    public static string Write(LayoutFile file) => Plain.Json(JsonSerializer.Serialize(file, FileForm)) + "\n";

    /// <summary>Reads the text of a layout file; anything unknown, missing or contradictory is refused.</summary>
    /// <param name="fileName">Name for messages.</param>
    /// <param name="json">The file's text.</param>
    public static Outcome<LayoutFile> Read(string fileName, string json) => Read(fileName, json, isEdited: false);

    /// <summary>The same; of an edited file, members that only repeat or follow from others may be wrong.</summary>
    internal static Outcome<LayoutFile> Read(string fileName, string json, bool isEdited)
    {
        var refusal = StrictJson.Check<LayoutFile>(fileName, json, Options, LayoutFile.SchemaWord, LayoutFile.CurrentVersion);
        if (refusal is not null)
        {
            return Outcome<LayoutFile>.Refuse(refusal);
        }

        var file = JsonSerializer.Deserialize(json, FileForm)!;
        return LayoutFileCheck.FirstContradiction(fileName, file, isEdited) is { } contradiction
            ? Outcome<LayoutFile>.Refuse(contradiction)
            : Outcome<LayoutFile>.Of(file);
    }

    /// <summary>The result that a file stands for, ready to be drawn, checked or compared. The file must have been read by
    /// <see cref="Read(string, string)"/>.</summary>
    public static PlanResult ToPlan(LayoutFile file) => LayoutUnfiling.Plan(file);

    /// <summary>The JSON Schema of the file, generated from its types.</summary>
    public static string Schema()
    {
        var exporter = new JsonSchemaExporterOptions
        {
            TreatNullObliviousAsNonNullable = true,
            TransformSchemaNode = Describe,
        };
        var schema = Options.GetJsonSchemaAsNode(typeof(LayoutFile), exporter).AsObject();
        var head = new JsonObject
        {
            ["$schema"] = "https://json-schema.org/draft/2020-12/schema",
            ["title"] = "PodLayout layout, version 1",
        };
        foreach (var (name, value) in schema)
        {
            head[name] = value?.DeepClone();
        }

        return head.ToJsonString(Options) + "\n";
    }

    private static JsonNode Describe(JsonSchemaExporterContext context, JsonNode schema)
    {
        if (context.TypeInfo.Type == typeof(XyMm))
        {
            var canBeNull = context.PropertyInfo?.IsGetNullable == true;
            return new JsonObject
            {
                ["type"] = canBeNull ? new JsonArray("array", "null") : "array",
                ["items"] = new JsonObject { ["type"] = "number" },
                ["minItems"] = 2,
                ["maxItems"] = 2,
            };
        }

        if (schema is JsonObject node && context.TypeInfo.Kind == JsonTypeInfoKind.Object)
        {
            node["additionalProperties"] = false;
        }

        if (context.TypeInfo.Type == typeof(LayoutFile) && schema["properties"] is JsonObject members)
        {
            members["schema"]!["const"] = LayoutFile.SchemaWord;
            members["version"]!["const"] = LayoutFile.CurrentVersion;
        }

        return schema;
    }

    private static JsonSerializerOptions MakeOptions()
    {
        var options = new JsonSerializerOptions
        {
            // As strict as the serializer can be.
            UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
            AllowDuplicateProperties = false,
            RespectNullableAnnotations = true,
            RespectRequiredConstructorParameters = true,
            PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
            WriteIndented = true,
            IndentSize = 2,
            NewLine = "\n",

            // Letters of all languages stay readable; what HTML could take for markup is still escaped.
            Encoder = JavaScriptEncoder.Create(UnicodeRanges.All),
            TypeInfoResolver = LayoutFileForm.Default,
            Converters =
            {
                Words<PortState>(), Words<ObstacleKind>(), Words<ProofScope>(), Words<Holding.FailureMode>(), Words<ChannelWish>(), Words<Severity>(),
                Words<SupportLimit>(), Words<FindingKind>(), Words<ZZero>(),
            },
        };
        options.MakeReadOnly();
        return options;
    }

    private static JsonStringEnumConverter<T> Words<T>()
        where T : struct, Enum => new(JsonNamingPolicy.KebabCaseLower, allowIntegerValues: false);
}
