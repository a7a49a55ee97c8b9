using System.Collections.Immutable;
using PodLayout.Layouts;
using PodLayout.Seats;
using PodLayout.Shops;

namespace PodLayout.Checking;

/// <summary>Ports: the listed ones open, each for one pod, working, inside the lower seal; no other open one under a seal.</summary>
internal static class PortRules
{
    public static IEnumerable<RuleCheck> Check(
        GridBoard board, Layout layout, ImmutableArray<PodPose> poses, ImmutableArray<string> openPorts)
    {
        yield return Listed(layout, openPorts);
        yield return Enough(board, layout, poses);
        yield return Work(board, layout);
        yield return InsideSeal(board, layout, poses);
        yield return NoneUnderSeal(board, layout, poses, openPorts);
    }

    private static RuleCheck Listed(Layout layout, ImmutableArray<string> openPorts)
    {
        var tally = new RuleTally(CheckedRule.PortsListed, Measure.MostCount, 0);
        var users = layout.Pods.SelectMany((pod, i) => pod.OpenPorts.Select(port => (port.Name, Pod: i)))
            .GroupBy(u => u.Name, u => u.Pod, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.ToArray(), StringComparer.Ordinal);
        string[] names = [.. users.Keys.Union(openPorts, StringComparer.Ordinal)];
        for (var k = 0; k < names.Length; k++)
        {
            var name = names[k];
            var (message, remedy) = (users.GetValueOrDefault(name) ?? [], openPorts.Contains(name)) switch
            {
                ([], _) => ($"Port {name} is listed to be opened, but no pod is fed by it: vacuum would be lost there.",
                    $"Take {name} out of openPorts, or name it at its pod."),
                ([var pod, ..], false) => ($"{CheckWords.Pod(pod)} is fed by port {name}, which is not among the ports to open.",
                    $"Add {name} to openPorts."),
                ([var a, var b, ..], _) => ($"Port {name} is named by both {CheckWords.Pod(a)} and {CheckWords.Pod(b)}; it lies inside one lower seal at most.",
                    "Give each pod a port of its own."),
                _ => ("", ""),
            };
            tally.Add(message.Length > 0 ? 1 : 0, 0, message.Length > 0 ? $"port {name}" : "no port out of place", (k, 0), () => (message, remedy));
        }

        return tally.Done("no ports");
    }

    private static RuleCheck Enough(GridBoard board, Layout layout, ImmutableArray<PodPose> poses)
    {
        var tally = new RuleTally(CheckedRule.EnoughPorts, Measure.LeastCount, 0);
        for (var i = 0; i < layout.Pods.Length; i++)
        {
            var (pod, pose, name) = (layout.Pods[i], poses[i], CheckWords.Pod(i));
            tally.Add(pod.OpenPorts.Length, pod.Type.PortsNeeded, name, (i, 0), () =>
            {
                var others = BoardSeats.FeedingPorts(pose, board, pod.Column, pod.Row).Select(p => p.Name).ToArray();
                return ($"{name} names {CheckWords.Whole(pod.OpenPorts.Length)} port(s); \"{pod.Type.Name}\" needs {CheckWords.Whole(pod.Type.PortsNeeded)}.",
                    others.Length == 0 ? $"No working port lies inside its lower seal at column {CheckWords.Whole(pod.Column + 1)}, row {CheckWords.Whole(pod.Row + 1)}: move {name}."
                        : $"Working ports inside its lower seal: {string.Join(", ", others)}.");
            });
        }

        return tally.Done("no pods");
    }

    private static RuleCheck Work(GridBoard board, Layout layout)
    {
        var tally = new RuleTally(CheckedRule.PortsWork, Measure.MostCount, 0);
        for (var i = 0; i < layout.Pods.Length; i++)
        {
            for (var k = 0; k < layout.Pods[i].OpenPorts.Length; k++)
            {
                var (port, name) = (layout.Pods[i].OpenPorts[k], CheckWords.Pod(i));
                var isKnown = board.Ports.Contains(port);
                var works = isKnown && port.State == PortState.Working;
                tally.Add(works ? 0 : 1, 0, works ? "no port that does not" : $"{name}, port {port.Name}", (i, k), () => (
                    isKnown ? $"{name}: port {port.Name} {(port.State == PortState.Dead ? "brings no vacuum" : "cannot be plugged and is not to be relied on")}."
                        : $"{name}: port {port.Name} is not on this board as the layout has it.",
                    $"Name a working port at {name}, or move it."));
            }
        }

        return tally.Done("no ports");
    }

    private static RuleCheck InsideSeal(GridBoard board, Layout layout, ImmutableArray<PodPose> poses)
    {
        var tally = new RuleTally(CheckedRule.PortsInsideSeal, Measure.LeastMm, LayoutCheck.ToleranceMm);
        for (var i = 0; i < layout.Pods.Length; i++)
        {
            for (var k = 0; k < layout.Pods[i].OpenPorts.Length; k++)
            {
                var (port, name) = (layout.Pods[i].OpenPorts[k], CheckWords.Pod(i));
                var mm = BoardSeats.InsideSeal(poses[i], layout.Pods[i].BodyBox, port.Centre) - board.PortDiameterMm / 2;
                tally.Add(mm, board.PortMarginMm, $"{name}, port {port.Name}", (i, k), () => (
                    mm < 0 ? $"{name}: port {port.Name} passes its lower seal by {CheckWords.Mm(-mm)} mm."
                        : $"{name}: port {port.Name} lies {CheckWords.Mm(mm)} mm inside its lower seal, less than the margin of {CheckWords.Mm(board.PortMarginMm)} mm.",
                    $"Name a port that lies under {name}, or move it."));
            }
        }

        return tally.Done("no ports");
    }

    // Either wholly inside the lower seal by its margin, where it does no harm, or wholly clear of the body.
    private static RuleCheck NoneUnderSeal(
        GridBoard board, Layout layout, ImmutableArray<PodPose> poses, ImmutableArray<string> openPorts)
    {
        var tally = new RuleTally(CheckedRule.NoOpenPortUnderSeal, Measure.LeastMm, LayoutCheck.ToleranceMm);
        var radius = board.PortDiameterMm / 2;
        Port[] open = [.. board.Ports.Where(p => p.State == PortState.StuckOpen || openPorts.Contains(p.Name))];
        for (var i = 0; i < layout.Pods.Length; i++)
        {
            for (var k = 0; k < open.Length; k++)
            {
                var (port, pod, name) = (open[k], layout.Pods[i], CheckWords.Pod(i));
                if (pod.OpenPorts.Contains(port))
                {
                    continue;
                }

                var inside = BoardSeats.InsideSeal(poses[i], pod.BodyBox, port.Centre) - radius - board.PortMarginMm;
                var outside = poses[i].IsRound
                    ? (port.Centre - pod.Centre).Length - pod.ExtentXMm / 2 - radius
                    : Clearance.ToPoint(pod.BodyBox, port.Centre) - radius;
                tally.Add(Math.Max(inside, outside), 0, $"{name} and port {port.Name}", (i, k), () => (
                    $"{name}: its lower seal stands on port {port.Name}, which {(port.State == PortState.StuckOpen ? "cannot be plugged" : "is open for another pod")} ({CheckWords.Mm(-Math.Max(inside, outside))} mm too near).",
                    $"Move {name} off that port."));
            }
        }

        return tally.Done("no open port near");
    }
}
