using System.Collections.Immutable;
using PodLayout.Handover.Picture;

namespace PodLayout.BoardMaking;

/// <summary>Everything that is handed over for a board, by file name.</summary>
public static class BoardFiles
{
    /// <summary>The files' names and texts.</summary>
    public static ImmutableArray<(string Name, string Content)> Of(BoardPlan plan) =>
    [
        ("board-front.dxf", DxfWriter.Write(MachineDrawing.Draw(plan, BoardSide.Front))),
        ("board-back.dxf", DxfWriter.Write(MachineDrawing.Draw(plan, BoardSide.Back))),
        ("board-front.svg", BoardPicture.Svg(plan, BoardSide.Front)),
        ("board-back.svg", BoardPicture.Svg(plan, BoardSide.Back)),
        ("board-section.svg", SectionPicture.Svg(plan)),
        ("board.json", plan.FileText),
        ("board-sheet.md", ShopSheet.Write(plan)),
    ];
}
