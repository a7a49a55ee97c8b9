using System.Collections.Immutable;
using System.Reflection;
using System.Text.Json;
using PodLayout.Findings;
using PodLayout.Geometry;

namespace PodLayout.JsonFiles;

/// <summary>
/// Binds a JSON document to the types that describe a file, and stops at the first thing that is not as they say. Own code
/// rather than the serializer's, because each refusal must name the exact JSON path, what was found and what was expected.
/// </summary>
internal sealed partial class StrictReader
{
    /// <summary>Texts end up in tables, pictures and on cards: no control characters, no marks that turn the direction of what follows, nothing that XML forbids.</summary>
    public const string TextPattern = $"^{Shown}*$";

    /// <summary>As <see cref="TextPattern"/>, and not blank.</summary>
    public const string NamePattern = $@"^{Shown}*[^\s{Steering}]{Shown}*$";

    // As Plain.Steers has them, and what XML forbids.
    private const string Steering = @"\u0000-\u001F\u007F-\u009F\u061C\u200E\u200F\u2028-\u202E\u2066-\u2069\uFEFF\uFFFE\uFFFF";
    private const string Shown = $"[^{Steering}]";

    private readonly string file;
    private readonly ImmutableArray<MemberOverride> overrides;
    private Finding? refusal;

    private StrictReader(string file, ImmutableArray<MemberOverride> overrides)
    {
        this.file = file;
        this.overrides = overrides;
    }

    /// <summary>Reads the whole document.</summary>
    public static Outcome<T> Read<T>(string file, JsonElement root, ImmutableArray<MemberOverride> overrides)
        where T : class
    {
        var reader = new StrictReader(file, overrides);
        var value = reader.BindObject(typeof(T), root, "$", "expected a JSON object { ... }");
        return reader.refusal is { } finding ? Outcome<T>.Refuse(finding) : Outcome<T>.Of((T)value!);
    }

    /// <summary>Where a path is: in the file, or on the command line when an option gave the member.</summary>
    public static Place PlaceOf(string file, ImmutableArray<MemberOverride> overrides, string path)
    {
        foreach (var o in overrides)
        {
            var at = o.Key is null ? JsonWords.Child("$", o.Member) : JsonWords.Child(JsonWords.Child("$", o.Member), o.Key);
            if (path.StartsWith(at, StringComparison.Ordinal) && (path.Length == at.Length || path[at.Length] is '.' or '['))
            {
                return new Place.InOption(o.Option);
            }
        }

        return new Place.InJson(file, path);
    }

    private object? Bind(Type type, JsonElement element, string path, FileMember member)
    {
        if (type == typeof(double) || type == typeof(int))
        {
            return BindNumber(type, element, path, member);
        }

        if (type == typeof(string))
        {
            return BindText(element, path, member);
        }

        if (type == typeof(bool))
        {
            return element.ValueKind is JsonValueKind.True or JsonValueKind.False
                ? element.GetBoolean()
                : WrongType(element, path, "true or false", member);
        }

        if (type == typeof(Point2))
        {
            return BindPoint(element, path, member);
        }

        if (type.IsEnum)
        {
            return BindWord(type, element, path, member);
        }

        if (type == member.Type && member.Many is { } many)
        {
            return many is MapOfAttribute map ? BindMap(map, element, path, member) : BindList((ListOfAttribute)many, element, path, member);
        }

        return type.GetCustomAttribute<EitherOfAttribute>() is { } either
            ? BindEither(either, element, path, member)
            : BindObject(type, element, path, $"expected an object {{ ... }}: {member.Says}");
    }

    private object? BindObject(Type type, JsonElement element, string path, string expected)
    {
        if (element.ValueKind != JsonValueKind.Object)
        {
            return Refuse("json-wrong-type", path, $"found {JsonWords.Found(element)}, {expected}.", "See the published schema for its members.");
        }

        var members = FileMember.Of(type);
        if (Collect(element, path, [.. members.SelectMany(Names)]) is not { } values)
        {
            return null;
        }

        var made = FileForm.Fresh(type);
        foreach (var inMm in members)
        {
            var member = inMm;
            if (inMm.InInches() is { } inInches && values.ContainsKey(inInches.Name))
            {
                if (values.ContainsKey(inMm.Name))
                {
                    return Refuse(
                        "json-two-units",
                        JsonWords.Child(path, inInches.Name),
                        $"this length is given twice, here and as {inMm.Name}.",
                        "Keep one of the two.");
                }

                member = inInches;
            }

            if (!values.TryGetValue(member.Name, out var value))
            {
                if (member.Required)
                {
                    return Refuse(
                        "json-missing-member", JsonWords.Child(path, member.Name), "this member is missing.", $"Add it: {member.Says}");
                }

                continue;
            }

            if (value.ValueKind == JsonValueKind.Null && member.NullMeans is not null)
            {
                member.Property.SetValue(made, null);
                continue;
            }

            var bound = Bind(member.Type, value, JsonWords.Child(path, member.Name), member);
            if (refusal is not null)
            {
                return null;
            }

            member.Property.SetValue(made, bound);
        }

