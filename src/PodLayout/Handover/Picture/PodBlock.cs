using System.Collections.Immutable;
using PodLayout.Geometry;

namespace PodLayout.Handover.Picture;

/// <summary>The words of one pod about a middle: its number, its type, and the sign of a turned pod that has no room in its corner.</summary>
/// <param name="Words">Each with the middle of its line, mm of paper from the block's own middle.</param>
/// <param name="Turned">Where the sign's corner lies, and its size; null for no sign.</param>
/// <param name="Width">Width, mm of paper.</param>
/// <param name="Height">Height, mm of paper.</param>
internal sealed record PodBlock(ImmutableArray<PodBlock.Word> Words, (Point2 UpperLeft, double Size)? Turned, double Width, double Height)
{
    private const double TypeShare = 0.62;
    private const double LineShare = 1.02;

    // Of a line of capitals and digits that takes no more than its own height, and between two such lines.
    private const double TightShare = 0.78;
    private const double TightGap = 0.22;

    /// <summary>The number above the type.</summary>
    public static PodBlock Stacked(string id, string type, Face face)
    {
        var head = InLine(id, "", face);
        if (type.Length == 0)
        {
            return head;
        }

        var typeSize = Math.Max(TypeShare * face.Size, face.LeastType);
        double below = face.Line(type, typeSize), gap = face.IsTight ? TightGap * typeSize : 0;
        double width = Math.Max(head.Width, TextMeasure.Width(type, typeSize)), height = head.Height + gap + below;
        Point2 up = new(0, (height - head.Height) / 2);
        return new(
            [.. head.Words.Select(w => w with { Middle = w.Middle + up }), new(type, typeSize, "pod-type", new(0, (below - height) / 2))],
            head.Turned is var (corner, turned) ? (corner + up, turned) : null, width, height);
    }

    /// <summary>The number and the type side by side.</summary>
    public static PodBlock InLine(string id, string type, Face face)
    {
        var (size, typeSize) = (face.Size, Math.Max(0.85 * face.Size, face.LeastType));
        double sign = face.HasTurn ? size : 0, number = TextMeasure.Width(id, size, true) * face.Narrow;
        var typeWidth = type.Length == 0 ? 0 : TextMeasure.Width(type, typeSize) + 0.3 * size;
        var (width, left) = (sign + number + typeWidth, -(sign + number + typeWidth) / 2);
        var words = ImmutableArray.Create(new Word(id, size, "pod-id", new(left + sign + number / 2, 0), face.Narrow < 1 ? number : null));
        return new(
            type.Length == 0 ? words : words.Add(new(type, typeSize, "pod-type", new((width - typeWidth + 0.3 * size) / 2, 0))),
            face.HasTurn ? (new(left + 0.1 * size, 0.36 * size), 0.72 * size) : null, width,
            Math.Max(face.Line(id, size), type.Length == 0 ? 0 : face.Line(type, typeSize)));
    }

    /// <summary>The type by itself.</summary>
    public static PodBlock Alone(string type, double size) =>
        new([new(type, size, "pod-type", default)], null, TextMeasure.Width(type, size), size * LineShare);

    /// <summary>The box that it fills about a point of the board.</summary>
    public Box2 At(Point2 middle, double scale) => new(
        middle.X - Width / 2 * scale, middle.Y - Height / 2 * scale, middle.X + Width / 2 * scale, middle.Y + Height / 2 * scale);

    /// <summary>Draws it.</summary>
    public void Draw(SheetDraft draft, Point2 middle)
    {
        foreach (var word in Words)
        {
            draft.AddText(
                SheetDraft.Labels, word.Style, middle + word.Middle * draft.Scale, word.Text, word.Size, TextAnchor.Middle, widthMm: word.WidthMm);
        }

        if (Turned is var (corner, size))
        {
            Symbols.Turned(draft, SheetDraft.Labels, middle + corner * draft.Scale, new(size * draft.Scale, -size * draft.Scale));
        }
    }

    /// <summary>One word of a block.</summary>
    /// <param name="Text">The word.</param>
    /// <param name="Size">Its size.</param>
    /// <param name="Style">Its style.</param>
    /// <param name="Middle">Its middle from the block's.</param>
    /// <param name="WidthMm">The width that it is made narrower to, mm of paper; null for its own.</param>
    public sealed record Word(string Text, double Size, string Style, Point2 Middle, double? WidthMm = null);

    /// <summary>How a block is written.</summary>
    /// <param name="Size">Size of the number.</param>
    /// <param name="LeastType">The least size of the type.</param>
    /// <param name="HasTurn">Whether the sign of a turned pod stands before the number.</param>
    /// <param name="IsTight">Whether lines of capitals and digits take only their own height.</param>
    /// <param name="Narrow">The number's width as a share of what it is measured at.</param>
    public sealed record Face(double Size, double LeastType, bool HasTurn, bool IsTight = false, double Narrow = 1)
    {
        /// <summary>The height that a line takes.</summary>
        public double Line(string words, double size) => size * (IsTight && TextMeasure.IsOfCapitals(words) ? TightShare : LineShare);
    }
}
