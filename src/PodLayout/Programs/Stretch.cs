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

    /// <summary>Z of its higher end, mm.</summary>
    public double HighestEndMm => Math.Max(From.ZMm, To.ZMm);

    /// <summary>Lowest Z on the way, mm.</summary>
    public double LowestZMm
    {
        get
        {
            var ends = Math.Min(From.ZMm, To.ZMm);
            return TurnRad == 0 || Plane == ArcPlane.Xy ? ends : Math.Min(ends, Extent.Least.ZMm);
        }
    }

    /// <summary>The corners of the smallest box around the path.</summary>
    public (TipPoint Least, TipPoint Most) Extent
    {
        get
        {
            TipPoint least = Of(From, To, Math.Min), most = Of(From, To, Math.Max);
            if (TurnRad != 0)
            {
                var radius = Math.Max(RadiusMm, EndRadiusMm);
                var normal = InPlane(From).Normal;
                for (var quarter = 0; quarter < 4; quarter++)
                {
                    var angle = quarter * Math.PI / 2;
                    if (Passes(angle))
                    {
                        var p = FromPlane(Plane, CentreA + radius * Math.Cos(angle), CentreB + radius * Math.Sin(angle), normal);
                        (least, most) = (Of(least, p, Math.Min), Of(most, p, Math.Max));
                    }
                }
            }

            return (least, most);
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

    private static TipPoint Of(TipPoint a, TipPoint b, Func<double, double, double> which) =>
        new(which(a.XMm, b.XMm), which(a.YMm, b.YMm), which(a.ZMm, b.ZMm));

    private bool Passes(double angle)
    {
        var (a, b, _) = InPlane(From);
        var ahead = (angle - Math.Atan2(b - CentreB, a - CentreA)) * Math.Sign(TurnRad) % (2 * Math.PI);
        return (ahead < 0 ? ahead + 2 * Math.PI : ahead) <= Math.Abs(TurnRad);
    }

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
