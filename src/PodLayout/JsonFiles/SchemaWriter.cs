using System.ComponentModel;
using System.Globalization;
using System.Reflection;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using PodLayout.Geometry;

namespace PodLayout.JsonFiles;

/// <summary>Makes the JSON Schema (draft 2020-12) of a file from the types that <see cref="StrictReader"/> binds it to.</summary>
internal static class SchemaWriter
{
    private static readonly JsonSerializerOptions Indented = new()
    {
        WriteIndented = true,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <summary>The schema as text, ending in a line feed.</summary>
    public static string Write(Type type, string title, string id)
    {
        JsonObject schema = new()
        {
            ["$schema"] = "https://json-schema.org/draft/2020-12/schema",
            ["$id"] = id,
            ["title"] = title,
            ["description"] = type.GetCustomAttribute<DescriptionAttribute>()?.Description,
        };
        foreach (var (name, value) in ObjectOf(type))
        {
            schema[name] = value?.DeepClone();
        }

        return schema.ToJsonString(Indented) + "\n";
    }

    private static JsonObject ObjectOf(Type type)
    {
        JsonObject properties = [];
        JsonArray required = [];
        JsonArray eitherUnit = [];
        var fresh = FileForm.Fresh(type);
        foreach (var member in FileMember.Of(type))
        {
            var schema = MemberOf(member);
            if (!member.Required && DefaultOf(member, fresh) is { } value)
            {
                schema["default"] = value;
            }

            properties[member.Name] = schema;
            if (member.InInches() is { } inInches)
            {
                properties[inInches.Name] = MemberOf(inInches);
                eitherUnit.Add((JsonNode)(member.Required
                    ? new JsonObject { ["oneOf"] = new JsonArray(Requiring(member.Name), Requiring(inInches.Name)) }
                    : new JsonObject { ["not"] = Requiring(member.Name, inInches.Name) }));
            }
            else if (member.Required)
            {
                required.Add((JsonNode)member.Name);
            }
        }

        JsonObject result = new() { ["type"] = "object", ["properties"] = properties };
        if (required.Count > 0)
        {
            result["required"] = required;
        }

        if (eitherUnit.Count > 0)
        {
            result["allOf"] = eitherUnit;
        }

        result["additionalProperties"] = false;
        return result;
    }

    private static JsonObject Requiring(params IEnumerable<string> names) =>
        new() { ["required"] = new JsonArray([.. names.Select(n => JsonValue.Create(n))]) };

    private static JsonObject MemberOf(FileMember member)
    {
        var value = ValueOf(member.Type, member);
        JsonObject schema = new() { ["description"] = member.Says };
        if (member.Name == "version")
        {
            schema["const"] = RequestFile.Version;
            return schema;
        }

        if (member.NullMeans is { } meaning)
        {
            schema["anyOf"] = new JsonArray(value, new JsonObject { ["type"] = "null", ["description"] = meaning });
            return schema;
        }

        foreach (var (name, part) in value)
        {
            schema[name] = part?.DeepClone();
        }

        return schema;
    }

    private static JsonObject ValueOf(Type type, FileMember member)
    {
        if (type == typeof(double) || type == typeof(int))
        {
            return NumberOf(type, member.Bounds);
        }

        if (type == typeof(string))
        {
            return new() { ["type"] = "string", ["pattern"] = member.Required ? StrictReader.NamePattern : StrictReader.TextPattern, ["maxLength"] = member.LongestText };
        }

        if (type == typeof(bool))
        {
            return new() { ["type"] = "boolean" };
        }

        if (type == typeof(Point2))
        {
            return new()
            {
                ["type"] = "array",
                ["items"] = NumberOf(typeof(double), member.Bounds),
                ["minItems"] = 2,
                ["maxItems"] = 2,
            };
        }

        if (type.IsEnum)
        {
            return new() { ["enum"] = new JsonArray([.. Enum.GetNames(type).Select(n => JsonValue.Create(JsonWords.MemberName(n)))]) };
        }

        if (type == member.Type && member.Many is { } many)
        {
            return ManyOf(many, member);
        }

        return type.GetCustomAttribute<EitherOfAttribute>() is { } either
            ? new() { ["anyOf"] = new JsonArray([.. either.Forms.Select(f => FormOf(f, member.MmPerUnit))]) }
            : ObjectOf(type);
    }

    private static JsonObject FormOf(Type form, double mmPerUnit) => form.IsDefined(typeof(BareAttribute), false)
        ? MemberOf(FileMember.Of(form).Single().WithUnit(mmPerUnit))
        : ObjectOf(form);

    private static JsonObject ManyOf(ManyOfAttribute many, FileMember member)
    {
        if (many is MapOfAttribute)
        {
            return new() { ["type"] = "object", ["additionalProperties"] = ValueOf(many.ItemType, member) };
        }

        JsonObject list = new() { ["type"] = "array", ["items"] = ValueOf(many.ItemType, member) };
        if (member.AtLeast > 0)
        {
            list["minItems"] = member.AtLeast;
        }

        list["maxItems"] = member.AtMost;

        return list;
    }

    private static JsonObject NumberOf(Type type, BoundsAttribute bounds)
    {
        JsonObject number = new() { ["type"] = type == typeof(int) ? "integer" : "number" };
        if (!double.IsNaN(bounds.Over))
        {
            number["exclusiveMinimum"] = bounds.Over;
        }
        else
        {
            number["minimum"] = bounds.From;
        }

        number["maximum"] = bounds.To;
        return number;
    }

    private static JsonNode? DefaultOf(FileMember member, object fresh) => member.Property.GetValue(fresh) switch
    {
        bool value => JsonValue.Create(value),
        int value => JsonValue.Create(value),
        double value => JsonNode.Parse(value.ToString("R", CultureInfo.InvariantCulture)),
        Point2 value => new JsonArray(value.X, value.Y),
        string value => JsonValue.Create(value),
        _ => null,
    };
}
