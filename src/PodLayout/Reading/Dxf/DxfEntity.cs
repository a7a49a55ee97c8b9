using System.Globalization;

namespace PodLayout.Reading.Dxf;

/// <summary>An entity with its groups, and the vertices or attributes that follow it.</summary>
internal sealed class DxfEntity(string kind, int? line)
{
    public string Kind => kind;

    public int? Line => line;

    public List<Tag> Tags { get; } = [];

    public List<DxfEntity> Parts { get; } = [];

    public string Layer
    {
        get
        {
            var layer = Text(8);
            return string.IsNullOrEmpty(layer) ? "0" : TextEncoding.Unescaped(layer);
        }
    }

    public bool IsInPaperSpace => Integer(67, 0) != 0;

    public bool IsInvisible => (Integer(60, 0) & 1) != 0;

    /// <summary>How messages name the entity.</summary>
    public string Name => line is { } l
        ? string.Create(CultureInfo.InvariantCulture, $"{kind} on layer {Layer}, line {l}") : $"{kind} on layer {Layer}";

    public string? Text(int code)
    {
        foreach (var tag in Tags)
        {
            if (tag.Code == code)
                return tag.Value;
        }

        return null;
    }

    public bool Has(int code) => Text(code) is not null;

    public int Integer(int code, int otherwise) =>
        double.TryParse(Text(code), NumberStyles.Float, CultureInfo.InvariantCulture, out var n) && Math.Abs(n) < 1e9
            ? (int)n : otherwise;
}
