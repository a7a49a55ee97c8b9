namespace PodLayout.Programs;

/// <summary>One move of the tool's tip: straight, or an arc whose third axis runs evenly (a helix).</summary>
/// <param name="From">Where it begins.</param>
/// <param name="To">Where it ends.</param>
/// <param name="Kind">Rapid, line or arc.</param>
/// <param name="ToolNumber">The tool in the spindle.</param>
/// <param name="Line">Line of the program, from 1.</param>
public readonly record struct Stretch(TipPoint From, TipPoint To, StretchKind Kind, int ToolNumber, int Line)
{
    /// <summary>The arc's plane.</summary>
    public ArcPlane Plane { get; init; }

    /// <summary>The arc's centre along the plane's first axis, mm.</summary>
    public double CentreA { get; init; }

    /// <summary>The arc's centre along the plane's second axis, mm.</summary>
    public double CentreB { get; init; }

    /// <summary>Turn of the arc, radians: positive counter-clockwise in the plane's axes; 0 for what is straight.</summary>
    public double TurnRad { get; init; }

    /// <summary>Spindle speed, revolutions a minute; 0 when it stands.</summary>
    public double SpindleRpm { get; init; }

    /// <summary>Feed along the path, mm a minute; 0 for rapids and where the program gives none.</summary>
    public double FeedMmPerMin { get; init; }

    /// <summary>The arc's radius where it begins, mm. (It may end on one that differs by the reader's tolerance.)</summary>
    public double RadiusMm
    {
        get
        {
            var (a, b, _) = InPlane(From);
            return Math.Sqrt((a - CentreA) * (a - CentreA) + (b - CentreB) * (b - CentreB));
        }
    }

    /// <summary>Length of the path, mm.</summary>
    public double LengthMm
    {
        get
        {
            if (TurnRad == 0)
            {
                return From.DistanceTo(To);
            }

            var rise = InPlane(To).Normal - InPlane(From).Normal;
            var along = (RadiusMm + EndRadiusMm) / 2 * TurnRad;
            return Math.Sqrt(along * along + rise * rise);
        }
    }

    private double EndRadiusMm
    {
        get
        {
            var (a, b, _) = InPlane(To);
            return Math.Sqrt((a - CentreA) * (a - CentreA) + (b - CentreB) * (b - CentreB));
        }
    }

    /// <summary>The point at a share of the way, 0 to 1.</summary>
    public TipPoint At(double share)
    {
        if (share <= 0 || share >= 1)
        {
            return share <= 0 ? From : To;
        }

        if (TurnRad == 0)
        {
            return new(
                From.XMm + share * (To.XMm - From.XMm),
                From.YMm + share * (To.YMm - From.YMm),
                From.ZMm + share * (To.ZMm - From.ZMm));
        }

        var (a, b, from) = InPlane(From);
        var to = InPlane(To).Normal;
        var angle = Math.Atan2(b - CentreB, a - CentreA) + share * TurnRad;
        // The radius runs evenly from the first to the last, so that the path ends exactly where the program says.
        var radius = RadiusMm + share * (EndRadiusMm - RadiusMm);
        return FromPlane(
            Plane, CentreA + radius * Math.Cos(angle), CentreB + radius * Math.Sin(angle), from + share * (to - from));
    }

    /// <summary>A point in the axes of the arc's plane: first, second, and the one across it.</summary>
    internal (double A, double B, double Normal) InPlane(TipPoint p) => InPlane(Plane, p);

    internal static (double A, double B, double Normal) InPlane(ArcPlane plane, TipPoint p) => plane switch
    {
        ArcPlane.Xy => (p.XMm, p.YMm, p.ZMm),
        ArcPlane.Zx => (p.ZMm, p.XMm, p.YMm),
        _ => (p.YMm, p.ZMm, p.XMm),
    };

    internal static TipPoint FromPlane(ArcPlane plane, double a, double b, double normal) => plane switch
    {
        ArcPlane.Xy => new(a, b, normal),
        ArcPlane.Zx => new(b, normal, a),
        _ => new(normal, a, b),
    };
}
