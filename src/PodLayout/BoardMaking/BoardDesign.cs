using System.Collections.Immutable;
using PodLayout.Findings;

namespace PodLayout.BoardMaking;

/// <summary>From what is asked to the whole board, checked.</summary>
public static class BoardDesign
{
    /// <summary>Lays the board out and checks it; a refusal carries everything that is wrong, the first cause first.</summary>
    public static Outcome<BoardPlan> Make(BoardRequest request)
    {
        CheckList checks = new(request);
        DepthChecks.Make(request, checks);
        var pieces = PieceMaking.Of(request, checks);
        SheetChecks.Make(request, pieces, checks);
        var grooves = GrooveLaying.Of(request, pieces, checks);
        var parts = ZoneParting.Of(request, pieces, checks);
        if (IsRefused(checks.Findings))
        {
            // Ports and channels on ground that is wrong would only repeat the cause.
            return Outcome<BoardPlan>.Refuse(checks.Findings);
        }

        List<Finding> read = [];
        if (PortSettling.Settle(request, parts, checks, read) is not { } settled)
        {
            return Outcome<BoardPlan>.Refuse([.. checks.Findings, .. read]);
        }

        var board = settled.Board;
        PortChecks.Make(request, board, checks);
        var channels = ChannelLaying.Of(request, parts, board.Ports);
        ChannelChecks.Make(request, parts, channels, checks);
        var seats = SeatChecks.Make(request, board, checks);
        var numerals = Numbering.Of(request, board, checks);
        TravelChecks.Make(request, pieces, grooves, channels, parts, checks);
        ImmutableArray<Finding> findings = [.. checks.Findings, .. read];
        return IsRefused(findings)
            ? Outcome<BoardPlan>.Refuse(findings)
            : Outcome<BoardPlan>.Of(
                new BoardPlan(request, settled.Text, board, pieces, parts, grooves, numerals, channels, seats, checks.All), findings);
    }

    private static bool IsRefused(IEnumerable<Finding> findings) => findings.Any(f => f.Severity == Severity.Refused);
}
