using System.Collections.Immutable;
using PodLayout.Geometry;

namespace PodLayout.Handover.Picture;

/// <summary>What a DXF file of version AC1015 must have around its entities: header, tables, blocks, objects.</summary>
/// <param name="ModelSpace">Handle of the record of the block that holds the entities.</param>
/// <param name="PaperSpace">Handle of the record of the empty paper.</param>
/// <param name="ModelLayout">Handle of the model's layout.</param>
/// <param name="PaperLayout">Handle of the paper's layout.</param>
/// <param name="Root">Handle of the root dictionary.</param>
internal sealed record DxfFrame(string ModelSpace, string PaperSpace, string ModelLayout, string PaperLayout, string Root)
{
    // Colours that can be told apart on dark and light ground: red, yellow, green, cyan, blue, magenta, grey.
    private static readonly ImmutableArray<int> Colours = [1, 30, 3, 4, 5, 6, 8];

    public static void Header(DxfTags tags, Sheet sheet, string nextHandle)
    {
        var e = sheet.Extent;
        tags.Put(0, "SECTION").Put(2, "HEADER");
        tags.Put(9, "$ACADVER").Put(1, "AC1015").Put(9, "$DWGCODEPAGE").Put(3, "ANSI_1252");
        tags.Put(9, "$HANDSEED").Put(5, nextHandle);
        tags.Put(9, "$INSUNITS").Put(70, 4).Put(9, "$MEASUREMENT").Put(70, 1);
        tags.Put(9, "$EXTMIN").Put(10, new Point2(e.MinX, e.MinY)).Put(9, "$EXTMAX").Put(10, new Point2(e.MaxX, e.MaxY));
        tags.Put(0, "ENDSEC").Put(0, "SECTION").Put(2, "CLASSES").Put(0, "ENDSEC");
    }

    public static DxfFrame Begin(DxfTags tags, Sheet sheet, ImmutableArray<string> layers)
    {
        DxfFrame frame = new(tags.NewHandle(), tags.NewHandle(), tags.NewHandle(), tags.NewHandle(), tags.NewHandle());
        tags.Put(0, "SECTION").Put(2, "TABLES");
        ViewPort(tags, sheet.Extent);
        LineTypes(tags);
        Layers(tags, layers);
        Table(tags, "STYLE", 1, table => Record(tags, table, "STYLE", "AcDbTextStyleTableRecord", "Standard", 0)
            .Put(40, 0.0).Put(41, 1.0).Put(50, 0.0).Put(71, 0).Put(42, 2.5).Put(3, "txt").Put(4, ""));
        Table(tags, "VIEW", 0, _ => { });
        Table(tags, "UCS", 0, _ => { });
        Table(tags, "APPID", 1, table => Record(tags, table, "APPID", "AcDbRegAppTableRecord", "ACAD", 0));
        DimensionStyles(tags);
        BlockRecords(tags, frame);
        tags.Put(0, "ENDSEC");
        Blocks(tags, frame);
        return frame;
    }

    public static void End(DxfTags tags, DxfFrame frame)
    {
        string groups = tags.NewHandle(), layouts = tags.NewHandle();
        tags.Put(0, "SECTION").Put(2, "OBJECTS");
        Dictionary(tags, frame.Root, "0", ("ACAD_GROUP", groups), ("ACAD_LAYOUT", layouts));
        Dictionary(tags, groups, frame.Root);
        Dictionary(tags, layouts, frame.Root, ("Model", frame.ModelLayout), ("Layout1", frame.PaperLayout));
        Layout(tags, frame.ModelLayout, layouts, "Model", 0, 1024, frame.ModelSpace);
        Layout(tags, frame.PaperLayout, layouts, "Layout1", 1, 0, frame.PaperSpace);
        tags.Put(0, "ENDSEC").Put(0, "EOF");
    }

    private static void Table(DxfTags tags, string name, int count, Action<string> records)
    {
        var handle = tags.NewHandle();
        tags.Put(0, "TABLE").Put(2, name).Put(5, handle).Put(330, "0").Put(100, "AcDbSymbolTable").Put(70, count);
        if (name == "DIMSTYLE")
        {
            tags.Put(100, "AcDbDimStyleTable");
        }

        records(handle);
        tags.Put(0, "ENDTAB");
    }

    private static DxfTags Record(DxfTags tags, string table, string type, string subclass, string name, int flags, string? handle = null) => tags
        .Put(0, type).Put(5, handle ?? tags.NewHandle()).Put(330, table).Put(100, "AcDbSymbolTableRecord").Put(100, subclass).Put(2, name).Put(70, flags);

