using System.Collections.Immutable;
using PodLayout.Jobs;
using PodLayout.Layouts;
using PodLayout.Shops;

namespace PodLayout.Handover.Setup;

/// <summary>What is done on the board: take up and plug, open, set down, valves.</summary>
internal static class BoardSteps
{
    // A port lies under its pod and is unplugged from above: before the pod is set.
    public static IEnumerable<CardSection> Of(PlanResult result, Layout layout, StandingChanges changes, LayoutDoubts doubts, CardUnit unit) =>
    [
        new("clear", "Clear the board", [.. Clear(result.Job, changes)]),
        new("ports", "Open the ports", [.. Ports(result.Job, layout, changes, doubts, unit)]),
        new("pods", "Set the pods", [.. Pods(result.Job, layout, changes, doubts, unit)]),
        new(CardSection.Valves, "Zone valves", [.. Valves(result.Job.Shop, layout)]),
    ];

    private static IEnumerable<CardBlock> Clear(Job job, StandingChanges changes)
    {
        if (job.Standing is null)
        {
            yield return new CardBlock.Words("What stands on the board now was not given: take up all pods and plug all ports first.");
            yield break;
        }

        yield return new CardBlock.Words(
            changes.Staying.IsEmpty ? "Of the pods on the board none stays."
                : $"Stay where they stand: {string.Join(", ", changes.Staying.Select(LayoutFiling.PodId))}.");
        if (!changes.TakeUp.IsEmpty)
        {
            yield return new CardBlock.Table(
                "Pods to take up", "Up", ["Take up", "Turn", "Column", "Row", "It becomes"],
                [
                    .. changes.TakeUp.Select((p, i) => new CardRow($"U{CsvText.Count(i + 1)}",
                    [
                        p.Type, Turn(p.Turned), CsvText.Count(p.Column + 1), CsvText.Count(p.Row + 1),
                        changes.From[i] < 0 ? "nothing: to the shelf" : LayoutFiling.PodId(changes.From[i]),
                    ])),
                ]);
        }

        if (!changes.ToPlug.IsEmpty)
        {
            yield return new CardBlock.Table(
                "Ports to plug", "Plugged", ["Plug port", "Where"],
                [
                    .. changes.ToPlug.Select((name, i) => new CardRow($"C{CsvText.Count(i + 1)}",
                    [
                        name, job.Shop.Board.Ports.FirstOrDefault(p => p.Name == name) is { } port ? CellOf(job.Shop.Board, port) : "",
                    ])),
                ]);
        }
        else
        {
            yield return new CardBlock.Words("No port that is open now has to be plugged.");
        }
    }

    private static IEnumerable<CardBlock> Pods(Job job, Layout layout, StandingChanges changes, LayoutDoubts doubts, CardUnit unit)
    {
        yield return new CardBlock.Words(
            "Count the grooves from the datum, the first one is 1: column is the groove under the pod's left edge, row the groove "
                + $"under its edge nearest to you. X and Y are the pod's middle from the datum, in {(unit.InInches ? "inches" : "mm")}.{Sizes(layout, unit)}");
        ImmutableArray<string> now = job.Standing is null ? [] : ["Now"], under = layout.Pods.All(p => p.Holds is null) ? [] : ["Under"];
        ImmutableArray<string> fault = doubts.Faults.IsEmpty ? [] : ["Fault"];
        yield return new CardBlock.Table(
            "Pods in placing order", "Set", ["Pod", "Type", "Turn", "Column", "Row", $"X {unit.Name}", $"Y {unit.Name}", "Ports", .. under, .. now, .. fault],
            [
                .. layout.Pods.Select((p, i) => new CardRow(LayoutFiling.PodId(i),
                [
                    LayoutFiling.PodId(i), p.Type.Name, Turn(p.Turned), CsvText.Count(p.Column + 1), CsvText.Count(p.Row + 1),
                    unit.Length(p.Centre.X), unit.Length(p.Centre.Y), string.Join(' ', p.OpenPorts.Select(o => o.Name)),
                    .. under.Select(_ => p.Holds ?? "part"),
                    .. now.Select(_ => Now(changes, i)),
                    .. fault.Select(_ => doubts.FaultOf(i)),
                ])),
            ]);
    }

    // Types are named as the shop names them, which may say no size, or one in another unit.
    private static string Sizes(Layout layout, CardUnit unit)
    {
        var types = layout.Pods.Select(p => p.Type).DistinctBy(t => t.Name).Where(t => !unit.SaysSize(t)).ToList();
        return types.Count == 0 ? "" : $" Sizes, left-right x near-far, unturned: {string.Join("; ", types.Select(t => $"type {t.Name} is {unit.Size(t)}"))}.";
    }

    private static string Now(StandingChanges changes, int pod)
    {
        if (changes.Staying.Contains(pod))
        {
            return "stays";
        }

        var from = changes.From.IndexOf(pod);
        return from < 0 ? "set down"
            : $"from column {CsvText.Count(changes.TakeUp[from].Column + 1)}, row {CsvText.Count(changes.TakeUp[from].Row + 1)}";
    }

