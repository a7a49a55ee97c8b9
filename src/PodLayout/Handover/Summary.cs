using System.Globalization;
using PodLayout.Findings;
using PodLayout.Geometry;
using PodLayout.Layouts;
using PodLayout.Shops;

namespace PodLayout.Handover;

/// <summary>The summary on the terminal: what a person does next.</summary>
public static class Summary
{
    private const int MostStretches = 8;

    /// <summary>The text, LF at line ends. The numbers of unsupported stretches are those in the picture.</summary>
    public static string Write(PlanResult result)
    {
        var lines = result.Layout is { } layout ? LayoutLines(result, layout) : NoLayoutLines(result);
        var findings = result.Findings.Where(f => f.Severity >= Severity.Mended && f.Kind != FindingKind.NoLayout)
            .Select(f => $"{Word(f.Severity)}: {f}");
        return string.Concat(lines.Concat(WaysOut(result)).Concat(findings).Concat(Cautions.Of(result).Select(c => "Caution: " + c))
            .Select(line => Plain(line) + "\n"));
    }

    /// <summary>Text from the user without characters that a terminal would obey or that would break the line.</summary>
    internal static string Plain(string text) =>
        text.Any(char.IsControl) ? new([.. text.Select(c => char.IsControl(c) ? ' ' : c)]) : text;

    private static IEnumerable<string> LayoutLines(PlanResult result, Layout layout)
    {
        var ports = LayoutFiling.OpenPorts(layout).Select(p => p.Name).ToList();
        if (layout.Holding is { DoesNotHold: true } held)
        {
            yield return HoldingWords.DoesNotHold(held);
        }

        yield return $"{Named(result)}: {Counted(layout.Pods.Length, "pod")}, {Counted(ports.Count, "port")} to open. "
            + layout.Proof.Words;
        yield return WhereItLies(result, layout.Placement);
        yield return "Pods in placing order; columns and rows are grooves counted from the datum, X and Y the pod's centre in mm:";
        foreach (var line in PodTable(layout))
        {
            yield return line;
        }

        if (result.IsPartial)
        {
            yield return $"UNSUPPORTED: {UnsupportedFindings.Amount(layout, result.Unsupported)} beyond the limits of every pod:";
            foreach (var line in Unsupported(result))
            {
                yield return line;
            }
        }

        foreach (var line in Asked(result).Concat(Changes(result, layout)))
        {
            yield return line;
        }

        yield return $"Open {(ports.Count == 1 ? "port" : "ports")} {string.Join(", ", ports)}; all others stay plugged.";
        foreach (var line in HoldingWords.Lines(layout))
        {
            yield return line;
        }

        if (LayoutFiling.WorstPoint(layout) is { } worst)
        {
            var at = Turn.FromDegrees(layout.Placement.AngleDeg).Apply(worst.OnPart) + layout.Placement.ZeroOnBoard;
            yield return $"Worst overhang{(result.IsPartial ? " where it is supported" : "")}: {Percent(worst.ShareOfLimit)} of its limit, {Where(worst.Limit)} "
                + $"at X {Mm(at.X)}, Y {Mm(at.Y)} on the board (nearest pod {LayoutFiling.PodId(worst.Pod)}); measured at every corner "
                + $"and at points at most {Mm(result.Job.Support.EdgeStepMm)} mm apart, between which it may be a little more.";
        }

        foreach (var line in Pieces(result, layout))
        {
            yield return line;
        }
    }

    /// <summary>Which pods hold which loose pieces.</summary>
    internal static IEnumerable<string> Pieces(PlanResult result, Layout layout) => result.Job.Part.Shape.Held.Select(piece =>
        $"{piece.Name} ({piece.MassKg.ToString("0.###", CultureInfo.InvariantCulture)} kg) comes loose from the blank; held by "
        + string.Join(", ", layout.Pods.Select((p, i) => (p, i)).Where(p => p.p.Holds == piece.Name).Select(p => LayoutFiling.PodId(p.i))) + ".");

    /// <summary>The same words with a capital to begin with.</summary>
    internal static string Capital(string words) => words.Length == 0 ? words : char.ToUpperInvariant(words[0]) + words[1..];

    internal static string Where(SupportLimit limit) => limit switch
    {
        SupportLimit.Edge => "at the edge",
        SupportLimit.Interior => "inside",
        _ => "on a thin floor",
    };

    /// <summary>Which pods were to stand, and where none was to.</summary>
    internal static IEnumerable<string> Asked(PlanResult result)
    {
        var job = result.Job;
        if (!job.Keep.IsEmpty)
        {
            yield return "To be kept, as asked: " + string.Join("; ", job.Keep.Select(k =>
                $"{k.Type.Name}{(k.Turned ? ", turned," : "")} at column {Whole(k.Column + 1)}, row {Whole(k.Row + 1)}")) + ".";
        }

        var avoided = job.Shop.Board.Obstacles.Where(o => o.Kind == ObstacleKind.Avoided).Select(o => o.Name).ToList();
        if (avoided.Count > 0)
        {
            yield return $"No pods on the board, as asked: {string.Join(", ", avoided)}.";
        }

        if (!job.Part.Shape.Avoided.IsEmpty)
        {
            yield return $"No pods under the part, as asked: {string.Join(", ", job.Part.Shape.Avoided.Select(a => a.Name))}.";
        }
    }

