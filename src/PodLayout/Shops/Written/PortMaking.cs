using System.Collections.Immutable;
using System.Globalization;
using PodLayout.Findings;
using PodLayout.Geometry;
using PodLayout.JsonFiles;

namespace PodLayout.Shops.Written;

/// <summary>Puts the ports on the board: lattice and list, names, and the states the shop marked.</summary>
internal static class PortMaking
{
    private const string PortsPath = "$.board.ports";

    /// <summary>More ports than this are a slip of the spacing.</summary>
    private const int MostPorts = 100_000;

    /// <summary>A mark by place means the port whose centre is this near, mm: a ruler's reading.</summary>
    private const double MarkReachMm = 1;

    public static Outcome<GridBoard> On(GridBoard board, WrittenPorts written, FileRefusals refusals)
    {
        List<(Point2 At, string? Name, string Path)> made = [];
        if (written.Lattice is { } lattice)
        {
            var spacing = lattice.SpacingMm.Both;
            if (board.WidthMm / spacing.X * (board.LengthMm / spacing.Y) > MostPorts)
            {
                return Refuse(refusals.At(
                    "ports-too-many",
                    PortsPath + ".lattice.spacingMm",
                    $"found ({JsonWords.Number(spacing.X)}, {JsonWords.Number(spacing.Y)}) mm: more than {JsonWords.Number(MostPorts)} ports on this board.",
                    "Give the distance from port to port in millimetres."));
            }

            made.AddRange(OnLattice(board, spacing, lattice.FirstMm).Select(at => (at, (string?)null, PortsPath + ".lattice")));
        }

        for (var i = 0; i < written.List.Length; i++)
        {
            var path = JsonWords.Child(PortsPath + ".list", i);
            if (!OnBoard(board, written.List[i].AtMm))
            {
                return Refuse(refusals.At(
                    "port-off-board",
                    path + ".atMm",
                    $"found {Said(written.List[i].AtMm)}; the hole reaches beyond the board's {JsonWords.Number(board.WidthMm)} x {JsonWords.Number(board.LengthMm)} mm.",
                    "Give board coordinates from the lower left corner, or take the port out."));
            }

            made.Add((written.List[i].AtMm, written.List[i].Name, path));
        }

        if (made.Select(p => OnGroove(board, p.At, p.Path, refusals)).FirstOrDefault(f => f is not null) is { } groove)
        {
            return Refuse(groove);
        }

        return Named(board, made, refusals, out var ports) is { } twice ? Refuse(twice) : Marked(board, ports, written, refusals);
    }

    private static IEnumerable<Point2> OnLattice(GridBoard board, Point2 spacing, Point2 first)
    {
        // Counted from the given port, so that far ports carry no summed rounding.
        var (fromX, toX) = (Math.Ceiling(-first.X / spacing.X), Math.Floor((board.WidthMm - first.X) / spacing.X));
        var (fromY, toY) = (Math.Ceiling(-first.Y / spacing.Y), Math.Floor((board.LengthMm - first.Y) / spacing.Y));
        for (var row = fromY; row <= toY; row++)
        {
            for (var column = fromX; column <= toX; column++)
            {
                Point2 at = new(first.X + column * spacing.X, first.Y + row * spacing.Y);
                if (OnBoard(board, at))
                {
                    yield return at;
                }
            }
        }
    }

    private static bool OnBoard(GridBoard board, Point2 at) =>
        new Box2(0, 0, board.WidthMm, board.LengthMm).Grow(-board.PortDiameterMm / 2).Contains(at);

    private static Finding? OnGroove(GridBoard board, Point2 at, string path, FileRefusals refusals)
    {
        var toX = ToGroove(at.X - board.FirstGroove.X, board.PitchMm);
        var toY = ToGroove(at.Y - board.FirstGroove.Y, board.PitchMm);
        var needed = board.GrooveWidthMm / 2 + board.PortDiameterMm / 2;
        var least = Math.Min(toX, toY);
        return least >= needed - 1e-6 ? null : refusals.At(
            "port-on-groove",
            path,
            $"the port at {Said(at)} is {JsonWords.Number(least)} mm from the middle of a groove; a port of {JsonWords.Number(board.PortDiameterMm)} mm needs {JsonWords.Number(needed)} mm to lie whole in a land between grooves of {JsonWords.Number(board.GrooveWidthMm)} mm.",
            needed > board.PitchMm / 2
                ? "No port of this diameter fits between the grooves: mend $.board.ports.diameterMm, grooveWidthMm or pitchMm."
                : $"Move the port to the middle of a land, for instance {Said(MiddleOfCell(board, at))}, or mend $.board.latticeOriginMm.");
    }

    private static double ToGroove(double fromFirstMm, double pitchMm) =>
        Math.Abs(fromFirstMm - Math.Round(fromFirstMm / pitchMm) * pitchMm);

    private static (int Column, int Row) Cell(GridBoard board, Point2 at) => (
        (int)Math.Floor((at.X - board.FirstGroove.X) / board.PitchMm),
        (int)Math.Floor((at.Y - board.FirstGroove.Y) / board.PitchMm));

    private static Point2 MiddleOfCell(GridBoard board, Point2 at)
    {
        var (column, row) = Cell(board, at);
        return new(board.ColumnXMm(column) + board.PitchMm / 2, board.RowYMm(row) + board.PitchMm / 2);
    }

