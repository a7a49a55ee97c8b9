using System.Collections.Immutable;
using System.Globalization;
using PodLayout.Geometry;
using PodLayout.Jobs;
using PodLayout.Parts;

namespace PodLayout.Forces;

/// <summary>A cutter in the part's wood, with all that is not said of it filled in.</summary>
internal sealed class CutterCut
{
    /// <summary>The cutter that is taken where nothing is said: common practice, no source.</summary>
    public const double UsualDiameterMm = 12;

    private const int UsualFlutes = 2;
    private const double UsualRpm = 18_000;
    private const double UsualFeedMmPerMin = 6000;
    private const double UsualHelixDeg = 30;

    // Where a withdrawn or breaking-through drill lifts, as a share of its thrust; from memory.
    private const double LiftShare = 0.5;

    private readonly CutterSetup _setup;
    private readonly Part _part;
    private readonly Point2 _grain;
    private readonly Dictionary<(int Sector, int Side, double ChipMm), Milling.PerMm> _known = [];

    private readonly Dictionary<(int Sector, int Side, double ChipMm, double DepthMm), CutForces> _profiled = [];

    // Feeds of a sector are told by those at its two edges.
    private const double SectorDeg = 3;

    public CutterCut(CutterSetup setup, double diameterMm, Part part)
    {
        (_setup, _part, DiameterMm) = (setup, part, diameterMm);
        _grain = Turn.FromDegrees(part.GrainDeg).Apply(new(1, 0));
        WidthMm = Math.Min(setup.WidthMm ?? diameterMm, diameterMm);
        PassDepthMm = Math.Min(setup.PassDepthMm ?? diameterMm, part.ThicknessMm);
    }

    /// <summary>Its diameter, mm.</summary>
    public double DiameterMm { get; }

    /// <summary>Width of wood that it takes, mm.</summary>
    public double WidthMm { get; }

    /// <summary>Depth that a pass takes, mm, where nothing else tells.</summary>
    public double PassDepthMm { get; }

    /// <summary>Depth that a pass takes, mm, where the job says so.</summary>
    public double? StatedPassDepthMm => _setup.PassDepthMm;

    /// <summary>Width of wood that it takes, mm, where the job says so.</summary>
    public double? StatedWidthMm => _setup.WidthMm;

    /// <summary>Whether its forces are worked out from its cut, and not given.</summary>
    public bool IsWorkedOut => _setup.TangentialN is null;

    /// <summary>The feed that is reckoned with where a program names none, mm a minute.</summary>
    public double FeedMmPerMin => _setup.FeedMmPerMin ?? UsualFeedMmPerMin;

    /// <summary>The spindle speed that is reckoned with where a program names none, revolutions a minute.</summary>
    public double SpindleRpm => _setup.SpindleRpm ?? UsualRpm;

    private int Flutes => _setup.Flutes ?? UsualFlutes;

    private double HelixDeg => _setup.Helix == CutterHelix.Straight ? 0 : _setup.HelixDeg ?? UsualHelixDeg;

    /// <summary>Feed for each cutting edge, mm.</summary>
    public double ChipMm(double feedMmPerMin, double rpm) => feedMmPerMin / (rpm * Flutes);

