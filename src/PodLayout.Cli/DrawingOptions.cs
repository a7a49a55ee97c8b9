using System.CommandLine;
using PodLayout.Findings;
using PodLayout.JsonFiles;

namespace PodLayout.Cli;

/// <summary>The options that say how a drawing is to be read: the same for <c>plan</c> and <c>inspect</c>, and the same members in a job.</summary>
internal sealed class DrawingOptions
{
    private readonly Option<string?> units = new("--units") { HelpName = "UNIT", Description = "Unit of the drawing (mm, cm, m, in, ft, um, mil), whatever it says itself." };
    private readonly Option<string?> outlineLayer = new("--outline-layer") { HelpName = "LAYER", Description = "Layer that holds the part's outline." };
    private readonly Option<string?> part = new("--part") { HelpName = "N", Description = "Number of the part that is meant, where the drawing holds several, as inspect counts them." };
    private readonly Option<string?> joinGap = new("--join-gap") { HelpName = "MM", Description = "Ends of lines nearer than this are joined, mm; 0.05 when not given." };

    private readonly Option<string[]> layer = new("--layer")
    {
        HelpName = "NAME=ROLE",
        Description = "What a layer holds: outline, hole, defect, cut or ignore. May be repeated.",
    };

    public IEnumerable<Option> All => [units, outlineLayer, layer, part, joinGap];

    /// <summary>Adds the members that were given; a refusal when one cannot even be taken for what it should be.</summary>
    public Finding? Read(ParseResult parsed, List<MemberOverride> members)
    {
        foreach (var (option, member) in new[] { (units, "units"), (outlineLayer, "outlineLayer") })
        {
            if (parsed.GetValue(option) is { } text)
            {
                members.Add(new(option.Name, member, null, PlanOptions.Element(text)));
            }
        }

        foreach (var (option, member) in new[] { (part, "part"), (joinGap, "joinGapMm") })
        {
            if (parsed.GetValue(option) is not { } text)
            {
                continue;
            }

            if (PlanOptions.NumbersOf(text) is not [var number])
            {
                return PlanOptions.Bad(option, text, "one number with a decimal point");
            }

            members.Add(new(option.Name, member, null, PlanOptions.Element(number)));
        }

        foreach (var given in parsed.GetValue(layer) ?? [])
        {
            var split = given.LastIndexOf('=');
            if (split <= 0)
            {
                return PlanOptions.Bad(layer, given, "a layer and its role, as in KNOTS=defect");
            }

            members.Add(new(layer.Name, "layers", given[..split], PlanOptions.Element(given[(split + 1)..])));
        }

        return null;
    }
}
