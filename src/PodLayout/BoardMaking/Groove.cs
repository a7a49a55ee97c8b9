namespace PodLayout.BoardMaking;

/// <summary>One groove of a piece: one pass of a tool of its width.</summary>
/// <param name="Piece">Index of the piece.</param>
/// <param name="Index">Which groove of the lattice, from 0.</param>
/// <param name="Run">The pass, with its run-out at both ends.</param>
public sealed record Groove(int Piece, int Index, Run Run);
