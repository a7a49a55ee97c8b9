using System.Collections.Immutable;
using PodLayout.Geometry;
using PodLayout.Handover;
using PodLayout.Handover.Picture;
using PodLayout.Handover.Setup;
using PodLayout.Tests.Independent;
using static PodLayout.Tests.Handover.Setup.DrawnSheets;

namespace PodLayout.Tests.Handover.Setup;

/// <summary>The legend says what is in the picture, and no more.</summary>
public class LegendTests
{
    public static TheoryData<string> Plans() => [.. Cards.Names];

    [Theory]
    [MemberData(nameof(Plans))]
    public void The_legend_explains_only_signs_that_are_in_the_picture(string name)
    {
        var plan = Cards.Held(Cards.Plan(name));
        var laying = Laying.Of(plan, plan.Layout!);
        var (picture, signs, _) = SetupPicture.OnScreen(plan, laying);
        Assert.Equal([], Styles(signs, "panel").Except(Styles(picture, null)));
        foreach (var sheet in Pictures(plan).Skip(1).Append(LayoutPicture.Draw(plan)))
        {
            Assert.Equal([], Styles(sheet, "panel").Except(Styles(sheet, null)));
        }
    }

    [Fact]
    public void Where_every_port_is_open_and_all_pods_are_alike_the_legend_speaks_of_neither_plugged_ports_nor_types()
    {
        var plan = Cards.Plan("small");
        var words = string.Join(' ', SetupPicture.OnScreen(plan, Laying.Of(plan, plan.Layout!)).Signs.Layers.SelectMany(l => l.Primitives).OfType<Primitive.Text>().Select(t => t.Words));
        Assert.Contains("port to open", words, StringComparison.Ordinal);
        Assert.DoesNotContain("plugged", words, StringComparison.Ordinal);
        Assert.DoesNotContain("keep clear", words, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Plans))]
    public void Every_pod_says_its_type_and_its_turn_and_every_port_its_name_unless_the_legend_counts_those_without(string name)
    {
        var plan = Cards.Plan(name);
        var screen = SetupPicture.OnScreen(plan, Laying.Of(plan, plan.Layout!));
        ImmutableArray<Sheet> OnPaper(PaperSize paper) => SetupPicture.OnPaper(plan, Laying.Of(plan, plan.Layout!), ("x", ["y"]), 1, paper);
        foreach (var (sheet, closer) in new ImmutableArray<Sheet>[] { [screen.Picture, .. screen.Closer.Select(c => c.Picture)], OnPaper(PaperSize.A4), OnPaper(PaperSize.Letter), [LayoutPicture.Draw(plan)] }
            .Select(s => (s[0], s[1..])))
        {
            var drawn = sheet.Layers.Where(l => l.Name != "panel").SelectMany(l => l.Primitives).ToList();
            var labels = sheet.Layers.Single(l => l.Name == "labels").Primitives.OfType<Primitive.Text>().ToList();
            var isOfMany = plan.Layout!.Pods.Select(p => p.Type.Name).Distinct().Count() > 1;
            for (var i = 0; i < plan.Layout.Pods.Length; i++)
            {
                var id = $"P{i + 1}";
                Assert.InRange(labels.Count(t => t.Style == "pod-type" && t.Of == id), isOfMany ? 1 : 0, 1);
                Assert.Equal(plan.Layout.Pods[i].Turned ? 1 : 0, drawn.Count(p => p.Style == "pod-turned" && p.Of == id));
            }

            // On a screen the legend is a sheet of its own.
            var legend = sheet.Layers.Single(l => l.Name == "panel").Primitives.IsEmpty ? screen.Signs : sheet;
            var told = string.Join(' ', legend.Layers.Single(l => l.Name == "panel").Primitives.OfType<Primitive.Text>().Select(t => t.Words));

            // Named in the picture, or in a part of it that is shown larger.
            var named = labels.Concat(closer.SelectMany(c => c.Layers.Single(l => l.Name == "labels").Primitives.OfType<Primitive.Text>()))
                .Where(t => t.Style == "port-name").Select(t => t.Words).Distinct().Count();
            var without = plan.Layout.Pods.SelectMany(p => p.OpenPorts).Count() - named;
            Assert.Equal(without > 0, told.Contains("no room for its name", StringComparison.Ordinal));
            Assert.True(without <= 0 || told.Contains(without == 1 ? "one port" : $"{without} ports", StringComparison.Ordinal), told);
        }
    }

    [Fact]
    public void A_blank_that_reaches_beyond_the_board_makes_the_picture_larger_and_is_explained()
    {
        var ell = HandMade.Ell();
        var plan = ell with { Job = ell.Job with { Part = ell.Job.Part with { Shape = ell.Job.Part.Shape with { Blank = [HandMade.Rectangle(-80, -60, 350, 320)] } } } };
        foreach (var sheet in Pictures(plan).Append(LayoutPicture.Draw(plan)).Append(LayoutDxf.Draw(plan)))
        {
            // The part's zero lies at (30, 30): the blank from (-50, -30) to (380, 350), on a board of 300 x 300.
            Assert.True(sheet.Extent.Contains(new Box2(-50, -30, 380, 350)));
        }

        var words = SetupPicture.OnScreen(plan, Laying.Of(plan, plan.Layout!)).Signs.Layers.SelectMany(l => l.Primitives).OfType<Primitive.Text>().Select(t => t.Words);
        Assert.Contains("edge of the blank, as it is laid down", string.Join(' ', words), StringComparison.Ordinal);
    }

    [Fact]
    public void A_column_is_not_left_empty_for_rows_that_are_too_high_for_each()
    {
        Assert.Equal([(0, 0), (1, 0)], PageFrame.Filled([7.4, 15.9], [15, 15, 15]));
        Assert.Equal([(0, 0), (2, 0)], PageFrame.Filled([7.4, 15.9], [15, 15, 16]));
        Assert.Equal([(0, 0), (1, 0), (2, 0)], PageFrame.Filled([7, 9, 3], [10, 11, 10]));
    }
}
