using System.Collections.Immutable;
using PodLayout.Geometry;

namespace PodLayout.Handover.Picture;

/// <summary>A sheet while it is drawn: its layers, and the places that are taken by text and symbols.</summary>
internal sealed class SheetDraft(double scale, Box2 page, Box2 content)
{
    // Names and order of the layers.
    private static readonly ImmutableArray<string> Order =
    [
        Paper, Board, Part, Grooves, Zones, Ports, Obstacles, Blank, LeftOut, Defects, Before, Pods, Seals, OpenPorts, Support, Laying,
        Labels, Edge, Numbers, Panel,
    ];

    private readonly Dictionary<string, ImmutableArray<Primitive>.Builder> layers =
        Order.ToDictionary(name => name, _ => ImmutableArray.CreateBuilder<Primitive>(), StringComparer.Ordinal);

    private readonly Nearby all = new(content, [], [], [], [], []);
    private readonly List<Box2> signs = [];
    private readonly List<Point2> dots = [];
    private readonly List<(string Twin, Box2 Box, ImmutableArray<Primitive> Drawn)> yielding = [];

    public const string Paper = "paper";
    public const string Board = "board";
    public const string Grooves = "grooves";
    public const string Ports = "ports";
    public const string Obstacles = "keep-clear";
    public const string Part = "part";
    public const string Blank = "blank";
    public const string LeftOut = "left-out";
    public const string Defects = "defects";
    public const string Pods = "pods";
    public const string Seals = "seals";
    public const string OpenPorts = "open-ports";
    public const string Before = "on-the-board-before";
    public const string Zones = "zones";
    public const string Laying = "laying";
    public const string Support = "support";
    public const string Labels = "labels";
    public const string Edge = "edge";
    public const string Numbers = "groove-numbers";
    public const string Panel = "panel";

    /// <summary>What the name of a style ends in that is a dashed one's for shapes too small for dashes.</summary>
    public const string Small = "-small";

    /// <summary>Board millimetres for a millimetre of paper.</summary>
    public double Scale { get; } = scale;

    /// <summary>The page in board coordinates.</summary>
    public Box2 Page { get; } = page;

    /// <summary>The board and the part: labels stay inside, off the numbers and the panel.</summary>
    public Box2 Content => all.Content;

    /// <summary>The least radius of a port's sign, mm of paper.</summary>
    public double LeastPortMm { get; init; } = 0.75;

    /// <summary>Whether the first and last numbers of grooves give way to the flags of marks.</summary>
    public bool NumbersYield { get; init; }

    /// <summary>What is drawn now belongs to this; null for nothing in particular.</summary>
    public string? Belongs { get; set; }

    public void Add(string layer, Primitive primitive) =>
        layers[layer].Add(Belongs is null ? primitive : primitive with { Of = Belongs });

    public void AddLine(string layer, string style, params ImmutableArray<Point2> points) =>
        Add(layer, new Primitive.Line(style, points));

    public void AddBox(string layer, string style, Box2 box) => Add(layer, new Primitive.Area(style, [RingOf(box)]));

    /// <summary>Text of a size in millimetres of paper.</summary>
    public void AddText(
        string layer, string style, Point2 at, string words, double paperSize, TextAnchor anchor = TextAnchor.Start,
        double angleDeg = 0, double? widthMm = null) =>
        Add(layer, new Primitive.Text(style, at, words, paperSize * Scale, anchor, angleDeg) { WidthMm = widthMm * Scale });

    /// <summary>Keeps later text off this place.</summary>
    public void Take(Box2 box) => all.Taken.Add(box);

    /// <summary>Whether a box lies on the board and on nothing that is taken.</summary>
    public bool IsFree(Box2 box) => all.IsFree(box);

    /// <summary>What there is so far in a part of the sheet.</summary>
    public Nearby Near(Box2 reach) => all.Within(reach);

    /// <summary>Whether nothing that keeps text off stands on a place, which may lie off the board.</summary>
    public bool IsUntaken(Box2 box) => all.IsUntaken(box);

    /// <summary>Keeps words in pods off a sign that stands on them.</summary>
    public void KeepOff(Box2 sign) => signs.Add(sign);

    /// <summary>Keeps words off a line, which pods may hide.</summary>
    public void KeepOff(Point2 from, Point2 to, bool isUnderPods = false) => all.Lines.Add((from, to, isUnderPods));