        return made;
    }

    private static IEnumerable<string> Names(FileMember member) =>
        member.InInches() is { } inInches ? [member.Name, inInches.Name] : [member.Name];

    /// <summary>The members of an object by name, with those given as options in their place; null after a refusal.</summary>
    private Dictionary<string, JsonElement>? Collect(JsonElement element, string path, ImmutableArray<string>? known)
    {
        Dictionary<string, JsonElement> values = new(StringComparer.Ordinal);
        foreach (var property in element.EnumerateObject())
        {
            if (NameOf(property) is not { } name)
            {
                Refuse("json-syntax", path, "a member's name holds a broken \\u escape.", "Type the name again.");
                return null;
            }

            if (known is { } names && !names.Contains(name))
            {
                var near = NearestName.To(name, names);
                Refuse(
                    "json-unknown-member",
                    JsonWords.Child(path, name),
                    "there is no such member here.",
                    near is null ? $"Known here: {string.Join(", ", names)}." : $"Did you mean \"{near}\"?");
                return null;
            }

            if (!values.TryAdd(name, property.Value))
            {
                Refuse("json-duplicate-member", JsonWords.Child(path, name), "this member stands here twice.", "Keep one of them.");
                return null;
            }
        }

        foreach (var o in overrides)
        {
            if (o.Key is null && path == "$")
            {
                values[o.Member] = o.Value;
            }
            else if (path == "$")
            {
                values.TryAdd(o.Member, JsonElement.Parse("{}"));
            }
            else if (o.Key is not null && path == JsonWords.Child("$", o.Member))
            {
                values[o.Key] = o.Value;
            }
        }

        return values;
    }

    private object? BindList(ListOfAttribute list, JsonElement element, string path, FileMember member)
    {
        if (element.ValueKind != JsonValueKind.Array)
        {
            return WrongType(element, path, "a list [ ... ]", member);
        }

        if (element.GetArrayLength() < member.AtLeast)
        {
            return Refuse(
                "json-too-few",
                path,
                $"found {JsonWords.Found(element)}, expected at least {JsonWords.Number(member.AtLeast)}.",
                $"Here belongs: {member.Says}");
        }

        if (element.GetArrayLength() > member.AtMost)
        {
            return Refuse(
                "json-too-many",
                path,
                $"found {JsonWords.Found(element)}, expected at most {JsonWords.Number(member.AtMost)}.",
                $"Here belongs: {member.Says}");
        }

        List<object?> items = [];
        foreach (var item in element.EnumerateArray())
        {
            var bound = Bind(list.ItemType, item, JsonWords.Child(path, items.Count), member);
            if (refusal is not null)
            {
                return null;
            }

            items.Add(bound);
        }

        return list.Made(items);
    }

    private object? BindMap(MapOfAttribute map, JsonElement element, string path, FileMember member)
    {
        if (element.ValueKind != JsonValueKind.Object)
        {
            return WrongType(element, path, "an object { \"name\": value, ... }", member);
        }

        if (Collect(element, path, null) is not { } values)
        {
            return null;
        }

        List<KeyValuePair<string, object?>> items = [];
        foreach (var (name, value) in values)
        {
            var bound = Bind(map.ItemType, value, JsonWords.Child(path, name), member);
            if (refusal is not null)
            {
                return null;
            }

            items.Add(new(name, bound));
        }

        return map.Made(items);
    }

    private object? BindEither(EitherOfAttribute either, JsonElement element, string path, FileMember member)
    {
        foreach (var form in either.Forms)
        {
            if (!form.IsDefined(typeof(BareAttribute), false))
            {
                if (element.ValueKind == JsonValueKind.Object)
                {
                    return BindObject(form, element, path, "");
                }

                continue;
            }

            var only = FileMember.Of(form).Single().WithUnit(member.MmPerUnit);
            if (KindFits(only.Type, element.ValueKind))
            {
                var bound = Bind(only.Type, element, path, only);
                if (refusal is not null)
                {
                    return null;
                }

                var made = FileForm.Fresh(form);
                only.Property.SetValue(made, bound);
                return made;
            }
        }

        return WrongType(element, path, string.Join(", or ", either.Forms.Select(InWords)), member);
    }

    private object? WrongType(JsonElement element, string path, string expected, FileMember member) =>
        Refuse("json-wrong-type", path, $"found {JsonWords.Found(element)}, expected {expected}.", $"Here belongs: {member.Says}");

    private object? Refuse(string code, string path, string message, string remedy)
    {
        refusal = new(code, Severity.Refused, FindingKind.Request, message, PlaceOf(file, overrides, path), remedy);
        return null;
    }
}