    private static IEnumerable<CardBlock> Ports(Job job, Layout layout, StandingChanges changes, LayoutDoubts doubts, CardUnit unit)
    {
        var board = job.Shop.Board;
        var open = LayoutFiling.OpenPorts(layout).ToList();
        var podOf = layout.Pods.SelectMany((p, i) => p.OpenPorts.Select(o => (o.Name, Pod: i))).ToLookup(p => p.Name, p => p.Pod, StringComparer.Ordinal);
        ImmutableArray<string> zone = job.Shop.Zones.IsEmpty ? [] : ["Zone"], now = job.Standing is null ? [] : ["Now"];
        ImmutableArray<string> fault = doubts.Faults.IsEmpty ? [] : ["Fault"];
        var stuck = board.Ports.Where(p => p.State == PortState.StuckOpen && !open.Contains(p)).Select(p => p.Name).ToList();
        yield return new CardBlock.Words(Others(board.Ports.Length - open.Count - stuck.Count, stuck.Count), IsStrong: true);
        if (stuck.Count > 0)
        {
            yield return new CardBlock.Steps([.. stuck.Select((name, i) => ($"K{CsvText.Count(i + 1)}", $"{name} cannot be plugged: tape or cover it."))]) { LeadsOn = true };
        }

        var dead = board.Ports.Where(p => p.State == PortState.Dead).Select(p => p.Name).ToList();
        if (dead.Count > 0)
        {
            yield return new CardBlock.Words($"Dead port{(dead.Count == 1 ? "" : "s")}, do not use: {string.Join(", ", dead)}.");
        }

        yield return new CardBlock.Words(
            "Column and row are the last grooves before the port, counted from the datum.");
        yield return new CardBlock.Table(
            "Ports to open", "Open", ["Port", "Column", "Row", $"X {unit.Name}", $"Y {unit.Name}", "Under pod", .. zone, .. now, .. fault],
            [
                .. open.Select((p, i) => new CardRow(LayoutFiling.PortId(i),
                [
                    p.Name, CsvText.Count(PortsCsv.GroovesBefore(p.Centre.X - board.FirstGroove.X, board.PitchMm)),
                    CsvText.Count(PortsCsv.GroovesBefore(p.Centre.Y - board.FirstGroove.Y, board.PitchMm)),
                    unit.Length(p.Centre.X), unit.Length(p.Centre.Y), string.Join(' ', podOf[p.Name].Select(LayoutFiling.PodId)),
                    .. zone.Select(_ => ZoneOf(job.Shop, p)),
                    .. now.Select(_ => changes.OpenAlready.Contains(p.Name) ? "open already" : "open"),
                    .. fault.Select(_ => string.Join("; ", podOf[p.Name].Select(doubts.FaultOf).Where(f => f.Length > 0).Distinct())),
                ])),
            ]);
    }

    private static string Others(int plugged, int stuck) => plugged == 0
        ? stuck == 0 ? "The board has no other ports." : "The board has no other ports but those that cannot be plugged."
        : $"All other {CsvText.Count(plugged)} ports stay plugged.";

    private static IEnumerable<CardBlock> Valves(Shop shop, Layout layout)
    {
        if (shop.Zones.IsEmpty)
        {
            yield return new CardBlock.Steps(
            [
                ("Z1", "The shop file names no zones of the table: open the valves that feed the ports above. Valves opened: ____________________"),
            ]);
            yield break;
        }

        var needed = LayoutFiling.OpenPorts(layout).SelectMany(p => shop.Zones.Where(z => z.Area.Contains(p.Centre))).ToHashSet();
        yield return new CardBlock.Table(
            "Valves of the table's zones", "Done", ["Zone", "Valve"],
            [.. shop.Zones.Select((z, i) => new CardRow($"Z{CsvText.Count(i + 1)}", [z.Name, needed.Contains(z) ? "OPEN" : "closed"]))]);
        var outside = LayoutFiling.OpenPorts(layout).Where(p => !shop.Zones.Any(z => z.Area.Contains(p.Centre))).Select(p => p.Name).ToList();
        if (outside.Count > 0)
        {
            yield return new CardBlock.Words($"In no zone of the shop file: {string.Join(", ", outside)}.", IsStrong: true);
        }
    }

    private static string ZoneOf(Shop shop, Port port) =>
        string.Join(", ", shop.Zones.Where(z => z.Area.Contains(port.Centre)).Select(z => z.Name));

    private static string CellOf(GridBoard board, Port port) =>
        $"column {CsvText.Count(PortsCsv.GroovesBefore(port.Centre.X - board.FirstGroove.X, board.PitchMm))}, "
            + $"row {CsvText.Count(PortsCsv.GroovesBefore(port.Centre.Y - board.FirstGroove.Y, board.PitchMm))}";

    private static string Turn(bool turned) => turned ? "turned" : "-";
}
