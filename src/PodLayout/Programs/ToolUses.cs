using System.Collections.Immutable;
using PodLayout.Geometry;

namespace PodLayout.Programs;

/// <summary>What a program does with each of its tools.</summary>
public static class ToolUses
{
    /// <summary>One entry a tool, in order of first use.</summary>
    public static ImmutableArray<ToolUse> Of(ToolPath path) =>
        [.. path.Stretches.GroupBy(s => s.ToolNumber).Select(g => Of(g.Key, [.. g]))];

    private static ToolUse Of(int tool, ImmutableArray<Stretch> stretches)
    {
        double lowest = double.PositiveInfinity, highest = double.NegativeInfinity, fed = 0, rapid = 0, minutes = 0, untimed = 0;
        int lowestLine = 0;
        foreach (var stretch in stretches)
        {
            if (stretch.LowestZMm < lowest)
            {
                (lowest, lowestLine) = (stretch.LowestZMm, stretch.Line);
            }

            highest = Math.Max(highest, stretch.Extent.Most.ZMm);
            if (!IsFed(stretch))
            {
                rapid += stretch.LengthMm;
                continue;
            }

            fed += stretch.LengthMm;
            minutes += stretch.FeedMmPerMin > 0 ? stretch.LengthMm / stretch.FeedMmPerMin : 0;
            untimed += stretch.FeedMmPerMin > 0 ? 0 : stretch.LengthMm;
        }

        var shown = stretches.Where(IsFed).DefaultIfEmpty(stretches[0]).Select(s => s.Extent);
        var box = Box2.Around(shown.SelectMany(e => new[] { new Point2(e.Least.XMm, e.Least.YMm), new Point2(e.Most.XMm, e.Most.YMm) }));
        return new(tool, stretches[0].Line, box, lowest, lowestLine, highest, fed, rapid, minutes * 60, untimed);
    }

    private static bool IsFed(Stretch stretch) => stretch.Kind is StretchKind.Line or StretchKind.Arc;
}