    /// <summary>The forces of a horizontal cut.</summary>
    /// <param name="feed">Unit vector of the feed, or null for any direction.</param>
    /// <param name="side">1 where the wood lies to the left of the feed, -1 to the right, 0 where that is not known.</param>
    /// <param name="chipMm">Feed for each cutting edge.</param>
    /// <param name="depthMm">Depth of the cut.</param>
    /// <param name="plungeMm">Feed downwards for each cutting edge, mm; 0 for none.</param>
    public CutForces Along(Point2? feed, int side, double chipMm, double depthMm, double plungeMm = 0)
    {
        var thrust = plungeMm > 0 ? Plunge(plungeMm).Thrust : 0;
        if (_setup.TangentialN is { } given)
        {
            return Given(feed, given, thrust);
        }

        // Chips are told apart to a tenth of a per mille, upwards.
        chipMm = Math.Ceiling(chipMm * 1e7) / 1e7;
        var sector = feed is { } f ? Sector(f) : -1;
        if (!_known.TryGetValue((sector, side, chipMm), out var perMm))
        {
            _known[(sector, side, chipMm)] = perMm = PerMm(sector, side, chipMm);
        }

        var axial = perMm.TangentialN * depthMm * Math.Tan(HelixDeg * Math.PI / 180);
        var (down, up) = Axial(axial);
        return CutForces.Of(
            [.. perMm.Corners.Select(c => c * depthMm)], perMm.PeakN * depthMm, down - thrust, up, perMm.LeastPeakN * depthMm);
    }

    /// <summary>
    /// The forces along a finished line: in the direction of milling that is stated, or in both where none is.
    /// </summary>
    /// <param name="feed">Unit vector along the line.</param>
    /// <param name="side">1 where the finished line, and the wood that stays, lies to the left of it, -1 to the right, 0 where the tool is on it.</param>
    /// <param name="chipMm">Feed for each cutting edge.</param>
    /// <param name="depthMm">Depth of the cut.</param>
    public CutForces Profiled(Point2 feed, int side, double chipMm, double depthMm)
    {
        var key = (Sector(feed), side, chipMm, depthMm);
        if (_setup.TangentialN is null && _profiled.TryGetValue(key, out var known))
        {
            return known;
        }

        // With the wood to the right the teeth go against the feed: climb.
        CutForces onward = Along(feed, side, chipMm, depthMm), back = Along(feed * -1, -side, chipMm, depthMm);
        return _profiled[key] = (side, _setup.Milling) switch
        {
            (0, _) or (_, null) => onward.And(back),
            ( < 0, MillingDirection.Climb) or ( > 0, MillingDirection.Conventional) => onward,
            _ => back,
        };
    }

    /// <summary>The forces of a tool that goes straight down.</summary>
    /// <param name="plungeMm">Feed for each cutting edge, mm.</param>
    public CutForces Down(double plungeMm)
    {
        if (_setup.TangentialN is { } given)
        {
            return Given(null, given, 0);
        }

        var (tooth, thrust, least) = Plunge(plungeMm);
        // One edge's force is not balanced by the others' where the wood is uneven: in any direction.
        return CutForces.Of(AllAround(tooth), tooth, -thrust, LiftShare * thrust, least);
    }

    /// <summary>What it is, in words.</summary>
    public string Words => _setup.TangentialN is { } given
        ? string.Create(CultureInfo.InvariantCulture, $"{DiameterMm:0.##} mm cutter with {given:0.#} N along the cut, as given")
        : string.Create(CultureInfo.InvariantCulture, $"{DiameterMm:0.##} mm cutter, {Flutes} flutes{HelixWords}");

    private string HelixWords => _setup.Helix switch
    {
        CutterHelix.Straight => ", straight",
        CutterHelix.UpCut => ", up-cut",
        CutterHelix.DownCut => ", down-cut",
        CutterHelix.Compression => ", compression",
        _ => "",
    };

    /// <summary>What was filled in, one sentence; null where nothing was.</summary>
    public string? Assumed(bool fromProgram)
    {
        if (_setup.TangentialN is not null)
        {
            return null;
        }

        List<string> filled = [];
        Add(_setup.Flutes is null, $"{Flutes} flutes");
        Add(_setup.Helix is null, $"flutes that push up or down at {HelixDeg:0.#} degrees");
        Add(_setup.SpindleRpm is null && !fromProgram, $"{SpindleRpm:0} rpm");
        Add(_setup.FeedMmPerMin is null && !fromProgram, $"{FeedMmPerMin / 1000:0.###} m/min");
        Add(_setup.PassDepthMm is null && !fromProgram, $"passes {PassDepthMm:0.##} mm deep");
        Add(_setup.WidthMm is null, $"wood over the whole width of the cutter");
        return filled.Count == 0 ? null
            : string.Create(CultureInfo.InvariantCulture, $"The {DiameterMm:0.##} mm cutter{(fromProgram ? " of the program" : "")} is taken to have {string.Join(", ", filled)}.");

        void Add(bool isFilled, FormattableString words)
        {
            if (isFilled)
            {
                filled.Add(words.ToString(CultureInfo.InvariantCulture));
            }
        }
    }

