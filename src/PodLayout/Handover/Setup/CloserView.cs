using System.Collections.Immutable;
using System.Globalization;
using PodLayout.Geometry;
using PodLayout.Handover.Picture;
using PodLayout.Layouts;
using PodLayout.Shops;

namespace PodLayout.Handover.Setup;

/// <summary>
/// A part of the board shown larger, since the numbers of some of its pods are too small to be read in the picture of the whole. It has
/// the pods and ports with their numbers; what else is told of the board is read there.
/// </summary>
/// <param name="Number">Its number, counted from 1. Letters are types of pods.</param>
/// <param name="Place">Which grooves lie in it.</param>
/// <param name="Picture">What is seen.</param>
internal sealed record CloserView(int Number, string Place, Sheet Picture)
{
    // At least so wide and high, in short sides of the smallest of its pods.
    private const double LeastSides = 8;

    // On each side so much larger at most where words would hide the marks at its corners.
    private const double MostMoreSides = 1;

    // How much of the marks may be hidden rather than one side lie as much farther out.
    private const double LargerMark = 0.08;

    // A view that is less than so many times as large as the whole is parted at once.
    private const double LeastTimes = 1.5;

    /// <summary>What it is called.</summary>
    public string Name => Named(Number);

    /// <summary>Its title.</summary>
    public string Title => $"{Name}: {Place}";

    /// <summary>The views that are needed, as few as there can be by halves; each is marked in the picture of the whole.</summary>
    /// <param name="result">The plan.</param>
    /// <param name="whole">The picture of the whole; the marks are added to it.</param>
    /// <param name="tooSmall">The pods whose numbers are too small there.</param>
    /// <param name="faults">Pods that keep a rule no longer, or that are not counted.</param>
    /// <param name="where">Where the views are found, of which there are so many.</param>
    /// <param name="shape">Width of the room for a view as a share of its height.</param>
    /// <param name="begin">An empty sheet for a part of the board and the pods in it, and how large words are there.</param>
    public static ImmutableArray<CloserView> Of(
        PlanResult result, SheetDraft whole, IReadOnlyList<int> tooSmall, ImmutableArray<PodFault> faults, Func<int, string> where,
        double shape, Func<Box2, ImmutableArray<PlacedPod>, (SheetDraft Draft, LetterSizes Sizes)> begin)
    {
        if (tooSmall.Count == 0)
        {
            return [];
        }

        var layout = result.Layout!;
        List<SheetDraft> drafts = [];

        // As in the whole, where the letters are explained; names of ports matter more than one that all pods have.
        var names = LayoutPicture.Names(result, layout.Pods.Select(p => p.Type).Distinct().Count() > 1 ? whole.Scale : double.PositiveInfinity);
        Show([.. tooSmall]);
        List<(int Number, SheetDraft Draft)> numbered = [.. drafts.OrderBy(d => d.Content.MinY).ThenBy(d => d.Content.MinX).Select((d, i) => (i + 1, d))];
        whole.PortsWithoutName -= numbered.SelectMany(n => PortNames(n.Draft)).Except(PortNames(whole)).Count();
        CloserMark.Draw(whole, [.. numbered.Select(n => (n.Draft.Content, $"{Named(n.Number)}: {where(numbered.Count)}", Named(n.Number)))]);
        return [.. numbered.Select(n => Finished(n.Number, n.Draft, result.Job.Shop.Board))];

        void Show(ImmutableArray<int> pods)
        {
            var window = Filled(layout, Clear(whole, Around(layout, pods, whole.Content), MostMoreSides * Side(layout, pods)), shape, whole.Content);
            if (pods.Length == 1 || LeastTimes * Math.Max(window.Width, window.Height) <= Math.Max(whole.Content.Width, whole.Content.Height))
            {
                var (draft, left) = Drawn(result, window, names, faults, begin);
                if (pods.Length == 1 || !pods.Any(left.Contains))
                {
                    drafts.Add(draft);
                    return;
                }
            }

            var (one, other) = Halves(layout, pods);
            Show(one);
            Show(other);
        }
    }

    private static CloserView Finished(int number, SheetDraft draft, GridBoard board)
    {
        var place = Grooves(board, draft.Content);
        return new(number, place, CutOut.Of(draft.Finish($"{Named(number)}: {place}", "A part of the picture of the board, larger."), draft.Content));
    }

    // The shortest side of these pods.
    private static double Side(Layout layout, ImmutableArray<int> pods) => pods.Min(i => Math.Min(layout.Pods[i].ExtentXMm, layout.Pods[i].ExtentYMm));

    private static (SheetDraft Draft, IReadOnlyList<int> TooSmall) Drawn(
        PlanResult result, Box2 window, IReadOnlyDictionary<string, string> names, ImmutableArray<PodFault> faults, Func<Box2, ImmutableArray<PlacedPod>, (SheetDraft Draft, LetterSizes Sizes)> begin)
    {
        var layout = result.Layout!;
        ImmutableArray<int> shown = [.. Enumerable.Range(0, layout.Pods.Length).Where(i => window.Contains(layout.Pods[i].BodyBox))];
        var (draft, sizes) = begin(window, [.. shown.Select(i => layout.Pods[i])]);
        SetupPicture.DrawThings(draft, result, faults);
        PodLabels labels = new(draft, result.Job.Shop.Board, layout, names, sizes) { Only = shown };
        labels.Inside();
        labels.Outside();
        FaultDrawing.Words(draft, result.Job.Shop.Board, layout, faults);
        return (draft, labels.TooSmall);
    }

