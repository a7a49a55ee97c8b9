using System.Collections.Immutable;
using PodLayout.Geometry;

namespace PodLayout.BoardMaking;

/// <summary>Where channels may run, with rows along X: an area, less a disc around each pin.</summary>
/// <param name="Area">Where the middle of a channel may be.</param>
/// <param name="Vacuum">Extent of the table's own grooves.</param>
/// <param name="WidthMm">Width of a channel.</param>
/// <param name="Pins">Middles of the pins, and how far the middle of a channel stays away.</param>
internal sealed record ChannelGround(Box2 Area, Box2 Vacuum, double WidthMm, ImmutableArray<(Point2 At, double AwayMm)> Pins)
{
    private const double SameRowMm = 1e-6;

    /// <summary>Places for a header that are tried: those nearest to the middle of the vacuum lose least.</summary>
    private const int MostHeaders = 12;

    public static ChannelGround Of(BoardRequest request, ZonePart part, bool turned)
    {
        var away = request.Limits.WebMm + request.ChannelWidthMm / 2;
        return new(
            turned ? Turned(part.ChannelArea) : part.ChannelArea,
            turned ? Turned(part.Zone.VacuumExtent) : part.Zone.VacuumExtent,
            request.ChannelWidthMm,
            [.. request.Pins.Select(p => (turned ? ChannelLaying.Turned(p.At) : p.At, away + p.HoleDiameterMm / 2))]);
    }

    /// <summary>A channel for each row, broken where a pin is in the way, led on to the table's vacuum.</summary>
    public ImmutableArray<Run> Rows(ImmutableArray<Point2> ports) =>
        [.. Teeth(ports).Select(ToVacuum).Select(NotTooShort)];

    /// <summary>A channel for each row, and a header across at each place where it may be.</summary>
    public IEnumerable<ImmutableArray<Run>> Combs(ImmutableArray<Point2> ports)
    {
        var teeth = Teeth(ports);
        double[] columns = [.. ports.Select(p => p.X).Distinct().Order()];
        double[] places =
        [
            .. columns,
            .. columns.Zip(columns.Skip(1), (a, b) => (a + b) / 2),
            Math.Clamp(Vacuum.Centre.X, Area.MinX, Area.MaxX),
        ];
        var found = 0;
        foreach (var x in places.Distinct().OrderBy(x => Math.Round(Math.Abs(x - Vacuum.Centre.X), 6)).ThenBy(x => x))
        {
            if (found == MostHeaders)
            {
                yield break;
            }

            var (low, high) = (teeth.Min(t => t.From.Y), teeth.Max(t => t.From.Y));
            Run header = new(new(x, low), new(x, high));
            if (!header.Box.Touches(Vacuum) && x >= Vacuum.MinX && x <= Vacuum.MaxX)
            {
                // No row lies over the vacuum: the header is led there.
                header = low > Vacuum.MaxY
                    ? header with { From = new(x, Math.Max(Area.MinY, Vacuum.MaxY - WidthMm)) }
                    : header with { To = new(x, Math.Min(Area.MaxY, Vacuum.MinY + WidthMm)) };
            }

            if (Pins.Any(p => header.DistanceTo(p.At) < p.AwayMm - 1e-9))
            {
                continue;
            }

            found++;
            yield return [.. teeth.Select(t => NotTooShort(Reaching(t, x))), NotTooShort(header)];
        }

        if (found == 0)
        {
            // A comb without a header is what can be laid; the check says what is not joined.
            yield return [.. teeth.Select(NotTooShort)];
        }
    }

    private ImmutableArray<Run> Teeth(ImmutableArray<Point2> ports)
    {
        var runs = ImmutableArray.CreateBuilder<Run>();
        Point2? last = null;
        foreach (var port in ports.OrderBy(p => RowOf(p.Y)).ThenBy(p => p.X))
        {
            if (last is { } before && Math.Abs(before.Y - port.Y) < SameRowMm && IsOpen(new(before, new(port.X, before.Y))))
            {
                runs[^1] = runs[^1] with { To = new(port.X, before.Y) };
                last = new(port.X, before.Y);
            }
            else
            {
                runs.Add(new(port, port));
                last = port;
            }
        }

        return runs.ToImmutable();
    }

    // Steps of about a ten-thousandth of a millimetre that begin at no round number of mm or inches: a row is never parted by
    // the rounding of sums.
    private static double RowOf(double y) => Math.Floor(y * 9973.1 + 0.317);

    // Along its own row, to the table's vacuum when the row runs over it at all.
    private Run ToVacuum(Run row) => row.From.Y < Vacuum.MinY || row.From.Y > Vacuum.MaxY
        ? row
        : row.From.X > Vacuum.MaxX ? Reaching(row, Math.Max(Vacuum.MaxX - WidthMm, Vacuum.MinX))
        : row.To.X < Vacuum.MinX ? Reaching(row, Math.Min(Vacuum.MinX + WidthMm, Vacuum.MaxX))
        : row;

    private Run Reaching(Run row, double x)
    {
        var longer = new Run(row.From with { X = Math.Min(row.From.X, x) }, row.To with { X = Math.Max(row.To.X, x) });
        return IsOpen(longer) && Area.Grow(1e-9).Contains(longer.Box) ? longer : row;
    }

    // A single port still needs a slot that the tool can be fed along, and that lies over more than one spot of the table.
    private Run NotTooShort(Run run)
    {
        if (run.LengthMm >= WidthMm)
        {
            return run;
        }

        var half = new Point2(WidthMm / 2, 0);
        Run both = new(run.From - half, run.To + half), right = new(run.From, run.To + half + half), left = new(run.From - half - half, run.To);
        return run.IsAlongX
            ? new[] { both, right, left }.Where(r => Area.Grow(1e-9).Contains(r.Box) && IsOpen(r)).DefaultIfEmpty(run).First()
            : run;
    }

    private bool IsOpen(Run run) => Pins.All(p => run.DistanceTo(p.At) >= p.AwayMm - 1e-9);

    private static Box2 Turned(Box2 b) => new(b.MinY, b.MinX, b.MaxY, b.MaxX);
}
