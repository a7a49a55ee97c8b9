using System.Globalization;
using System.Runtime.CompilerServices;
using System.Text;
using PodLayout.Findings;
using PodLayout.Parts;
using PodLayout.Reading;

namespace PodLayout.Tests.Reading;

/// <summary>Makes and reads the drawings of the tests.</summary>
internal static class Drawings
{
    private static readonly string Here = Path.GetDirectoryName(ThisFile())!;

    private static string ThisFile([CallerFilePath] string path = "") => path;

    public static byte[] Ezdxf(string name) => File.ReadAllBytes(Path.Combine(Here, "ezdxf", name + ".dxf"));

    public static string Sample(string name) => Path.Combine(Here, "..", "..", "..", "samples", name, "part.dxf");

    /// <summary>A DXF file of millimetres with the given entities; groups are separated by blanks or new lines.</summary>
    public static string Dxf(string entities, string header = "9 $INSUNITS 70 4", string more = "") =>
        Groups($"0 SECTION 2 HEADER {header} 0 ENDSEC {more} 0 SECTION 2 ENTITIES {entities} 0 ENDSEC 0 EOF");

    /// <summary>One group code or value a line.</summary>
    public static string Groups(string words) =>
        string.Join('\n', words.Split([' ', '\n', '\r'], StringSplitOptions.RemoveEmptyEntries)) + "\n";

    public static string Line(double x1, double y1, double x2, double y2, string layer = "0") => string.Create(
        CultureInfo.InvariantCulture, $" 0 LINE 8 {layer} 10 {x1:R} 20 {y1:R} 11 {x2:R} 21 {y2:R} ");

    public static string Circle(double x, double y, double r, string layer = "0") => string.Create(
        CultureInfo.InvariantCulture, $" 0 CIRCLE 8 {layer} 10 {x:R} 20 {y:R} 40 {r:R} ");

    public static string Closed(string layer, params (double X, double Y)[] points) => string.Create(
        CultureInfo.InvariantCulture, $" 0 LWPOLYLINE 8 {layer} 90 {points.Length} 70 1 ")
        + string.Concat(points.Select(p => string.Create(CultureInfo.InvariantCulture, $" 10 {p.X:R} 20 {p.Y:R} ")));

    public static string Rectangle(double x, double y, double width, double height, string layer = "0") =>
        Closed(layer, (x, y), (x + width, y), (x + width, y + height), (x, y + height));

    public static Outcome<Drawing> Read(string text, ReadingOptions? options = null) => Read(Encoding.UTF8.GetBytes(text), options);

    public static Outcome<Drawing> Read(byte[] content, ReadingOptions? options = null) =>
        DrawingReader.Read("part.dxf", content, options ?? ReadingOptions.Default);

    public static Outcome<PartShape> Part(string text, ReadingOptions? options = null, LayerRoles? roles = null) =>
        Part(Encoding.UTF8.GetBytes(text), options, roles);

    public static Outcome<PartShape> Part(byte[] content, ReadingOptions? options = null, LayerRoles? roles = null) =>
        Read(content, options).Then(d => PartShaping.From(d, roles ?? LayerRoles.ByShape));

    public static PartShape Shape(string text, ReadingOptions? options = null, LayerRoles? roles = null)
    {
        var outcome = Part(text, options, roles);
        Assert.True(outcome.Succeeded, string.Join('\n', outcome.Findings));
        return outcome.Value;
    }
}
