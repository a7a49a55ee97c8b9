using System.Globalization;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using PodLayout.Geometry;
using PodLayout.Handover.Picture;
using PodLayout.Handover.Setup;

namespace PodLayout.Tests.Handover.Setup;

/// <summary>What is read on a tablet that is held upright, without zooming.</summary>
public partial class ReadableOnTabletTests
{
    public static TheoryData<string> Plans() => [.. CrowdedCards.Names];

    [Theory]
    [MemberData(nameof(Plans))]
    public void Every_pod_and_every_mark_is_read_without_zooming_on_the_largest_boards(string name)
    {
        var plan = CrowdedCards.Plan(name);
        var pictures = Shown().Matches(Cards.Text(plan, "card.html")).Select(m => XElement.Parse(m.Groups[1].Value)).ToList();
        Dictionary<string, double> pods = [], marks = [];
        foreach (var picture in pictures)
        {
            var box = picture.Attribute("viewBox")!.Value.Split(' ').Select(v => double.Parse(v, CultureInfo.InvariantCulture)).ToList();
            var pixels = DrawnSheets.TabletPixels(box[2], box[3]);
            foreach (var text in picture.Descendants().Where(e => e.Name.LocalName == "text"))
            {
                var kind = text.Attribute("class")!.Value.Split(' ');
                var into = kind.Contains("pl-pod-id") ? pods : kind.Contains("pl-stretch-number") ? marks : null;
                if (into is not null)
                {
                    var size = double.Parse(text.Attribute("font-size")!.Value, CultureInfo.InvariantCulture) * pixels;
                    into[text.Value] = Math.Max(into.GetValueOrDefault(text.Value), size);

                    // Digits of a usual bold face are 0.56 of the type wide, the P 0.67: no narrower than seven eighths of that.
                    if (kind.Contains("pl-pod-id") && text.Attribute("textLength") is { } narrow)
                    {
                        Assert.InRange(double.Parse(narrow.Value, CultureInfo.InvariantCulture) * pixels / size, 0.875 * (0.67 + 0.56 * (text.Value.Length - 1)) - 0.01, 3);
                    }
                }
            }
        }

        Assert.Equal(plan.Layout!.Pods.Select((_, i) => $"P{i + 1}").Order(StringComparer.Ordinal), pods.Keys.Order(StringComparer.Ordinal));
        Assert.Equal(Laying.Of(plan, plan.Layout).Marks.Select(m => m.Name).Order(StringComparer.Ordinal), marks.Keys.Order(StringComparer.Ordinal));
        Assert.Equal([], pods.Concat(marks).Where(w => w.Value < DrawnSheets.LeastPixels).Select(w => $"{w.Key} {w.Value:0.0}"));
    }

    [Theory]
    [MemberData(nameof(Plans))]
    public void A_number_lies_on_no_other_word_and_on_no_other_pod(string name)
    {
        var plan = CrowdedCards.Plan(name);
        var sheet = SetupPicture.OnScreen(plan, Laying.Of(plan, plan.Layout!)).Picture;
        var words = sheet.Layers.Where(l => l.Name is "labels" or "groove-numbers").SelectMany(l => l.Primitives).OfType<Primitive.Text>().ToList();
        var rings = sheet.Layers.SelectMany(l => l.Primitives).OfType<Primitive.Disc>().Where(d => d.Style == "port-open-ring").ToList();
        foreach (var word in words.Where(w => w.Style == "pod-id"))
        {
            Assert.Equal([], words.Where(w => w != word && DrawnSheets.Ink(w).Touches(DrawnSheets.Ink(word))).Select(w => $"{w.Words} on {word.Words}"));
            Assert.DoesNotContain(rings, r => new Box2(r.Centre.X, r.Centre.Y, r.Centre.X, r.Centre.Y).Grow(0.9 * r.RadiusMm).Touches(DrawnSheets.Ink(word)));
            Assert.Equal([], plan.Layout!.Pods.Where((p, i) => $"P{i + 1}" != word.Words && p.BodyBox.Touches(DrawnSheets.Ink(word))).Select(p => $"{word.Words} on {p.Column}-{p.Row}"));
        }
    }