    private static int Sector(Point2 feed) => (int)Math.Floor((Math.Atan2(feed.Y, feed.X) * 180 / Math.PI + 360) % 360 / SectorDeg);

    private Milling.PerMm PerMm(int sector, int side, double chipMm)
    {
        var half = DiameterMm / 2;
        Engagement left = new(DiameterMm, Flutes, chipMm, half - WidthMm, half), right = new(DiameterMm, Flutes, chipMm, -half, WidthMm - half);
        ReadOnlySpan<Engagement> engagements = WidthMm >= DiameterMm || side > 0 ? [left] : side < 0 ? [right] : [left, right];
        Point2[] feeds = sector >= 0
            ? [Unit(sector * SectorDeg), Unit((sector + 1) * SectorDeg)]
            : [.. Enumerable.Range(0, 72).Select(i => Unit(5 * i))];
        var work = _setup.CuttingForceNPerMm2 is { } measured
            ? CuttingWork.Measured(measured) : CuttingWork.Of(_part.Wood, engagements[0].ThickestChipMm);
        return Milling.Forces(engagements, feeds, _grain, work);
    }

    private static Point2 Unit(double degrees) => Turn.FromDegrees(degrees).Apply(new(1, 0));

    // Which way the axial force may go: both where the flutes are not known, and at a compression cutter.
    private (double DownN, double UpN) Axial(double most) => _setup.Helix switch
    {
        CutterHelix.UpCut => (0, most),
        CutterHelix.DownCut => (-most, 0),
        _ => (-most, most),
    };

    // An edge cuts a chip as wide as the radius; the thrust is of the size of the sum of the cutting forces (from memory).
    private (double Tooth, double Thrust, double Least) Plunge(double plungeMm)
    {
        var work = _setup.CuttingForceNPerMm2 is { } measured ? CuttingWork.Measured(measured) : CuttingWork.Of(_part.Wood, plungeMm);
        var chip = DiameterMm / 2 * plungeMm;
        var tooth = work.MostAt(1) * chip;
        return (tooth, tooth * Flutes, work.LeastAt(0) * chip * Flutes);
    }

    private CutForces Given(Point2? feed, double tangential, double thrust)
    {
        var normal = _setup.NormalN ?? Milling.PushShare * tangential;
        var axial = _setup.AxialN ?? tangential * Math.Tan(HelixDeg * Math.PI / 180);
        var (down, up) = Axial(axial);
        var least = Math.Sqrt(tangential * tangential + normal * normal);
        if (feed is not { } f)
        {
            return CutForces.Of(AllAround(least), least, down - thrust, up, least);
        }

        // Teeth push the wood with the feed when they run conventionally, and against it in climb.
        Point2 left = new(-f.Y, f.X), along = f * tangential, across = left * normal;
        Point2[] corners = _setup.Milling switch
        {
            MillingDirection.Conventional => [along + across, along - across],
            MillingDirection.Climb => [along * -1 + across, along * -1 - across],
            _ => [along + across, along - across, along * -1 - across, along * -1 + across],
        };
        return CutForces.Of(ForceHull.Around([default, .. corners]), least, down - thrust, up, least);
    }

    // A figure of sixteen corners around the circle.
    private static ImmutableArray<Point2> AllAround(double force) =>
        [.. Enumerable.Range(0, 16).Select(i => Unit(22.5 * i) * (force / Math.Cos(Math.PI / 16)))];
}
