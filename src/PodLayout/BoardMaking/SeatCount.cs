namespace PodLayout.BoardMaking;

/// <summary>What the seats of one pod, turned or not, have under them.</summary>
/// <param name="Pod">Name of the pod type.</param>
/// <param name="Turned">Whether it stands turned by a quarter.</param>
/// <param name="PortsNeeded">How many ports it needs.</param>
/// <param name="CoversLattice">Whether it is at least as wide as the port spacing both ways, so that no seat need be dead.</param>
/// <param name="Seats">Places where its body can stand: inside the usable area and off all obstacles.</param>
/// <param name="Dead">Those with fewer ports inside the lower seal than it needs.</param>
/// <param name="FewestPorts">Fewest ports at any seat.</param>
/// <param name="MostPorts">Most ports at any seat.</param>
public sealed record SeatCount(
    string Pod, bool Turned, int PortsNeeded, bool CoversLattice, int Seats, int Dead, int FewestPorts, int MostPorts);