    private static IEnumerable<string> PodTable(Layout layout)
    {
        var rows = layout.Pods.Select((p, i) => (string[])
        [
            LayoutFiling.PodId(i), p.Type.Name + (p.Turned ? ", turned" : ""), "column " + Whole(p.Column + 1),
            "row " + Whole(p.Row + 1), "X " + Mm(p.Centre.X), "Y " + Mm(p.Centre.Y),
            (p.OpenPorts.Length == 1 ? "port " : "ports ") + string.Join(", ", p.OpenPorts.Select(o => o.Name)) + (p.Holds is { } piece ? $"  holds {piece}" : ""),
        ]).ToList();
        return rows.Select(row => "  " + string.Join(
            "  ", row.Select((cell, c) => c == row.Length - 1 ? cell : cell.PadRight(rows.Max(r => r[c].Length)))));
    }

    // What to do with the pods that stand on the board now.
    private static IEnumerable<string> Changes(PlanResult result, Layout layout)
    {
        if (result.Job.Standing is not { } standing)
        {
            yield break;
        }

        var staying = layout.Staying(standing);
        var newOnes = Enumerable.Range(0, layout.Pods.Length).Except(staying).Select(LayoutFiling.PodId).ToList();
        var gone = standing.Pods.Where(p => !staying.Any(i =>
            layout.Pods[i] is var pod && (pod.Type.Name, pod.Turned, pod.Column, pod.Row) == (p.Type, p.Turned, p.Column, p.Row)));
        yield return staying.IsEmpty ? "Of the pods on the board none stays."
            : $"Stay where they stand: {string.Join(", ", staying.Select(LayoutFiling.PodId))}.";
        var takeUp = gone.Select(p => $"{p.Type}{(p.Turned ? ", turned" : "")} at column {Whole(p.Column + 1)}, row {Whole(p.Row + 1)}").ToList();
        yield return takeUp.Count == 0 ? "Take up: none." : $"Take up: {string.Join("; ", takeUp)}.";
        yield return newOnes.Count == 0 ? "Set down: none." : $"Set down: {string.Join(", ", newOnes)}.";
    }

    private static IEnumerable<string> NoLayoutLines(PlanResult result)
    {
        yield return result.Interrupted
            ? $"{Named(result)}: the work was cut short before any layout was found."
            : $"{Named(result)}: no layout is possible as asked.";
        foreach (var line in Asked(result))
        {
            yield return line;
        }

        foreach (var line in Unsupported(result))
        {
            yield return line;
        }

        foreach (var finding in result.Findings.Where(f => f.Kind == FindingKind.NoLayout && f.Code != StretchWords.Told))
        {
            yield return "Cause: " + finding;
        }
    }

    // What was tried, and what it came to.
    private static IEnumerable<string> WaysOut(PlanResult result) => result.WaysOut.IsEmpty ? [] :
    [
        "Ways out, each planned; the same command with --take N makes one of them the plan:",
        .. result.WaysOut.Select((w, i) => $"  {Whole(i + 1)}. {w.Words}: "
            + $"{(w.UnsupportedMm > 0 ? $"{Mm(Math.Ceiling(w.UnsupportedMm))} mm stay unsupported" : "all is supported")}, {Counted(w.Pods, "pod")}"
            + (w.HoldingFactor is { } factor ? $", holding factor {Holding.FactorText.Of(factor)}." : ".")),
    ];

    private static IEnumerable<string> Unsupported(PlanResult result) => result.Unsupported.IsEmpty ? [] :
    [
        .. StretchWords.Of(result, MostStretches).Select(line => "  " + line),
        "Places are in the drawing's coordinates, mm; the numbers are those in the picture.",
    ];

    /// <summary>Where the part lies and how far it reaches, in one sentence.</summary>
    internal static string WhereItLies(PlanResult result, Placement placement)
    {
        var bounds = result.Job.Part.Shape.Outline.Laid(Turn.FromDegrees(placement.AngleDeg), placement.ZeroOnBoard).Bounds;
        return $"Lay the part so that the drawing's zero is at X {Mm(placement.ZeroOnBoard.X)}, Y {Mm(placement.ZeroOnBoard.Y)} mm "
            + $"from the board's datum, turned {placement.AngleDeg.ToString("0.###", CultureInfo.InvariantCulture)} degrees; it then "
            + $"reaches from X {Tenth(bounds.MinX)} to {Tenth(bounds.MaxX)} and from Y {Tenth(bounds.MinY)} to {Tenth(bounds.MaxY)}.";
    }

    /// <summary>A share as whole percent; rounded up, so that nothing looks better than it is.</summary>
    internal static string Percent(double share) => Whole((int)Math.Ceiling(share * 100 - 1e-6)) + " %";

    private static string Named(PlanResult result) => result.Job.Name.Length > 0 ? result.Job.Name : result.Job.Part.Name;

    private static string Counted(int count, string noun) => $"{Whole(count)} {noun}{(count == 1 ? "" : "s")}";

    private static string Whole(int value) => value.ToString(CultureInfo.InvariantCulture);

    private static string Mm(double value) => CsvText.Mm(value);

    private static string Tenth(double value) => Mm(Math.Round(value, 1, MidpointRounding.AwayFromZero));

    private static string Word(Severity severity) => severity switch
    {
        Severity.Mended => "Mended",
        Severity.Warning => "Warning",
        Severity.Refused => "Refused",
        _ => "Note",
    };
}
