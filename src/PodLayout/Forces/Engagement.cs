namespace PodLayout.Forces;

/// <summary>How a cutter stands in the wood. Its spindle turns clockwise seen from above.</summary>
/// <param name="DiameterMm">Its diameter.</param>
/// <param name="Flutes">Its cutting edges.</param>
/// <param name="ChipMm">Feed for each of them.</param>
/// <param name="FromMm">Where the wood begins across the feed, from the tool's centre, to the left positive.</param>
/// <param name="ToMm">Where it ends, likewise.</param>
public readonly record struct Engagement(double DiameterMm, int Flutes, double ChipMm, double FromMm, double ToMm)
{
    /// <summary>The thickest chip there is on the way through the wood, mm.</summary>
    public double ThickestChipMm
    {
        get
        {
            var nearest = FromMm > 0 ? FromMm : ToMm < 0 ? ToMm : 0;
            var sine = 2 * nearest / DiameterMm;
            return ChipMm * Math.Sqrt(Math.Max(0, 1 - sine * sine));
        }
    }

    /// <summary>The cutter takes wood over its whole width.</summary>
    public static Engagement Slot(double diameterMm, int flutes, double chipMm) =>
        new(diameterMm, flutes, chipMm, -diameterMm / 2, diameterMm / 2);
}