    /// <summary>Keeps words off a closed line, which pods may hide.</summary>
    public void KeepOff(Ring ring, bool isUnderPods = false)
    {
        foreach (var (a, b) in EdgePath.Sides(ring))
        {
            KeepOff(a, b, isUnderPods);
        }
    }

    /// <summary>Adds strokes that pods hide, and keeps words off them.</summary>
    public void AddHatch(string layer, Primitive.Hatch hatch)
    {
        Add(layer, hatch);
        var ends = HatchLines.Of(hatch);
        for (var i = 0; i + 1 < ends.Length; i += 2)
        {
            KeepOff(ends[i], ends[i + 1], isUnderPods: true);
        }
    }

    /// <summary>A line from a word to what it names; words keep off it.</summary>
    public void AddLeader(Point2 from, Point2 to)
    {
        AddLine(Labels, "leader", from, to);
        KeepOff(from, to);
        all.Leaders.Add((from, to));
    }

    /// <summary>Whether a straight line crosses one that leads from a word to what it names.</summary>
    public bool CrossesLeader(Point2 from, Point2 to) => all.CrossesLeader(from, to);

    /// <summary>The sign of a port of the board: words outside pods hide it only where there is no other room.</summary>
    public void AddPort(Point2 at, double radius) => all.Ports.Add(new Box2(at.X, at.Y, at.X, at.Y).Grow(0.75 * radius));

    /// <summary>The last primitives of a layer are a word that gives way, as long as its twin stays.</summary>
    public void AddYielding(string twin, string layer, int count, Box2 box) => yielding.Add((twin, box, [.. layers[layer].TakeLast(count)]));

    /// <summary>Whether a word that gives way is touched.</summary>
    public bool MakesYield(Func<Box2, bool> isTouched) => yielding.Exists(y => isTouched(y.Box));

    /// <summary>Takes the words away that are touched; their twins then stay.</summary>
    public void Yield(string layer, Func<Box2, bool> isTouched)
    {
        foreach (var (twin, _, drawn) in yielding.Where(y => isTouched(y.Box)).ToList())
        {
            foreach (var primitive in drawn)
            {
                layers[layer].Remove(primitive);
            }

            yielding.RemoveAll(y => y.Drawn == drawn);
            foreach (var other in yielding.Where(y => y.Twin == twin).ToList())
            {
                Take(other.Box);
                AddWord(other.Box);
                yielding.Remove(other);
            }
        }
    }

    /// <summary>Whether the sign of a port lies under a box.</summary>
    public bool IsOnPort(Box2 box) => all.IsOnPort(box);

    /// <summary>Whether the sign of a port lies under a straight line.</summary>
    public bool IsOnPort(Point2 from, Point2 to) => all.IsOnPort(from, to);

    /// <summary>The dot of a mark: lines from elsewhere run past it.</summary>
    public void AddDot(Point2 at) => dots.Add(at);

    /// <summary>Whether the dot of a mark touches a box.</summary>
    public bool HasDot(Box2 box) => dots.Exists(d => box.Grow(0.9 * Scale).Contains(d));

    /// <summary>Whether a straight line from elsewhere comes to the dot of a mark; one from a dot close by must lead away from it.</summary>
    public bool IsAtDot(Point2 from, Point2 to)
    {
        var clear = 1.2 * Scale;
        return dots.Exists(d => (d - from).Length is > 1e-6 and var apart
            && (apart <= 1.5 * clear ? (to - from).Dot(d - from) > 0.3 * apart * (to - from).Length : EdgePath.Distance(from, to, d) < clear));
    }

    /// <summary>Whether a line from a place to a word can be followed: it runs over no word, across and along no other line, and past the dots of marks.</summary>
    public bool IsPointerClear(Point2 place, Point2 to) =>
        !HasWordBeyond(place, to) && !CrossesLeader(place, to) && !IsAtDot(place, to) && !RunsAlongLine(place, to);

    /// <summary>Writes a name on a ground of its own; its place is then taken.</summary>
    public void AddName(Box2 place, string words, double paperSize)
    {
        AddBox(Labels, "knockout", place);
        AddText(Labels, "text-bold", place.Centre, words, paperSize, TextAnchor.Middle);
        Take(place);
        AddWord(place);
    }

    /// <summary>A word that stands in the drawing: lines to labels run round it.</summary>
    public void AddWord(Box2 box) => all.Words.Add(box);

    /// <summary>Whether a word stands on a place.</summary>
    public bool HasWord(Box2 box) => all.HasWord(box);

