using System.Collections.Immutable;
using System.Globalization;
using PodLayout.Cuts;
using PodLayout.Geometry;
using PodLayout.Jobs;
using PodLayout.Layouts;
using PodLayout.Programs;
using PodLayout.Shops;

namespace PodLayout.Handover.Setup;

/// <summary>How the part is laid down, and what the machine is told about it.</summary>
internal static class PartSteps
{
    public static IEnumerable<CardSection> Of(PlanResult result, Layout layout, Laying laying, CardUnit unit) =>
    [
        new("laying", $"Lay the {laying.Thing}", [.. Lay(result, layout, laying, unit)]),
        new("heights", "Heights and work offset", [.. Heights(result.Job, layout, unit)]),
    ];

    private static IEnumerable<CardBlock> Lay(PlanResult result, Layout layout, Laying laying, CardUnit unit)
    {
        var (board, bounds, thing) = (result.Job.Shop.Board, laying.Bounds, laying.Thing);
        yield return new CardBlock.Words(
            $"Put the {thing} down within {unit.AtMost(Tolerances.PlacingMm)} of these figures: the pods were chosen for what lies no farther off. "
                + $"It reaches from {Extent(bounds, unit)}.");
        if (laying.IsBlank)
        {
            var placement = layout.Placement;
            var part = result.Job.Part.Shape.Outline.Laid(Turn.FromDegrees(placement.AngleDeg), placement.ZeroOnBoard).Bounds;
            yield return new CardBlock.Words(
                $"These are the edges of the blank, the broken line in the picture. The part that is cut out of it reaches from {Extent(part, unit)}.", IsStrong: true);
        }
        else
        {
            // Files of before the blank was filed have the note alone.
            foreach (var blank in result.Findings.Where(f => f.Code == Offcuts.BlankBeyondPart))
            {
                yield return new CardBlock.Words(unit.Words(blank.Message), IsStrong: true);
            }
        }

        yield return new CardBlock.Words($"Check at each mark only the figure given. {string.Join(' ', Examples(laying, board, unit))}");
        string Given(bool counts, string figure) => counts ? figure : "-";
        yield return new CardBlock.Table(
            $"Marks on the {thing}'s edge", "Fits",
            ["Mark", "What", $"X {unit.Name}", $"Y {unit.Name}", $"Column\u00a0+\u00a0{unit.Name}", $"Row\u00a0+\u00a0{unit.Name}"],
            [
                .. laying.Marks.Select(m => new CardRow("L" + m.Name,
                [
                    m.Name, m.What, Given(m.XCounts, unit.Edge(m.At.X)), Given(m.YCounts, unit.Edge(m.At.Y)),
                    Given(m.XCounts, unit.Grooves(m.At.X, board.FirstGroove.X, board)), Given(m.YCounts, unit.Grooves(m.At.Y, board.FirstGroove.Y, board)),
                ])),
            ])
        {
            LeadsOn = true,
        };
        yield return laying.Gaps.IsEmpty
            ? new CardBlock.Words($"None of the pins and stops among the obstacles of the shop file lies within {unit.LengthAndUnit(Laying.NearMm)} of the {thing}.")
            : new CardBlock.Words($"Pins and stops within {unit.LengthAndUnit(Laying.NearMm)} of the {thing}'s edge:");
        if (!laying.Gaps.IsEmpty)
        {
            yield return new CardBlock.Table(
                $"Pins and stops near the {thing}'s edge", null, ["Pin or stop", $"Gap {unit.Name}", $"Edge at X {unit.Name}", $"Edge at Y {unit.Name}", "Kind"],
                [
                    .. laying.Gaps.Select((g, i) => new CardRow($"G{CsvText.Count(i + 1)}",
                    [
                        g.Stop.Name, g.GapMm <= Tolerances.ContactMm ? "touches" : unit.Edge(g.GapMm), unit.Edge(g.At.X), unit.Edge(g.At.Y),
                        (g.Stop.Kind == ObstacleKind.Pin ? "pin" : "stop") + (g.IsUnder ? $", under the {thing}" : ""),
                    ])),
                ]);
        }
    }

    private static string Extent(Box2 box, CardUnit unit) =>
        $"X {unit.Edge(box.MinX)} to {unit.Edge(box.MaxX)} and from Y {unit.Edge(box.MinY)} to {unit.Edge(box.MaxY)} {unit.Name}";