    [Theory]
    [MemberData(nameof(Plans))]
    public void A_number_beside_its_pod_is_nearer_to_it_than_to_any_other_or_has_a_line_to_it(string name)
    {
        var plan = CrowdedCards.Plan(name);
        var sheet = SetupPicture.OnScreen(plan, Laying.Of(plan, plan.Layout!)).Picture;
        var labels = sheet.Layers.Single(l => l.Name == "labels").Primitives;
        var bodies = plan.Layout!.Pods.Select((p, i) => (Id: $"P{i + 1}", Box: p.BodyBox)).ToDictionary(p => p.Id, p => p.Box);
        foreach (var word in labels.OfType<Primitive.Text>().Where(t => t.Style == "pod-id"))
        {
            var hasLine = labels.OfType<Primitive.Line>().Any(l => l.Style == "leader" && l.Of == word.Words && bodies[word.Words].Grow(0.01).Contains(l.Points[0]));

            // With its type and the sign of a turn it stands on a ground of its own.
            var box = labels.OfType<Primitive.Area>().Where(a => a.Style == "knockout" && a.Of == word.Words).Select(a => Box2.Around([.. a.Rings[0].Points]))
                .FirstOrDefault(b => b.Contains(new Box2(word.At.X, word.At.Y, word.At.X, word.At.Y)), DrawnSheets.Ink(word));
            var own = Between(bodies[word.Words], box);
            Assert.True(hasLine || bodies.All(b => b.Key == word.Words || Between(b.Value, box) > 1.25 * own), word.Words);

            // With a line it is not against another pod: a millimetre of this sheet is about five pixels.
            Assert.True(bodies.All(b => b.Key == word.Words || Between(b.Value, box) is var other && (other > own || other > 1.1 * sheet.Scale)), word.Words);
        }
    }

    [Theory]
    [MemberData(nameof(Plans))]
    public void The_line_to_a_mark_is_short_and_every_groove_that_was_numbered_still_is_on_one_side(string name)
    {
        var plan = CrowdedCards.Plan(name);
        var sheet = SetupPicture.OnScreen(plan, Laying.Of(plan, plan.Layout!)).Picture;
        var pixels = DrawnSheets.TabletPixels(sheet);
        var marks = Laying.Of(plan, plan.Layout!).Marks.ToDictionary(m => m.Name, m => m.At);
        foreach (var flag in sheet.Layers.Single(l => l.Name == "labels").Primitives.OfType<Primitive.Text>().Where(t => t.Style == "stretch-number"))
        {
            Assert.InRange((flag.At - marks[flag.Words]).Length * pixels, 0, 80);
        }

        var (board, numbers) = (plan.Job.Shop.Board, sheet.Layers.Single(l => l.Name == "groove-numbers").Primitives.OfType<Primitive.Text>().Where(t => t.Style is "number" or "number-fifth").ToList());
        foreach (var isColumn in new[] { true, false })
        {
            var along = numbers.Select(t => (t.Words, At: isColumn ? t.At.X : t.At.Y, Across: isColumn ? t.At.Y : t.At.X))
                .Where(t => Math.Abs(t.At - (15 + 30 * (int.Parse(t.Words, CultureInfo.InvariantCulture) - 1))) < 0.01
                    && (t.Across < 0 || t.Across > (isColumn ? board.LengthMm : board.WidthMm))).CountBy(t => t.Words).ToDictionary();
            // The first, and all that a step divides.
            var drawn = along.Keys.Select(n => int.Parse(n, CultureInfo.InvariantCulture)).ToHashSet();
            var (step, last) = (drawn.Where(n => n > 1).Min(), (int)(((isColumn ? board.WidthMm : board.LengthMm) - 15) / 30) + 1);
            Assert.Equal([], Enumerable.Range(1, last / step).Select(i => i * step).Except(drawn));
            Assert.Equal([], along.Where(n => n.Value < 2 && n.Key != "1" && n.Key != $"{drawn.Max()}").Select(n => n.Key));
            Assert.DoesNotContain(along.Values, n => n > 2);
        }
    }

    private static double Between(Box2 a, Box2 b) =>
        double.Hypot(Math.Max(0, Math.Max(a.MinX - b.MaxX, b.MinX - a.MaxX)), Math.Max(0, Math.Max(a.MinY - b.MaxY, b.MinY - a.MaxY)));

    [GeneratedRegex(@"<div class=""view""[^>]*>\s*(<svg.*?</svg>)", RegexOptions.Singleline)]
    private static partial Regex Shown();
}
