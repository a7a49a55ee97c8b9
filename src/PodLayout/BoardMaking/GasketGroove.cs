namespace PodLayout.BoardMaking;

/// <summary>The gasket groove in the back.</summary>
/// <param name="WidthMm">Its width.</param>
/// <param name="DepthMm">Its depth.</param>
/// <param name="InsetMm">From the edge of the zone or of the piece, whichever is nearer, to the groove.</param>
/// <param name="CordDiameterMm">Diameter of the cord in it.</param>
/// <param name="WastePercent">Cord to buy beyond its length.</param>
public sealed record GasketGroove(
    double WidthMm, double DepthMm, double InsetMm, double CordDiameterMm, double WastePercent);
