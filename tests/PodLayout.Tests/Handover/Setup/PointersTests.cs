using System.Collections.Immutable;
using PodLayout.Geometry;
using PodLayout.Handover.Picture;
using PodLayout.Handover.Setup;
using PodLayout.Jobs;
using PodLayout.Layouts;
using PodLayout.Shops;
using PodLayout.Tests.Independent;

namespace PodLayout.Tests.Handover.Setup;

/// <summary>Lines from words to what they name, which lead to nothing else on their way.</summary>
public class PointersTests
{
    public static TheoryData<string> Plans() => [.. Cards.Names];

    [Theory]
    [MemberData(nameof(Plans))]
    public void No_line_to_a_word_comes_to_the_dot_of_a_mark_that_is_not_its_own(string name) => NoneComesToADot(Cards.Plan(name), ofMarksOnly: false);

    [Theory]
    [InlineData(8.5)]
    [InlineData(15)]
    [InlineData(30)]
    public void Where_two_marks_lie_near_each_other_none_of_their_lines_runs_through_the_other(double apartMm)
    {
        // A leg with a rounded end: its rightmost and its farthest place are the corner's two ends.
        var oval = HandMade.Oval();
        Ring leg = new([new(0, 0), new(200, 0), new(200, 400), new(200 - apartMm, 400 + apartMm), new(60, 400), new(0, 400)]);
        // The oval's pods stand where they did, some of them over the marks.
        NoneComesToADot(oval with { Job = oval.Job with { Part = oval.Job.Part with { Shape = new(leg, [], []) } } }, ofMarksOnly: true);
    }

    public static TheoryData<string> Crowded() => [.. CrowdedCards.Names];

    [Theory]
    [MemberData(nameof(Crowded))]
    public void A_line_to_a_pod_ends_on_its_edge_off_the_corners_and_off_other_pods(string name)
    {
        var plan = CrowdedCards.Plan(name);
        foreach (var sheet in Pictures(plan, Laying.Of(plan, plan.Layout!)))
        {
            // Those of ports begin in the pod.
            var pods = plan.Layout!.Pods.Select((p, i) => (Id: $"P{i + 1}", Pod: p)).ToDictionary(p => p.Id, p => p.Pod);
            foreach (var line in sheet.Layers.Single(l => l.Name == "labels").Primitives.OfType<Primitive.Line>().Where(l => l.Style == "leader" && l.Of is not null && pods.ContainsKey(l.Of)))
            {
                var (pod, end) = (pods[line.Of!], line.Points[0]);
                if (pod.OpenPorts.Any(o => (o.Centre - end).Length < 2 * sheet.Scale))
                {
                    continue;
                }

                var off = end - pod.Centre;
                if (pod.Type.Footprint is PodFootprint.Round round)
                {
                    Assert.Equal(round.DiameterMm / 2, off.Length, 1e-6);
                }
                else
                {
                    double x = Math.Abs(off.X) / pod.ExtentXMm, y = Math.Abs(off.Y) / pod.ExtentYMm;
                    Assert.Equal(0.5, Math.Max(x, y), 1e-6);
                    Assert.InRange(Math.Min(x, y), 0, 0.25 + 1e-6);
                }

                Assert.Equal([], pods.Where(p => p.Key != line.Of && DrawnSheets.Reaches((end, line.Points[^1]), p.Value.BodyBox.Grow(0.25 * sheet.Scale), sheet.Scale)).Select(p => $"{line.Of} at {p.Key}"));
            }
        }
    }

    [Fact]
    public void An_open_port_that_its_pod_has_left_behind_is_named_where_it_is()
    {
        var plan = Cards.Plan("small");
        var (board, pods) = (plan.Job.Shop.Board, plan.Layout!.Pods);
        var left = pods[0].OpenPorts[0];
        var moved = plan with { Layout = plan.Layout with { Pods = pods.SetItem(0, pods[0] with { Centre = pods[0].Centre + new Point2(0, 3 * board.PitchMm), Row = pods[0].Row + 3 }) } };
        Assert.DoesNotContain(moved.Layout!.Pods, p => p.BodyBox.Contains(left.Centre));
        foreach (var sheet in Pictures(moved, Laying.Of(moved, moved.Layout)))
        {
            var name = sheet.Layers.Single(l => l.Name == "labels").Primitives.OfType<Primitive.Text>().Single(t => t.Style == "port-name" && t.Words == left.Name);
            Assert.InRange((name.At - left.Centre).Length / sheet.Scale, 0, 20);
            Assert.Contains(Pointers(sheet), p => (p.A - left.Centre).Length < 6 * sheet.Scale && (p.B - name.At).Length < 8 * sheet.Scale);
        }
    }

