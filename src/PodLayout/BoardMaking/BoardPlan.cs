using System.Collections.Immutable;
using PodLayout.Shops;

namespace PodLayout.BoardMaking;

/// <summary>The whole board, ready to be drawn and cut.</summary>
/// <param name="Request">What was asked.</param>
/// <param name="FileText"><c>board.json</c>: the shop file of the board as it is made.</param>
/// <param name="Board">The board read from it.</param>
/// <param name="Pieces">Its pieces.</param>
/// <param name="Parts">Zones under pieces, with gasket lines.</param>
/// <param name="Grooves">Grooves in the face.</param>
/// <param name="Numerals">Numbers in the face.</param>
/// <param name="Channels">Channels in the back.</param>
/// <param name="Seats">What the seats of each pod have under them.</param>
/// <param name="Checks">Everything that was checked.</param>
public sealed record BoardPlan(
    BoardRequest Request,
    string FileText,
    GridBoard Board,
    ImmutableArray<Piece> Pieces,
    ImmutableArray<ZonePart> Parts,
    ImmutableArray<Groove> Grooves,
    ImmutableArray<Numeral> Numerals,
    ImmutableArray<ZoneChannels> Channels,
    ImmutableArray<SeatCount> Seats,
    ImmutableArray<Check> Checks)
{
    /// <summary>Index of the piece that a port lies in.</summary>
    public int PieceOf(Port port) => PieceAt(port.Centre);

    /// <summary>Index of the piece that a place lies in; -1 outside all.</summary>
    public int PieceAt(Geometry.Point2 at)
    {
        for (var i = 0; i < Pieces.Length; i++)
        {
            if (Pieces[i].Outline.Contains(at))
            {
                return i;
            }
        }

        return -1;
    }

    /// <summary>How far port and channel overlap in depth, mm.</summary>
    public double OverlapMm => Request.Bore.DrillDepthMm + Request.ChannelDepthMm - Request.Stock.ThicknessMm;
}