    /// <summary>Whether a word stands on a line from a place that cannot be moved: one that covers the place itself is left aside.</summary>
    public bool HasWordBeyond(Point2 place, Point2 to) => all.Words.Exists(w => !w.Contains(place) && EdgePath.Touches(w, place, to));

    /// <summary>The signs that words are kept off, as far as they touch a box.</summary>
    public IEnumerable<Box2> SignsOn(Box2 box) => signs.Where(s => s.Touches(box));

    /// <summary>The words that touch a box.</summary>
    public IEnumerable<Box2> WordsOn(Box2 box) => all.Words.Where(w => w.Touches(box));

    /// <summary>The lines that words are kept off, as far as they touch a box; on pods, those that pods do not hide.</summary>
    public IEnumerable<(Point2 A, Point2 B)> LinesOver(Box2 box, bool onPods = false) =>
        all.Lines.Where(l => !(onPods && l.IsUnderPods) && EdgePath.Touches(box, l.A, l.B)).Select(l => (l.A, l.B));

    /// <summary>Whether a line that words are kept off touches a box.</summary>
    public bool IsCrossed(Box2 box) => all.IsCrossed(box);

    /// <summary>Whether a straight line runs along one that words are kept off, so that it cannot be seen.</summary>
    public bool RunsAlongLine(Point2 from, Point2 to)
    {
        // Where it begins it touches the line of what it names.
        const int samples = 10;
        const double mostShare = 0.4;
        return Enumerable.Range(1, samples).Select(i => from + (to - from) * (0.2 + 0.8 * i / samples))
            .Count(p => IsCrossed(new Box2(p.X, p.Y, p.X, p.Y).Grow(0.35 * Scale))) > mostShare * samples;
    }

    /// <summary>Open ports whose names found no room.</summary>
    public int PortsWithoutName { get; set; }

    /// <summary>Loose pieces whose names found no room.</summary>
    public int PiecesWithoutName { get; set; }

    /// <summary>How far the labels have come, to go back to.</summary>
    public (int Labels, int Taken, int Words, int Lines, int Leaders) Mark() =>
        (layers[Labels].Count, all.Taken.Count, all.Words.Count, all.Lines.Count, all.Leaders.Count);

    /// <summary>Takes the labels back that were drawn since.</summary>
    public void Back((int Labels, int Taken, int Words, int Lines, int Leaders) mark)
    {
        layers[Labels].Count = mark.Labels;
        all.Taken.RemoveRange(mark.Taken, all.Taken.Count - mark.Taken);
        all.Words.RemoveRange(mark.Words, all.Words.Count - mark.Words);
        all.Lines.RemoveRange(mark.Lines, all.Lines.Count - mark.Lines);
        all.Leaders.RemoveRange(mark.Leaders, all.Leaders.Count - mark.Leaders);
    }

    /// <summary>How much of a straight line runs over what is taken, mm of paper.</summary>
    public double Covered(Point2 from, Point2 to)
    {
        const int samples = 24;
        return Enumerable.Range(1, samples).Select(i => from + (to - from) * ((double)i / samples))
            .Count(p => all.Taken.Exists(t => t.Contains(p))) * (to - from).Length / samples / Scale;
    }

    /// <summary>The box that a line of text fills, with its middle at a point.</summary>
    public Box2 TextBox(Point2 middle, string words, double paperSize, bool isBold = false)
    {
        var width = TextMeasure.Width(words, paperSize, isBold) * Scale;
        var height = paperSize * Scale;
        return new(middle.X - width / 2, middle.Y - height / 2, middle.X + width / 2, middle.Y + height / 2);
    }

    /// <summary>Whether anything of a style, or of its form for small shapes, is in the drawing.</summary>
    public bool Shows(string style) => layers.Any(l => l.Key != Panel && l.Value.Any(p => p.Style == style || p.Style == style + Small));

    /// <summary>The primitives of a layer so far.</summary>
    public ImmutableArray<Primitive> On(string layer) => layers[layer].ToImmutable();

    public Sheet Finish(string title, string description) => new(
        title, description, Page, Scale, [.. Order.Select(name => new Layer(name, layers[name].ToImmutable()))]);

    public static Ring RingOf(Box2 b) => new([new(b.MinX, b.MinY), new(b.MaxX, b.MinY), new(b.MaxX, b.MaxY), new(b.MinX, b.MaxY)]);
}