    private static void NoneComesToADot(PlanResult plan, bool ofMarksOnly)
    {
        var laying = Laying.Of(plan, plan.Layout!);
        foreach (var sheet in Pictures(plan, laying))
        {
            foreach (var (a, b) in Pointers(sheet).Where(p => !ofMarksOnly || laying.Marks.Any(m => m.At == p.A)))
            {
                Assert.DoesNotContain(laying.Marks, m => (m.At - a).Length > 1e-6 && Enumerable.Range(1, 50).Any(
                    i => ((a + (b - a) * (i / 50.0)) - m.At).Length < 0.5 * sheet.Scale));
            }
        }
    }

    [Theory]
    [InlineData(1)]
    [InlineData(4)]
    [InlineData(12)]
    public void Names_of_loose_pieces_stand_near_them_their_lines_cross_no_other_and_the_legend_counts_those_without(int count)
    {
        // Discs of 24 mm in a row under the oval's upper edge, 34 mm apart.
        var oval = HandMade.Oval();
        var at = Enumerable.Range(0, count).Select(i => new Point2(-190 + 34 * i, 110)).ToList();
        ImmutableArray<Ring> holes = [.. at.Select(p => Shapes.Circle(p.X, p.Y, 12, 40))];
        var shape = oval.Job.Part.Shape with { Holes = [.. oval.Job.Part.Shape.Holes, .. holes] };
        var plan = oval with
        {
            Job = oval.Job with
            {
                Part = oval.Job.Part with { Shape = shape },
                Offcuts = [.. at.Select((p, i) => new Offcut($"offcut {i + 1}", p, 24, 24, 0.01, false, false))],
            },
        };
        var laying = Laying.Of(plan, plan.Layout!);
        foreach (var sheet in Pictures(plan, laying))
        {
            var names = sheet.Layers.SelectMany(l => l.Primitives).OfType<Primitive.Text>().Where(t => t.Words.StartsWith("offcut ", StringComparison.Ordinal)).ToList();
            var pointers = Pointers(sheet).ToList();
            var onBoard = at.ConvertAll(p => p + plan.Layout!.Placement.ZeroOnBoard);
            Assert.All(names, t => Assert.InRange((onBoard[int.Parse(t.Words[7..], System.Globalization.CultureInfo.InvariantCulture) - 1] - t.At).Length, 0, 30 * sheet.Scale));
            for (var i = 0; i < pointers.Count; i++)
            {
                Assert.DoesNotContain(pointers.Skip(i + 1), p => onBoard.Exists(o => o == p.A || o == pointers[i].A) && Meet(pointers[i], p));
            }

            var legend = sheet.Layers.Single(l => l.Name == "panel").Primitives.IsEmpty ? SetupPicture.OnScreen(plan, laying).Signs : sheet;
            var words = string.Join(' ', legend.Layers.Single(l => l.Name == "panel").Primitives.OfType<Primitive.Text>().Select(t => t.Words));
            var missing = count - names.Count;
            Assert.Equal(missing > 0, words.Contains("no room for the names of", StringComparison.Ordinal));
            Assert.True(missing < 2 || words.Contains($"no room for the names of {missing} loose pieces", StringComparison.Ordinal), words);
        }
    }

    private static bool Meet((Point2 A, Point2 B) p, (Point2 A, Point2 B) q)
    {
        double Side(Point2 a, Point2 b, Point2 c) => (b - a).Cross(c - a);
        return Side(p.A, p.B, q.A) * Side(p.A, p.B, q.B) < 0 && Side(q.A, q.B, p.A) * Side(q.A, q.B, p.B) < 0;
    }

    private static IEnumerable<(Point2 A, Point2 B)> Pointers(Sheet sheet) => sheet.Layers.Where(l => l.Name != "panel").SelectMany(l => l.Primitives)
        .OfType<Primitive.Line>().Where(l => l.Style == "leader").Select(l => (l.Points[0], l.Points[^1]));

    private static IEnumerable<Sheet> Pictures(PlanResult plan, Laying laying) =>
    [
        SetupPicture.OnScreen(plan, laying).Picture, SetupPicture.OnPaper(plan, laying, ("Title", ["one line"]), null, PaperSize.A4)[0],
    ];
}
