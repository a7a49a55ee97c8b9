using System.Collections.Immutable;
using System.Text;
using PodLayout.Tests.Cli;
using PodLayout.Tests.Faults;

namespace PodLayout.Tests.Fuzz;

/// <summary>Whole files of each kind, which cases are made from.</summary>
internal sealed class Seeds
{
    private const string Program = """
        %
        (outline and holes)
        N10 G0 G21 G17 G40 G80 G90
        T1 M6
        S18000 M3
        G0 X0 Y0
        G0 Z5
        G1 Z-12 F3000
        G41 D1 G1 X10 Y10
        X60
        G3 X70 Y20 I0 J10
        G1 Y60
        G2 X60 Y70 R10
        G1 X10
        G40 Y10
        G0 Z5
        G99 G83 X30 Y30 Z-10 R1 Q4 F800
        X40 L1
        G91 X5 L3
        G90 G80
        G18 G3 X50 Z5 I10 K0
        G17 G10 L2 P1 X0
        G92 X0
        G92.1
        G28 Z10
        M30
        %
        """;

    private const string Svg = """
        <svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" width="240mm" height="150mm" viewBox="0 0 240 150">
          <style>.cut { stroke: #000; fill: none } #gone { display: none }</style>
          <defs><path id="p" d="M10 10h9v9h-9z"/><clipPath id="c"><rect width="240" height="150"/></clipPath></defs>
          <g id="OUTLINE" transform="translate(1 1) rotate(0)"><path class="cut" d="M0 0 L200 0 C210 0 210 60 200 100 A 20 20 0 0 1 180 120 Q 100 140 0 120 Z"/></g>
          <use xlink:href="#p" x="30" y="30"/>
          <circle cx="90" cy="60" r="8" clip-path="url(#c)"/>
          <polygon points="100,20 120,20 110,40"/><line x1="3" y1="3" x2="9" y2="9" stroke="red"/>
          <svg x="10" y="90" width="20" height="10" viewBox="0 0 200 100"><ellipse cx="100" cy="50" rx="40" ry="20"/></svg>
        </svg>
        """;

    /// <summary>Kinds in the order in which cases are dealt: drawings and programs come from elsewhere and are dealt most often.</summary>
    public static ImmutableArray<string> Kinds { get; } =
        ["dxf", "svg", "program", "shop", "dxf", "binary", "svg", "program", "dxf", "layout", "svg", "program", "binary", "job", "dxf", "program", "svg", "board", "shop", "dxf"];

    private readonly Dictionary<string, ImmutableArray<byte[]>> files;

    public Seeds()
    {
        using Scratch scratch = new();
        SmallJobs.Put(scratch);
        Assert.Equal(0, SmallJobs.Plan(scratch, "out").Code);
        byte[] Text(string text) => Encoding.UTF8.GetBytes(text);
        ImmutableArray<byte[]> Ezdxf(string pattern) => [.. Directory.GetFiles(Repository.Path("tests", "PodLayout.Tests", "Reading", "ezdxf"), pattern)
            .Order(StringComparer.Ordinal).Select(File.ReadAllBytes).Where(f => f.Length < 60_000)];
        files = new(StringComparer.Ordinal)
        {
            ["dxf"] = [Text(SmallJobs.Rectangle(240, 150)), File.ReadAllBytes(Repository.Path("samples", "tray", "part.dxf")), .. Ezdxf("*-R12.dxf"), .. Ezdxf("*-R2010.dxf")],
            ["binary"] = Ezdxf("*-binary.dxf"),
            ["svg"] = [Text(Svg), Text(Svg.Replace("240mm", "240", StringComparison.Ordinal))],
            ["program"] = [Text(Program), File.ReadAllBytes(Repository.Path("samples", "tray", "part.nc"))],
            ["shop"] = [File.ReadAllBytes(Repository.Path("samples", "shop.json")), Text(Ran.Of("shop").Out)],
            ["job"] = [File.ReadAllBytes(scratch.Path("job.json")), Text(SmallJobs.Job(""", "name": "a", "species": "oak", "avoid": [{ "name": "b", "centreMm": [400, 300], "diameterMm": 50 }], "layers": { "X*": "ignore" } """))],
            ["layout"] = [File.ReadAllBytes(scratch.Path("out/layout.json"))],
            ["board"] = [.. Directory.GetFiles(Repository.Path("samples", "boards"), "shop.json", SearchOption.AllDirectories).Order(StringComparer.Ordinal).Select(File.ReadAllBytes)],
        };
    }

    public ImmutableArray<byte[]> Of(string kind) => files[kind];
}