    private static void ViewPort(DxfTags tags, Box2 extent) => Table(tags, "VPORT", 1, table =>
        Record(tags, table, "VPORT", "AcDbViewportTableRecord", "*Active", 0)
            .Put(10, new Point2(0, 0), false).Put(11, new Point2(1, 1), false).Put(12, extent.Centre, false)
            .Put(13, new Point2(0, 0), false).Put(14, new Point2(10, 10), false).Put(15, new Point2(10, 10), false)
            .Put(16, 0.0).Put(26, 0.0).Put(36, 1.0).Put(17, new Point2(0, 0))
            .Put(40, 1.2 * Math.Max(1, extent.Height)).Put(41, 1.6).Put(42, 50.0).Put(43, 0.0).Put(44, 0.0).Put(50, 0.0).Put(51, 0.0)
            .Put(71, 0).Put(72, 1000).Put(73, 1).Put(74, 3).Put(75, 0).Put(76, 0).Put(77, 0).Put(78, 0));

    private static void LineTypes(DxfTags tags) => Table(tags, "LTYPE", 3, table =>
    {
        foreach (var name in (string[])["ByBlock", "ByLayer", "Continuous"])
        {
            Record(tags, table, "LTYPE", "AcDbLinetypeTableRecord", name, 0)
                .Put(3, name == "Continuous" ? "Solid line" : "").Put(72, 65).Put(73, 0).Put(40, 0.0);
        }
    });

    private static void Layers(DxfTags tags, ImmutableArray<string> layers) => Table(tags, "LAYER", layers.Length + 1, table =>
    {
        Record(tags, table, "LAYER", "AcDbLayerTableRecord", "0", 0).Put(62, 7).Put(6, "Continuous");
        for (var i = 0; i < layers.Length; i++)
        {
            Record(tags, table, "LAYER", "AcDbLayerTableRecord", layers[i], 0).Put(62, Colours[i % Colours.Length]).Put(6, "Continuous");
        }
    });

    private static void DimensionStyles(DxfTags tags) => Table(tags, "DIMSTYLE", 1, table => tags
        .Put(0, "DIMSTYLE").Put(105, tags.NewHandle()).Put(330, table).Put(100, "AcDbSymbolTableRecord")
        .Put(100, "AcDbDimStyleTableRecord").Put(2, "Standard").Put(70, 0));

    private static void BlockRecords(DxfTags tags, DxfFrame frame) => Table(tags, "BLOCK_RECORD", 2, table =>
    {
        foreach (var (name, handle, layout) in Spaces(frame))
        {
            tags.Put(0, "BLOCK_RECORD").Put(5, handle).Put(330, table).Put(100, "AcDbSymbolTableRecord")
                .Put(100, "AcDbBlockTableRecord").Put(2, name).Put(340, layout);
        }
    });

    private static void Blocks(DxfTags tags, DxfFrame frame)
    {
        tags.Put(0, "SECTION").Put(2, "BLOCKS");
        foreach (var (name, handle, _) in Spaces(frame))
        {
            tags.Put(0, "BLOCK").Put(5, tags.NewHandle()).Put(330, handle).Put(100, "AcDbEntity").Put(8, "0").Put(100, "AcDbBlockBegin")
                .Put(2, name).Put(70, 0).Put(10, new Point2(0, 0)).Put(3, name).Put(1, "");
            tags.Put(0, "ENDBLK").Put(5, tags.NewHandle()).Put(330, handle).Put(100, "AcDbEntity").Put(8, "0").Put(100, "AcDbBlockEnd");
        }

        tags.Put(0, "ENDSEC");
    }

    private static (string Name, string Handle, string Layout)[] Spaces(DxfFrame frame) =>
        [("*Model_Space", frame.ModelSpace, frame.ModelLayout), ("*Paper_Space", frame.PaperSpace, frame.PaperLayout)];

    private static void Dictionary(DxfTags tags, string handle, string owner, params (string Name, string Handle)[] entries)
    {
        tags.Put(0, "DICTIONARY").Put(5, handle).Put(330, owner).Put(100, "AcDbDictionary").Put(281, 1);
        foreach (var (name, entry) in entries)
        {
            tags.Put(3, name).Put(350, entry);
        }
    }

    private static void Layout(DxfTags tags, string handle, string owner, string name, int order, int plotFlags, string space)
    {
        tags.Put(0, "LAYOUT").Put(5, handle).Put(330, owner).Put(100, "AcDbPlotSettings")
            .Put(1, "").Put(2, "").Put(4, "").Put(6, "");
        foreach (var code in (int[])[40, 41, 42, 43, 44, 45, 46, 47, 48, 49, 140, 141])
        {
            tags.Put(code, 0.0);
        }

        tags.Put(142, 1.0).Put(143, 1.0).Put(70, plotFlags).Put(72, 1).Put(73, 0).Put(74, 5).Put(7, "").Put(75, 16).Put(147, 1.0).Put(148, 0.0).Put(149, 0.0);
        tags.Put(100, "AcDbLayout").Put(1, name).Put(70, 1).Put(71, order).Put(10, new Point2(0, 0), false).Put(11, new Point2(420, 297), false)
            .Put(12, new Point2(0, 0)).Put(14, new Point2(0, 0)).Put(15, new Point2(420, 297)).Put(146, 0.0)
            .Put(13, new Point2(0, 0)).Put(16, new Point2(1, 0)).Put(17, new Point2(0, 1)).Put(76, 0).Put(330, space);
    }
}
