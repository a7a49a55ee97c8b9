using System.Collections.Immutable;
using System.CommandLine;
using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using PodLayout.Findings;
using PodLayout.JsonFiles;

namespace PodLayout.Cli;

/// <summary>
/// The options that stand for members of the job. They are turned into JSON and read by the same reader as the job file, so
/// that the same rules hold for both. Numbers come as text: a decimal comma must be refused, not taken for a thousands mark.
/// </summary>
internal sealed class PlanOptions
{
    private readonly Option<string?> thickness = Text("--thickness", "MM", "Thickness of the part, mm. Needed when no job file is given.");
    private readonly Option<string?> shop = Text("--shop", "FILE", "The shop's file; the built-in shop when neither this nor the job names one.");
    private readonly Option<string?> grain = Text("--grain", "DEG", "Direction of the grain in the drawing, degrees counter-clockwise from X.");
    private readonly Option<string?> species = Text("--species", "NAME", "The wood, in free words.");
    private readonly Option<string?> overhang = Text("--overhang", "MM", "Overhang limit, mm: one number, or ALONG,ACROSS the grain.");
    private readonly Option<string?> at = Text("--at", "X,Y", "The drawing's zero lies exactly here on the board, mm (with one --angle, or none).");

    private readonly Option<string[]> angle = new("--angle")
    {
        HelpName = "DEG",
        Description = "With --at: the part's turn. Without: angles at which the place is searched; several with commas or by repeating.",
    };

    private readonly DrawingOptions drawing = new();

    public IEnumerable<Option> All => [thickness, shop, .. drawing.All, grain, species, overhang, at, angle];

    /// <summary>The members given as options; a refusal when one cannot even be taken for what it should be.</summary>
    public Outcome<Given> Read(ParseResult parsed)
    {
        List<MemberOverride> members = [];
        Finding? refusal = null;
        Numbers(thickness, "thicknessMm", 1, n => n[0]);
        Numbers(grain, "grainDeg", 1, n => n[0]);
        Numbers(overhang, "overhangMm", 2, n => n.Length == 1
            ? n[0] : new JsonObject { ["alongGrainMm"] = n[0], ["acrossGrainMm"] = n[1] });
        Words(shop, "shop");
        Words(species, "species");
        refusal ??= drawing.Read(parsed, members);
        Placement();
        return refusal is null ? Outcome<Given>.Of(new([.. members])) : Outcome<Given>.Refuse(refusal);

        void Words(Option<string?> option, string member)
        {
            if (parsed.GetValue(option) is { } text)
            {
                members.Add(new(option.Name, member, null, Element(text)));
            }
        }

        void Numbers(Option<string?> option, string member, int most, Func<double[], JsonNode> form)
        {
            if (parsed.GetValue(option) is not { } text)
            {
                return;
            }

            if (NumbersOf(text) is { } numbers && numbers.Length <= most)
            {
                members.Add(new(option.Name, member, null, Element(form(numbers))));
            }
            else
            {
                refusal ??= Bad(option, text, most == 1 ? "one number with a decimal point" : "one number, or two with a comma between");
            }
        }

        void Placement()
        {
            var angles = (parsed.GetValue(angle) ?? []).Select(a => (Text: a, Numbers: NumbersOf(a))).ToArray();
            if (angles.FirstOrDefault(a => a.Numbers is null) is { Text: { } bad })
            {
                refusal ??= Bad(angle, bad, "an angle in degrees, or several with commas between");
                return;
            }

            var all = angles.SelectMany(a => a.Numbers!).ToArray();
            JsonObject placement;
            if (parsed.GetValue(at) is { } place)
            {
                if (NumbersOf(place) is not [var x, var y])
                {
                    refusal ??= Bad(at, place, "two numbers X,Y in mm");
                    return;
                }

                if (all.Length > 1)
                {
                    refusal ??= Bad(angle, string.Join(",", all.Select(JsonWords)), "one angle, since --at gives one place");
                    return;
                }

                placement = new() { ["zeroOnBoardMm"] = new JsonArray(x, y), ["angleDeg"] = all.Length == 1 ? all[0] : 0 };
            }
            else if (all.Length > 0)
            {
                placement = new() { ["searchAnglesDeg"] = new JsonArray([.. all.Select(a => (JsonNode)a)]) };
            }
            else
            {
                return;
            }

            members.Add(new(parsed.GetValue(at) is null ? angle.Name : at.Name, "placement", null, Element(placement)));
        }
    }

    /// <summary>What was given, as it would stand in the file.</summary>
    internal static JsonElement Element(JsonNode value) => JsonElement.Parse(value.ToJsonString());

    /// <summary>Numbers with commas between; null when one of them is none.</summary>
    internal static double[]? NumbersOf(string text)
    {
        List<double> numbers = [];
        foreach (var part in text.Split(','))
        {
            if (!double.TryParse(part, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) || !double.IsFinite(number))
            {
                return null;
            }

            numbers.Add(number);
        }

        return [.. numbers];
    }

    internal static Finding Bad(Option option, string found, string expected) => new(
        "option-value",
        Severity.Refused,
        FindingKind.Request,
        $"found \"{found}\", expected {expected}.",
        new Place.InOption(option.Name),
        $"Write {option.Name} {option.HelpName}; podlayout plan --help lists all options.");

    private static string JsonWords(double number) => number.ToString(CultureInfo.InvariantCulture);

    private static Option<string?> Text(string name, string helpName, string description) =>
        new(name) { HelpName = helpName, Description = description };

    /// <summary>The members that options gave.</summary>
    internal sealed record Given(ImmutableArray<MemberOverride> Members);
}
