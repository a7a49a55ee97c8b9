using System.Globalization;
using System.Text;

namespace PodLayout.Handover.Picture;

/// <summary>The lines of a DXF file as they are written: pairs of group code and value, and handles that count up.</summary>
internal sealed class DxfTags
{
    private readonly StringBuilder text = new();
    private int lastHandle;

    public string Text => text.ToString();

    public string NewHandle() => (++lastHandle).ToString("X", CultureInfo.InvariantCulture);

    /// <summary>The handle after the last one, which the header tells.</summary>
    public string NextHandle => (lastHandle + 1).ToString("X", CultureInfo.InvariantCulture);

    public DxfTags Put(int code, string value)
    {
        text.Append(code.ToString(CultureInfo.InvariantCulture).PadLeft(3)).Append('\n').Append(value).Append('\n');
        return this;
    }

    public DxfTags Put(int code, int value) => Put(code, value.ToString(CultureInfo.InvariantCulture));

    /// <summary>A real number to a millionth, always with a decimal point.</summary>
    public DxfTags Put(int code, double value) =>
        Put(code, (Math.Round(value, 6, MidpointRounding.AwayFromZero) + 0.0).ToString("0.0#####", CultureInfo.InvariantCulture));

    /// <summary>A point: X under the code, Y under the code plus ten, Z 0 under the code plus twenty.</summary>
    public DxfTags Put(int code, Geometry.Point2 p, bool withZ = true)
    {
        Put(code, p.X).Put(code + 10, p.Y);
        return withZ ? Put(code + 20, 0.0) : this;
    }

    public void Append(DxfTags other) => text.Append(other.text);

    /// <summary>Text as DXF of this version takes it: characters beyond ASCII by their number, no control characters.</summary>
    public static string Plain(string words) => string.Concat(words.Select(c => Findings.Plain.Steers(c)
        ? " " : c < 128 ? c.ToString() : "\\U+" + ((int)c).ToString("X4", CultureInfo.InvariantCulture)));
}
