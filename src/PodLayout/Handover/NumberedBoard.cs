using PodLayout.Geometry;
using PodLayout.Handover.Picture;
using PodLayout.Shops;

namespace PodLayout.Handover;

/// <summary>The empty board at full size with its columns and rows numbered along all four edges: to engrave, or to print and stick on.</summary>
public static class NumberedBoard
{
    // Numbers then are two fifths of a pitch high.
    private const double PitchesToScale = 6;

    // Around the board, in pitches.
    private const double AroundPitches = 1.2;
    private const double DatumPitches = 2.4;
    private const double NameShareOfPitch = 0.2;

    /// <summary>The picture as SVG, one millimetre of the picture for one of the board.</summary>
    public static string Svg(GridBoard board) => SvgWriter.Write(Draw(board));

    /// <summary>The picture as a sheet.</summary>
    public static Sheet Draw(GridBoard board)
    {
        var (face, pitch) = (new Box2(0, 0, board.WidthMm, board.LengthMm), board.PitchMm);
        var page = new Box2(-DatumPitches * pitch, -DatumPitches * pitch, face.MaxX + AroundPitches * pitch, face.MaxY + AroundPitches * pitch);
        SheetDraft draft = new(pitch / PitchesToScale, page, face);
        BoardDrawing.Draw(draft, board);
        foreach (var port in board.Ports)
        {
            var size = NameShareOfPitch * pitch;
            draft.AddText(
                SheetDraft.Labels, "port-name", port.Centre - new Point2(0, board.PortDiameterMm / 2 + size), port.Name,
                size / draft.Scale, TextAnchor.Middle);
        }

        // Drawn with signs as large as the pitch asks for, put out at full size.
        var sheet = draft.Finish($"{board.Name}: columns and rows", $"The empty board, {CsvText.Mm(board.WidthMm)} x {CsvText.Mm(board.LengthMm)} mm, at full size.");
        return sheet with
        {
            Scale = 1,
            Layers = [.. sheet.Layers.Select(l => l with { Primitives = [.. l.Primitives.Select(p => p with { Style = Heavier(p.Style) })] })],
        };
    }

    // Hairlines that do for a picture of the board are too thin beside a board of full size.
    private static string Heavier(string style) => style switch
    {
        "groove" => "before-cross",
        "groove-fifth" => "part-edge",
        "port-plugged" => "tick-box",
        _ => style,
    };
}
