namespace PodLayout.BoardMaking;

/// <summary>What must be left between cuts, at least, and what the channels may lose, at most.</summary>
/// <param name="OverlapMm">Port and channel, in depth.</param>
/// <param name="FloorMm">Between a cut in the face and one in the back.</param>
/// <param name="WallMm">Between two cuts in the face.</param>
/// <param name="WebMm">Between two cuts in the back.</param>
/// <param name="EdgeMm">From a channel or the table's grooves to the edge, where there is no gasket.</param>
/// <param name="PressureLossPa">On the way from the table's vacuum to a port.</param>
public sealed record MakingLimits(
    double OverlapMm, double FloorMm, double WallMm, double WebMm, double EdgeMm, double PressureLossPa);
