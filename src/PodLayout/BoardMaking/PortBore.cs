namespace PodLayout.BoardMaking;

/// <summary>How a port is bored.</summary>
/// <param name="DrillDiameterMm">Diameter of the drill.</param>
/// <param name="DrillDepthMm">Depth from the face at full diameter.</param>
/// <param name="CounterboreDiameterMm">Diameter of the counterbore, which is the port's hole at the face.</param>
/// <param name="CounterboreDepthMm">Its depth; 0 for none.</param>
/// <param name="Plug">What plugs a port.</param>
public sealed record PortBore(
    double DrillDiameterMm, double DrillDepthMm, double CounterboreDiameterMm, double CounterboreDepthMm, string Plug);