    // The pods and those that stand against them, whole, with a little of the board around.
    private static Box2 Around(Layout layout, ImmutableArray<int> pods, Box2 content)
    {
        var side = Side(layout, pods);
        var inner = Union(pods.Select(i => layout.Pods[i].BodyBox)).Grow(0.5 * side);
        var box = Union([inner, .. layout.Pods.Select(p => p.BodyBox).Where(inner.Touches)]).Grow(0.25 * side);
        var (width, height) = (Math.Max(box.Width, LeastSides * side), Math.Max(box.Height, LeastSides * side));
        static (double From, double To) Within(double middle, double length, double from, double to)
        {
            var start = Math.Clamp(middle - length / 2, from, Math.Max(from, to - length));
            return (start, Math.Min(to, start + length));
        }

        var (x, y) = (Within(box.Centre.X, width, content.MinX, content.MaxX), Within(box.Centre.Y, height, content.MinY, content.MaxY));
        return new(x.From, y.From, x.To, y.To);
    }

    // A little larger where words would hide the marks at its corners.
    private static Box2 Clear(SheetDraft whole, Box2 window, double mostMm)
    {
        const int steps = 4;
        double[] more = [.. Enumerable.Range(0, steps).Select(i => mostMm * i / (steps - 1))];
        var near = whole.Near(window.Grow(mostMm + whole.Scale));
        return (from left in more
                from below in more
                from right in more
                from above in more
                let box = new Box2(window.MinX - left, window.MinY - below, window.MaxX + right, window.MaxY + above)
                where whole.Content.Contains(box)
                orderby Math.Round(CloserMark.Hidden(near, box, whole.Scale) + LargerMark * (left + below + right + above) / mostMm, 6)
                select box).DefaultIfEmpty(window).First();
    }

    // With pods that its edge would cut, as long as it is drawn no smaller for them.
    private static Box2 Filled(Layout layout, Box2 window, double shape, Box2 content)
    {
        var most = (Width: Math.Max(window.Width, window.Height * shape), Height: Math.Max(window.Height, window.Width / shape));
        foreach (var pod in layout.Pods.Select(p => p.BodyBox.Grow(0.1 * Math.Min(p.ExtentXMm, p.ExtentYMm))).OrderBy(b => Math.Round((b.Centre - window.Centre).Length, 6)))
        {
            var with = Union([window, pod]);
            window = window.Touches(pod) && with.Width <= most.Width && with.Height <= most.Height && content.Contains(with) ? with : window;
        }

        return window;
    }

    private static IEnumerable<string> PortNames(SheetDraft draft) =>
        draft.On(SheetDraft.Labels).OfType<Primitive.Text>().Where(t => t.Style == "port-name").Select(t => t.Words);

    // Parted where they are farthest apart, across the longer way.
    private static (ImmutableArray<int> One, ImmutableArray<int> Other) Halves(Layout layout, ImmutableArray<int> pods)
    {
        var box = Union(pods.Select(i => layout.Pods[i].BodyBox));
        double At(int pod) => box.Width >= box.Height ? layout.Pods[pod].Centre.X : layout.Pods[pod].Centre.Y;
        ImmutableArray<int> ordered = [.. pods.OrderBy(At).ThenBy(i => i)];
        var middle = (At(ordered[0]) + At(ordered[^1])) / 2;

        // Of gaps of one width the one nearest to the middle.
        var cut = Enumerable.Range(1, ordered.Length - 1).MaxBy(i => (
            Math.Round(At(ordered[i]) - At(ordered[i - 1]), 6), -Math.Round(Math.Abs((At(ordered[i]) + At(ordered[i - 1])) / 2 - middle), 6)));
        return (ordered[..cut], ordered[cut..]);
    }

    private static Box2 Union(IEnumerable<Box2> boxes) => Box2.Around([.. boxes.SelectMany(b => new Point2[] { new(b.MinX, b.MinY), new(b.MaxX, b.MaxY) })]);

    private static string Grooves(GridBoard board, Box2 window)
    {
        string Between(string name, Func<int, double> at, double from, double to)
        {
            var inside = Enumerable.Range(0, int.MaxValue).SkipWhile(i => at(i) < from).TakeWhile(i => at(i) <= to).ToList();
            return inside.Count == 0 ? $"no {name}" : string.Create(CultureInfo.InvariantCulture, $"{name}s {inside[0] + 1} to {inside[^1] + 1}");
        }

        return $"{Between("column", board.ColumnXMm, window.MinX, window.MaxX)}, {Between("row", board.RowYMm, window.MinY, window.MaxY)}";
    }

    private static string Named(int number) => $"View {CsvText.Count(number)}";
}