    /// <summary>Gives each port its name and puts them in order of row, then column.</summary>
    private static Finding? Named(
        GridBoard board, List<(Point2 At, string? Name, string Path)> made, FileRefusals refusals, out List<Port> ports)
    {
        ports = [];
        Dictionary<string, Point2> taken = new(StringComparer.OrdinalIgnoreCase);
        Dictionary<(long X, long Y), List<Port>> squares = [];
        var ordered = made
            .OrderBy(p => Cell(board, p.At).Row).ThenBy(p => Cell(board, p.At).Column)
            .ThenBy(p => p.At.Y).ThenBy(p => p.At.X).ToArray();
        foreach (var given in ordered.Where(p => p.Name is not null))
        {
            if (!taken.TryAdd(given.Name!, given.At))
            {
                return refusals.At("port-name-twice", given.Path + ".name", $"found \"{given.Name}\", the name of two ports.", "Give each port a name of its own.");
            }
        }

        foreach (var (at, given, path) in ordered)
        {
            if (Overlapping(squares, at, board.PortDiameterMm) is { } near)
            {
                return refusals.At(
                    "ports-overlap",
                    path,
                    $"the ports at {Said(near.Centre)} and {Said(at)} overlap (diameter {JsonWords.Number(board.PortDiameterMm)} mm).",
                    "Take one of them out, or mend their places.");
            }

            Port port = new(given ?? FreeName(board, at, taken), at, PortState.Working);
            ports.Add(port);
            var square = SquareOf(at, board.PortDiameterMm);
            squares[square] = [.. squares.GetValueOrDefault(square, []), port];
        }

        return null;
    }

    /// <summary>A port whose hole runs into one here. Squares as wide as a port, so that only nine need a look.</summary>
    private static Port? Overlapping(Dictionary<(long X, long Y), List<Port>> squares, Point2 at, double diameterMm)
    {
        var (x, y) = SquareOf(at, diameterMm);
        return (from dx in Enumerable.Range(-1, 3)
                from dy in Enumerable.Range(-1, 3)
                from port in squares.GetValueOrDefault((x + dx, y + dy), [])
                where (port.Centre - at).Length < diameterMm - 1e-9
                select port).FirstOrDefault();
    }

    private static (long X, long Y) SquareOf(Point2 at, double sideMm) =>
        ((long)Math.Floor(at.X / sideMm), (long)Math.Floor(at.Y / sideMm));

    private static string FreeName(GridBoard board, Point2 at, Dictionary<string, Point2> taken)
    {
        var (column, row) = Cell(board, at);
        var cell = string.Create(CultureInfo.InvariantCulture, $"{column + 1}-{row + 1}");
        var name = cell;

        // Several ports in one cell: 5-3, 5-3b, 5-3c.
        for (var letter = 'b'; !taken.TryAdd(name, at); letter++)
        {
            name = letter <= 'z' ? cell + letter : string.Create(CultureInfo.InvariantCulture, $"{cell}-{letter - 'a' + 1}");
        }

        return name;
    }

    private static Outcome<GridBoard> Marked(GridBoard board, List<Port> ports, WrittenPorts written, FileRefusals refusals)
    {
        var marks = written.Missing.Select((mark, i) => (mark, path: JsonWords.Child(PortsPath + ".missing", i), state: (PortState?)null))
            .Concat(written.Dead.Select((mark, i) => (mark, path: JsonWords.Child(PortsPath + ".dead", i), state: (PortState?)PortState.Dead)))
            .Concat(written.StuckOpen.Select((mark, i) => (mark, path: JsonWords.Child(PortsPath + ".stuckOpen", i), state: (PortState?)PortState.StuckOpen)));
        var states = ports.ToDictionary(p => p.Name, _ => (State: (PortState?)PortState.Working, Path: (string?)null), StringComparer.OrdinalIgnoreCase);
        foreach (var (mark, path, state) in marks)
        {
            var port = mark switch
            {
                WrittenPortMark.Named named => ports.Find(p => string.Equals(p.Name, named.Name, StringComparison.OrdinalIgnoreCase)),
                WrittenPortMark.Placed placed => ports.Where(p => (p.Centre - placed.AtMm).Length <= MarkReachMm).MinBy(p => (p.Centre - placed.AtMm).Length),
                _ => null,
            };
            if (port is null)
            {
                return Refuse(NoSuchPort(mark, path, ports, refusals));
            }

            if (states[port.Name].Path is { } earlier)
            {
                return Refuse(refusals.At(
                    "port-marked-twice", path, $"port {port.Name} is marked here and at {earlier}.", "Keep one of the two marks."));
            }

            states[port.Name] = (state, path);
        }

        ImmutableArray<Port> left =
            [.. ports.Where(p => states[p.Name].State is not null).Select(p => p with { State = states[p.Name].State!.Value })];
        return left.Any(p => p.State == PortState.Working)
            ? Outcome<GridBoard>.Of(board with { Ports = left })
            : Refuse(refusals.At(
                "ports-none",
                PortsPath,
                "there is no working port on the board; expected at least one.",
                "Give a lattice or a list of ports that lie on the board."));
    }

    private static Finding NoSuchPort(WrittenPortMark mark, string path, List<Port> ports, FileRefusals refusals)
    {
        var (found, near) = mark switch
        {
            WrittenPortMark.Named named => ($"\"{named.Name}\"", NearestName.To(named.Name, ports.Select(p => p.Name))),
            WrittenPortMark.Placed placed => (Said(placed.AtMm), ports.MinBy(p => (p.Centre - placed.AtMm).Length) is { } p ? $"{p.Name} at {Said(p.Centre)}" : null),
            _ => throw new InvalidOperationException("Unknown mark."),
        };
        return refusals.At(
            "port-unknown",
            path,
            $"found {found}, but no port is called so or lies there.",
            near is null ? "Names are column and row of the groove cell, counted from 1." : $"The nearest is {near}.");
    }

    private static string Said(Point2 p) => $"({JsonWords.Number(p.X)}, {JsonWords.Number(p.Y)}) mm";

    private static Outcome<GridBoard> Refuse(Finding finding) => Outcome<GridBoard>.Refuse(finding);
}
