using System.Collections.Immutable;
using System.Globalization;
using PodLayout.Handover.Lettering;
using PodLayout.Handover.Picture;

namespace PodLayout.Handover.Setup;

/// <summary>Pages of text while they are filled from top to bottom: sheets at full size, millimetres from the lower left corner.</summary>
internal sealed class PaperDraft(PaperSize paper, string running, bool isRunningStrong = false)
{
    private const double MarginMm = 14;
    private const double TopMm = 22;
    private const double BottomMm = 17;

    /// <summary>How far the head of a page stands below its edge, mm.</summary>
    public const double HeadMm = 13;

    /// <summary>How far the foot of a page stands above its edge, mm.</summary>
    public const double FootMm = 10;

    /// <summary>Size of the letters at the head and foot of a page, mm.</summary>
    public const double RunningMm = 3.2;

    private readonly List<ImmutableArray<Primitive>.Builder> pages = [];
    private readonly Dictionary<string, int> begun = new(StringComparer.Ordinal);
    private double y;

    public static double Left => MarginMm;

    public double Width => paper.WidthMm - 2 * MarginMm;

    /// <summary>Where the next thing begins, from below.</summary>
    public double Y => y;

    /// <summary>Room that is left on the page, mm.</summary>
    public double Room => pages.Count == 0 ? 0 : y - BottomMm;

    /// <summary>Room on an empty page, mm.</summary>
    public double FullRoom => paper.HeightMm - TopMm - BottomMm;

    /// <summary>Begins a new page where there is less room than this; whether it did.</summary>
    public bool Need(double heightMm)
    {
        return Room < heightMm && NewPage();
    }

    /// <summary>Begins a new page unless this one is empty; whether it did.</summary>
    public bool NewPage()
    {
        if (pages.Count > 0 && Room >= FullRoom)
        {
            return false;
        }

        pages.Add(ImmutableArray.CreateBuilder<Primitive>());
        y = paper.HeightMm - TopMm;
        return true;
    }

    public void Down(double mm) => y -= mm;

    public void Add(Primitive primitive) => pages[^1].Add(primitive);

    public void Text(string style, double x, double at, string words, double size, TextAnchor anchor = TextAnchor.Start) =>
        Add(new Primitive.Text(style, new(x, at), words, size, anchor));

    public void Rule(string style, double fromX, double toX, double at) => Add(new Primitive.Line(style, [new(fromX, at), new(toX, at)]));

    public void Box(string style, double minX, double minY, double size) =>
        Add(new Primitive.Area(style, [SheetDraft.RingOf(new(minX, minY, minX + size, minY + size))]));

    /// <summary>The pages, each with its head and foot.</summary>
    /// <param name="before">How many pages come before these.</param>
    /// <param name="after">How many come after them.</param>
    public IEnumerable<Sheet> Finish(int before, int after = 0)
    {
        var total = before + pages.Count + after;
        for (var i = 0; i < pages.Count; i++)
        {
            var page = pages[i];
            var (left, right, top) = (MarginMm, paper.WidthMm - MarginMm, paper.HeightMm - HeadMm);
            var number = Number(before + i + 1, total);
            page.Add(new Primitive.Text(
                isRunningStrong ? "text-bold" : "text", new(left, top), Cut(TypeFace.Of(isRunningStrong), running, right - left), RunningMm, TextAnchor.Start));
            page.Add(new Primitive.Line("page-rule", [new(left, top - 3), new(right, top - 3)]));
            page.Add(new Primitive.Text("text", new(right, FootMm), number, RunningMm, TextAnchor.End));
            yield return new(running, "", new(0, 0, paper.WidthMm, paper.HeightMm), 1, [new("page", page.ToImmutable())]);
        }
    }

    public int Count => pages.Count;

    /// <summary>Remembers that something begins on this page.</summary>
    public void Begin(string id) => begun.TryAdd(id, pages.Count);

    /// <summary>The page that it begins on, counted from 1 among these.</summary>
    public int PageOf(string id) => begun[id];

    public static string Number(int page, int total) => $"page {CsvText.Count(page)} of {CsvText.Count(total)}";

    /// <summary>The text cut to a width, with an ellipsis.</summary>
    public static string Cut(TypeFace face, string text, double width, double size = RunningMm)
    {
        if (face.Width(text, size) <= width)
        {
            return text;
        }

        // Between letters, since a long word would leave nothing of itself.
        var starts = StringInfo.ParseCombiningCharacters(text);
        var count = starts.Length - 1;
        while (count > 0 && face.Width(text[..starts[count]] + "…", size) > width)
        {
            count--;
        }

        return text[..starts[count]].TrimEnd() + "…";
    }
}
