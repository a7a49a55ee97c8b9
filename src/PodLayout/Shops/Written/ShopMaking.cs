using PodLayout.Findings;
using PodLayout.Geometry;
using PodLayout.JsonFiles;

namespace PodLayout.Shops.Written;

/// <summary>From the written shop to the checked one: what no schema can say (what must divide what, what must lie in what).</summary>
internal static class ShopMaking
{
    /// <summary>More grooves than this one way are a slip of the pitch, and would only cost time.</summary>
    private const int MostGrooves = 2000;

    public static Outcome<Shop> From(WrittenShop written, FileRefusals refusals) =>
        Board(written.Board, refusals).Then(board => Shop(written, board, refusals));

    private static Outcome<Shop> Shop(WrittenShop written, GridBoard board, FileRefusals refusals)
    {
        List<PodType> pods = [];
        for (var i = 0; i < written.Pods.Length; i++)
        {
            var pod = PodMaking.From(written.Pods[i], JsonWords.Child("$.pods", i), board, refusals);
            if (!pod.Succeeded)
            {
                return Outcome<Shop>.Refuse(pod.Findings);
            }

            pods.Add(pod.Value);
        }

        return PodMaking.WrongTogether(pods, refusals) is { } finding
            ? Outcome<Shop>.Refuse(finding)
            : VacuumMaking.Into(
                new Shop(written.Name, board, [.. PodMaking.Levelled(pods)], written.PodGapMm)
                {
                    Zones = [.. (written.Making?.Table.Zones ?? []).Select(z => new ValveZone(
                        z.Name, new(z.Area.MinXMm, z.Area.MinYMm, z.Area.MaxXMm, z.Area.MaxYMm)))],
                    WorksInInches = refusals.Inches.Contains("$.board.widthIn"),
                },
                written, refusals);
    }

    private static Outcome<GridBoard> Board(WrittenBoard written, FileRefusals refusals)
    {
        var larger = Math.Max(written.WidthMm, written.LengthMm);
        if (larger / written.PitchMm > MostGrooves)
        {
            return Outcome<GridBoard>.Refuse(refusals.At(
                "pitch-too-small",
                "$.board.pitchMm",
                $"found {JsonWords.Number(written.PitchMm)} mm on a board of {JsonWords.Number(larger)} mm: more than {JsonWords.Number(MostGrooves)} grooves.",
                "Give the distance from groove to groove in millimetres."));
        }

        if (written.GrooveWidthMm >= written.PitchMm)
        {
            return Outcome<GridBoard>.Refuse(refusals.At(
                "groove-too-wide",
                "$.board.grooveWidthMm",
                $"found {JsonWords.Number(written.GrooveWidthMm)} mm at a pitch of {JsonWords.Number(written.PitchMm)} mm: no land is left between the grooves.",
                "Give the width of one groove, less than the pitch."));
        }

        var (usable, wrongArea) = UsableArea(written, refusals);
        if (wrongArea is not null)
        {
            return Outcome<GridBoard>.Refuse(wrongArea);
        }

        var board = new GridBoard(
            written.Name,
            written.WidthMm,
            written.LengthMm,
            written.PitchMm,
            written.GrooveWidthMm,
            written.GrooveDepthMm,
            new(Reduced(written.LatticeOriginMm.X, written.PitchMm), Reduced(written.LatticeOriginMm.Y, written.PitchMm)),
            usable,
            [],
            written.Ports.DiameterMm,
            written.Ports.MarginMm,
            []);
        return Obstacles(written, board, refusals).Then(withObstacles => PortMaking.On(withObstacles, written.Ports, refusals));
    }

    private static (Box2 Area, Finding? Refusal) UsableArea(WrittenBoard written, FileRefusals refusals)
    {
        Box2 whole = new(0, 0, written.WidthMm, written.LengthMm);
        if (written.UsableArea is { } area)
        {
            if (written.UsableMarginMm is not null)
            {
                return (whole, refusals.At(
                    "usable-area-twice", "$.board.usableMarginMm", "the usable area is given twice.", "Keep either usableArea or usableMarginMm."));
            }

            Box2 box = new(area.MinXMm, area.MinYMm, area.MaxXMm, area.MaxYMm);
            return (box, AreaMaking.NoArea(box, "$.board.usableArea", refusals) ?? (whole.Contains(box) ? null : refusals.At(
                "usable-area-off-board",
                "$.board.usableArea",
                $"found {AreaMaking.Said(box)}, which reaches beyond the board (0, 0) to ({JsonWords.Number(written.WidthMm)}, {JsonWords.Number(written.LengthMm)}).",
                "Keep it inside the board, or mend the board's size.")));
        }

        var margin = written.UsableMarginMm ?? 0;
        var inner = whole.Grow(-margin);
        return (inner, inner.Width > 0 && inner.Height > 0 ? null : refusals.At(
            "usable-area-empty",
            "$.board.usableMarginMm",
            $"found {JsonWords.Number(margin)} mm, which leaves nothing of a board of {JsonWords.Number(written.WidthMm)} x {JsonWords.Number(written.LengthMm)} mm.",
            "Give a smaller margin."));
    }

    private static Outcome<GridBoard> Obstacles(WrittenBoard written, GridBoard board, FileRefusals refusals)
    {
        List<Obstacle> obstacles = [];
        for (var i = 0; i < written.Obstacles.Length; i++)
        {
            var (said, path) = (written.Obstacles[i], JsonWords.Child("$.board.obstacles", i));
            var (shape, refusal) = AreaMaking.Of("one obstacle", said.CentreMm, said.DiameterMm, said.Area, path, refusals);
            if (shape is null)
            {
                return Outcome<GridBoard>.Refuse(refusal!);
            }

            obstacles.Add(new(said.Name, Enum.Parse<ObstacleKind>(said.Kind.ToString()), shape, said.ClearanceMm));
        }

        return Outcome<GridBoard>.Of(board with { Obstacles = [.. obstacles] });
    }

    internal static string Members(params (string Name, bool Given)[] members)
    {
        var given = members.Where(m => m.Given).Select(m => m.Name).ToArray();
        return given.Length == 0 ? $"none of {string.Join(", ", members.Select(m => m.Name))}" : "only or together " + string.Join(", ", given);
    }

    /// <summary>The same groove line, moved by whole pitches into the first pitch.</summary>
    private static double Reduced(double value, double pitchMm)
    {
        var reduced = value - Math.Floor(value / pitchMm) * pitchMm;

        // A hair below a whole pitch (or the rounding of the line above) is the groove at zero.
        return reduced >= pitchMm - 1e-9 * pitchMm || reduced <= 1e-9 * pitchMm ? 0 : reduced;
    }
}
