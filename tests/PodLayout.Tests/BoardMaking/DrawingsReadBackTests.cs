using System.Text.Json.Nodes;
using PodLayout.BoardMaking;
using PodLayout.Handover.Picture;
using PodLayout.Reading;

namespace PodLayout.Tests.BoardMaking;

/// <summary>
/// The drawings for the machine, read back by ezdxf (python3-ezdxf as Debian packages it), a reader and auditor of DXF that
/// shares nothing with this program. Skipped, with the reason, where it is not installed; the checks of the repository install
/// it, and count a skipped test as a failure.
/// </summary>
public class DrawingsReadBackTests
{
    public static TheoryData<string> Samples() => [.. Boards.Samples];

    [Theory]
    [MemberData(nameof(Samples))]
    public void Ezdxf_audits_both_sides_without_an_error_or_a_mend(string sample)
    {
        var plan = Boards.Good(Boards.Sample(sample));
        foreach (var side in (BoardSide[])[BoardSide.Front, BoardSide.Back])
        {
            var read = ReadBack(plan, side);
            Assert.Equal((0, 0, "AC1015", 4), ((int)read["errors"]!, (int)read["fixes"]!, (string)read["version"]!, (int)read["units"]!));
        }
    }

    [Fact]
    public void Ezdxf_counts_the_holes_and_measures_the_grooves_of_the_trade_s_board()
    {
        var plan = Boards.Good(Boards.TradeFacts());
        var front = ReadBack(plan, BoardSide.Front)["layers"]!;
        Assert.Equal(45, (int)front["PORT-DRILL-9.525MM-DEEP-22.225"]!["circles"]!);
        Assert.Equal(45, (int)front["COUNTERBORE-6MM-DEEP-4"]!["circles"]!);
        Assert.Equal(2, (int)front["PIN-HOLE-6MM-DEEP-25.9"]!["circles"]!);

        // 39 across at 600 mm and 20 along at 1200 mm, with a run-out of a quarter inch at each end.
        Assert.Equal(39 * (600 + 12.7), (double)front["GROOVE-ACROSS-GRAIN-6.35MM-DEEP-7.5"]!["length"]!, 1e-3);
        Assert.Equal(20 * (1200 + 12.7), (double)front["GROOVE-ALONG-GRAIN-6.35MM-DEEP-7.5"]!["length"]!, 1e-3);
        Assert.Equal(2 * (1200 + 600), (double)front["PERIMETER-12MM-OUTSIDE-DEEP-25.9"]!["length"]!, 1e-3);

        var back = ReadBack(plan, BoardSide.Back)["layers"]!;
        Assert.Equal(45, (int)back["REFERENCE-PORTS"]!["circles"]!);

        // Nine columns of ports from Y 60 to 540.
        Assert.Equal(9 * 480, (double)back["CHANNEL-12.7MM-DEEP-4.7625"]!["length"]!, 1e-3);
        Assert.Equal(2 * (1136 + 536), (double)back["GASKET-8MM-DEEP-5"]!["length"]!, 1e-3);
    }

    [Fact]
    public void Every_kind_of_primitive_and_any_layer_name_passes_the_audit()
    {
        Sheet sheet = new("x", "", new(0, 0, 100, 100), 1,
        [
            new("a/b:c*\"é", [
                new Primitive.Line("leader", [new(0, 0), new(1, 1), new(2, 0)]),
                new Primitive.Strokes("leader", [new(0, 0), new(1, 1), new(2, 2), new(3, 3)]),
                new Primitive.Area("leader", [Shapes.Rectangle(0, 0, 10, 10), Shapes.Rectangle(2, 2, 3, 3)]),
                new Primitive.Disc("leader", new(5, 5), 2),
            ]),
            new("A/B:C*\"É", [
                new Primitive.Ellipse("leader", new(5, 5), 2, 7, 30),
                new Primitive.Hatch("leader", [Shapes.Rectangle(0, 0, 10, 10)], 45, 2),
                new Primitive.Text("leader", new(1, 2), "Größe 5\n%%c ½", 3, TextAnchor.Middle, 30),
            ]),
            new("", []),
        ]);
        var read = ReadBack(DxfWriter.Write(sheet));
        Assert.Equal((0, 0), ((int)read["errors"]!, (int)read["fixes"]!));
        Assert.Equal(1, (int)read["layers"]!["a-b-c---"]!["circles"]!);
    }

    [Fact]
    public void The_program_s_own_reader_reads_them_too()
    {
        var text = DxfWriter.Write(MachineDrawing.Draw(Boards.Good(Boards.TradeFacts()), BoardSide.Front));
        var drawing = DrawingReader.Read("front.dxf", System.Text.Encoding.UTF8.GetBytes(text), ReadingOptions.Default);
        Assert.True(drawing.Succeeded);
        Assert.Equal(1200 * 600, drawing.Value.Rings.Max(r => r.Ring.AreaMm2), 1e-6);
    }

    private static JsonNode ReadBack(BoardPlan plan, BoardSide side) => ReadBack(DxfWriter.Write(MachineDrawing.Draw(plan, side)));

    private static JsonNode ReadBack(string dxf) => Ezdxf.Read(dxf, "BoardMaking", "read_back.py");
}