    // How to count, on the first figures of the table itself: past a groove, and before the first one where that occurs.
    private static IEnumerable<string> Examples(Laying laying, GridBoard board, CardUnit unit)
    {
        var figures = laying.Marks.SelectMany(m => new[]
        {
            m.XCounts ? unit.Grooves(m.At.X, board.FirstGroove.X, board) : "", m.YCounts ? unit.Grooves(m.At.Y, board.FirstGroove.Y, board) : "",
        }).ToList();
        foreach (var (sign, side) in new[] { (" + ", "past"), (" - ", "before") })
        {
            if (figures.Find(f => f.Contains(sign, StringComparison.Ordinal)) is { } figure)
            {
                var parts = figure.Split(sign);
                yield return $"\"{figure}\" is {parts[1]} {unit.Name} {side} groove {parts[0]}, counted from the datum.";
            }
        }
    }

    private static IEnumerable<CardBlock> Heights(Job job, Layout layout, CardUnit unit)
    {
        var height = layout.Pods[0].Type.HeightMm;
        var (thickness, placement) = (job.Part.ThicknessMm, layout.Placement);
        var turn = Turn.FromDegrees(placement.AngleDeg);
        ImmutableArray<(string, string)> overBoard =
        [
            ("Pod face over the board's face", unit.LengthAndUnit(height)),
            ("Part's upper face over the board's face", unit.LengthAndUnit(height + thickness)),
        ];
        if (job.ProgramZero is not { } zero)
        {
            yield return new CardBlock.Facts(
            [
                .. overBoard,
                ("Zero of the part's drawing on the board", unit.Place(placement.ZeroOnBoard)),
                ("Part turned", Degrees(placement.AngleDeg)),
                ("Program", "none named in the job: where its zero lies is not known here"),
                ("Work offset as set", ""),
            ]);
            yield break;
        }

        var setting = new ProgramSetting(ImmutableSortedDictionary<int, Tool>.Empty, zero.Z, thickness, height, 0, zero.InDrawing);
        yield return new CardBlock.Facts(
        [
            .. overBoard,
            ("Program", zero.File + (zero.IsInInches is { } inches ? inches ? ", in inches" : ", in millimetres" : "")),
            ("Program's X and Y zero, from the datum", unit.Place(turn.Apply(zero.InDrawing) + placement.ZeroOnBoard)),
            ("Program's Z zero", zero.Z switch
            {
                ZZero.PartFace => "on the part's upper face",
                ZZero.PartUnderside => "on the part's underside",
                ZZero.PodFace => "on the pods' face",
                _ => "on the board's face",
            }),
            ("Z of the part's upper face", OnControl(setting.FaceZMm, zero, unit)),
            ("Z of the pod face", OnControl(setting.UndersideZMm, zero, unit)),
            ("Z of the board's face", OnControl(setting.BoardZMm, zero, unit)),
            ("Part turned", Degrees(placement.AngleDeg)),
            ("Work offset as set", ""),
        ]);
        if (!zero.Tools.IsEmpty)
        {
            yield return new CardBlock.Words("The tools that the program moves, each with the deepest Z that the control shows for it.");
            ImmutableArray<CardUnit> units = IsOther(zero, unit) ? [Other(unit), unit] : [unit];
            yield return new CardBlock.Table(
                "Tools of the program", "Set", ["Tool", $"Diameter {unit.Name}", .. units.Select(u => $"Deepest Z {u.Name}")],
                [
                    .. zero.Tools.Select(t => new CardRow($"T{CsvText.Count(t.Number)}",
                        [$"tool {CsvText.Count(t.Number)}", unit.Length(t.DiameterMm), .. units.Select(u => u.Length(t.DeepestZMm))])),
                ]);
        }

        if (placement.AngleDeg % 360 != 0)
        {
            yield return new CardBlock.Words(
                $"The part lies turned by {Degrees(placement.AngleDeg)}: the program has to be turned by as much about its zero, or it cuts beside the part.", IsStrong: true);
        }
    }

    // The control shows the program's unit, which may be another than the card's, or is not known.
    private static bool IsOther(ProgramZero zero, CardUnit unit) => zero.IsInInches is { } inches ? inches != unit.InInches : unit.InInches;

    private static CardUnit Other(CardUnit unit) => new(!unit.InInches);

    private static string OnControl(double zMm, ProgramZero zero, CardUnit unit) =>
        IsOther(zero, unit) ? $"{Other(unit).LengthAndUnit(zMm)} ({unit.LengthAndUnit(zMm)})" : unit.LengthAndUnit(zMm);

    private static string Degrees(double degrees) =>
        degrees.ToString("0.###", CultureInfo.InvariantCulture) + " degrees" + (degrees == 0 ? "" : " counter-clockwise");
}
