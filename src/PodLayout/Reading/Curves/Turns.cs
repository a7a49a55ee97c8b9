namespace PodLayout.Reading.Curves;

/// <summary>
/// How far a curve runs that is written by a start and an end angle. Both come rounded: what is meant as the whole turn may be
/// written as a hair less or a hair more, and a hair more must not become a hair.
/// </summary>
internal static class Turns
{
    /// <summary>
    /// Angles this near are equal, radians: a micrometre at the edge of a part of two metres; writers round to six digits or more.
    /// </summary>
    private const double SameAngle = 1e-6;

    /// <summary>A turn and less than this more may be meant as either: no arc of a part is as short as a degree, radians.</summary>
    private const double DoubtfulBeyondTurn = Math.PI / 180;

    /// <summary>What the two angles say.</summary>
    /// <param name="from">Start, radians.</param>
    /// <param name="to">End, radians.</param>
    /// <param name="radius">Largest radius, mm: an end that misses the whole turn by less than the join gap misses nothing.</param>
    public static AngleSpan Between(double from, double to, double radius)
    {
        var turns = (to - from) / Math.Tau;
        var whole = Math.Round(turns);
        var beyond = (turns - whole) * Math.Tau;
        var same = Math.Max(SameAngle, Math.Min(Tolerances.JoinGapMm / Math.Max(radius, 1e-9), DoubtfulBeyondTurn / 10));
        if (whole != 0 && Math.Abs(beyond) <= same)
            return new(Math.Tau, Math.Abs(beyond) <= SameAngle ? AngleReading.Plain : AngleReading.NearlyWhole);
        if (from == to)
            return new(Math.Tau, AngleReading.EqualEnds);
        // The end comes after the start, counter-clockwise, going on through zero (DXF reference, ARC 50/51, ELLIPSE 41/42).
        var span = beyond < 0 ? beyond + Math.Tau : beyond;
        if (Math.Tau - span <= same)
            return new(Math.Tau, AngleReading.NearlyWhole);
        return new(span, whole >= 1 && beyond > 0 && beyond < DoubtfulBeyondTurn ? AngleReading.Doubtful : AngleReading.Plain);
    }
}
