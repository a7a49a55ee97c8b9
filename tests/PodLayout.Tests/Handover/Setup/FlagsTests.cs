using PodLayout.Geometry;
using PodLayout.Handover.Picture;
using PodLayout.Handover.Setup;
using PodLayout.Layouts;
using PodLayout.Tests.Independent;
using static PodLayout.Tests.Handover.Setup.DrawnSheets;

namespace PodLayout.Tests.Handover.Setup;

/// <summary>The flags of the marks that a part is laid by: where they stand.</summary>
public class FlagsTests
{
    public static TheoryData<string> Plans() => [.. Cards.Names];

    [Theory]
    [MemberData(nameof(Plans))]
    public void The_flag_of_a_mark_lies_on_no_pod_no_open_port_no_number_and_no_edge_and_its_line_runs_over_no_port(string name) =>
        FlagsHaveRoom(Cards.Plan(name));

    [Theory]
    [InlineData(300, 600, 12, true)]
    [InlineData(600, 600, 60, true)]
    [InlineData(900, 600, 40, true)]
    [InlineData(1500, 1500, 60, true)]
    [InlineData(2400, 1200, 60, false)]
    [InlineData(3600, 600, 60, true)]
    [InlineData(600, 3600, 60, true)]
    [InlineData(3600, 1500, 60, false)]
    public void Where_the_part_covers_the_board_and_pods_stand_in_its_corners_flags_find_room_too(double width, double length, int pods, bool isSmall) =>
        FlagsHaveRoom(Cards.Grid(width, length, pods, isSmall ? HandMade.Small : HandMade.Square));

    private static void FlagsHaveRoom(PlanResult plan)
    {
        var marks = Laying.Of(plan, plan.Layout!).Marks;
        foreach (var sheet in Pictures(plan))
        {
            var drawn = sheet.Layers.Where(l => l.Name != "panel").SelectMany(l => l.Primitives).ToList();
            var flags = drawn.OfType<Primitive.Disc>().Where(d => d.Style == "stretch-flag").ToList();
            Assert.Equal(marks.Length, flags.Count);
            var pods = sheet.Layers.Single(l => l.Name == "pods").Primitives.Select(p => p is Primitive.Disc d ? Around(d) : Box2.Around([.. ((Primitive.Area)p).Rings[0].Points])).ToList();
            var ports = drawn.OfType<Primitive.Disc>().Where(d => d.Style == "port-open-ring").ToList();
            var words = drawn.OfType<Primitive.Text>().Where(t => t.Style != "stretch-number").ToList();
            var lines = Lines(sheet, "part-edge", "board", "datum").ToList();
            foreach (var flag in flags)
            {
                // The disc fills its box but for the corners.
                var ink = Around(flag).Grow(-0.3 * flag.RadiusMm);
                Assert.DoesNotContain(pods, p => p.Touches(ink));
                Assert.DoesNotContain(ports, p => (p.Centre - flag.Centre).Length < p.RadiusMm + flag.RadiusMm);
                Assert.Equal([], words.Where(t => Inside(t).Touches(ink)).Select(t => t.Words));
                Assert.DoesNotContain(flags, f => f != flag && (f.Centre - flag.Centre).Length < f.RadiusMm + flag.RadiusMm);
                Assert.DoesNotContain(lines, l => Reaches(l, ink, sheet.Scale));
            }

            foreach (var (a, b) in Lines(sheet, "leader").Where(l => marks.Any(m => (m.At - l.A).Length < 1e-9)))
            {
                Assert.DoesNotContain(ports, p => Reaches((a, b), Around(p).Grow(-0.5 * p.RadiusMm), sheet.Scale));
            }
        }
    }

    [Theory]
    [InlineData("oval")]
    [InlineData("crest")]
    [InlineData("ell")]
    public void A_mark_stands_near_its_place_where_nothing_is_in_the_way(string name)
    {
        // Outside the part there is room at once: the flag of 4 mm, and a line of 7 mm or less to it.
        var plan = Cards.Plan(name);
        var marks = Laying.Of(plan, plan.Layout!).Marks.ToDictionary(m => m.Name, m => m.At);
        foreach (var sheet in Pictures(plan))
        {
            foreach (var flag in sheet.Layers.Single(l => l.Name == "labels").Primitives.OfType<Primitive.Text>().Where(t => t.Style == "stretch-number"))
            {
                Assert.InRange((flag.At - marks[flag.Words]).Length / sheet.Scale, 0, 13);
            }
        }
    }
}
