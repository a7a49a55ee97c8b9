using System.Text;

namespace PodLayout.Tests.Fuzz;

/// <summary>Damages files as transfer, editing and bad exports do: bytes, lines and figures, and pieces of other files.</summary>
internal static class Mutation
{
    // What breaks readers: limits of types, figures beyond all shops, words that are no figures, and what steers.
    private static readonly string[] Tokens =
    [
        "0", "-0", "-1", "1e-300", "1e300", "1e400", "NaN", "Infinity", "0.1e", "--5", "2147483647", "2147483648", "-32768", "32767", "65536",
        "9223372036854775807", "999999999999", "0.0000001", "1e7", "-1e7", "360", "1e-9", "", " ", "\"", "null", "true", "[]", "{}", "[[[[", "\u001b[2J", "\u202E",
        "é", "=1+1", "../../..", "G83 Q0.001", "L9999", "<use href='#a'/>", "<g>", "</g>", "url(#x)", "%", "\0",
    ];

    /// <summary>A damaged file; the same for the same random numbers.</summary>
    /// <param name="content">The file.</param>
    /// <param name="other">Another one of its kind, to take pieces from.</param>
    /// <param name="random">Random numbers.</param>
    public static byte[] Of(byte[] content, byte[] other, Random random)
    {
        var bytes = content.ToList();
        for (var left = 1 + random.Next(3); left > 0; left--)
        {
            bytes = random.Next(10) switch
            {
                0 => Bytes(bytes, random),
                1 => Cut(bytes, random),
                2 => Repeated(bytes, random),
                3 or 4 or 5 or 6 => Figure(bytes, random),
                7 => Lines(bytes, random),
                8 => Spliced(bytes, other, random),
                _ => Inserted(bytes, random),
            };
        }

        return [.. bytes];
    }

    private static List<byte> Bytes(List<byte> bytes, Random random)
    {
        for (var left = 1 + random.Next(4); left > 0 && bytes.Count > 0; left--)
        {
            bytes[random.Next(bytes.Count)] = (byte)random.Next(256);
        }

        return bytes;
    }

    private static List<byte> Cut(List<byte> bytes, Random random)
    {
        var (from, count) = Piece(bytes.Count, random);
        return random.Next(3) == 0 ? bytes[..from] : [.. bytes[..from], .. bytes[(from + count)..]];
    }

    private static List<byte> Repeated(List<byte> bytes, Random random)
    {
        var (from, count) = Piece(bytes.Count, random);
        var times = 1 + random.Next(random.Next(10) == 0 ? 200 : 4);
        return [.. bytes[..from], .. Enumerable.Repeat(bytes.GetRange(from, count), times).SelectMany(p => p), .. bytes[from..]];
    }

    // A run of digits, points and signs becomes another one.
    private static List<byte> Figure(List<byte> bytes, Random random)
    {
        static bool IsFigure(byte b) => b is >= (byte)'0' and <= (byte)'9' or (byte)'.' or (byte)'-';
        var starts = Enumerable.Range(0, bytes.Count).Where(i => IsFigure(bytes[i]) && (i == 0 || !IsFigure(bytes[i - 1]))).ToList();
        if (starts.Count == 0)
        {
            return Inserted(bytes, random);
        }

        var from = starts[random.Next(starts.Count)];
        var to = from;
        while (to < bytes.Count && IsFigure(bytes[to]))
        {
            to++;
        }

        var figure = Encoding.ASCII.GetString([.. bytes[from..to]]);
        var next = random.Next(4) switch
        {
            0 => Tokens[random.Next(Tokens.Length)],
            1 => figure + random.Next(10),
            2 => "-" + figure,
            _ => double.TryParse(figure, System.Globalization.CultureInfo.InvariantCulture, out var value)
                ? (value * Math.Pow(10, random.Next(-3, 4)) + random.Next(-2, 3)).ToString("R", System.Globalization.CultureInfo.InvariantCulture) : "7",
        };
        return [.. bytes[..from], .. Encoding.UTF8.GetBytes(next), .. bytes[to..]];
    }

    private static List<byte> Lines(List<byte> bytes, Random random)
    {
        var lines = Encoding.Latin1.GetString([.. bytes]).Split('\n').ToList();
        var (a, b) = (random.Next(lines.Count), random.Next(lines.Count));
        switch (random.Next(3))
        {
            case 0:
                (lines[a], lines[b]) = (lines[b], lines[a]);
                break;
            case 1:
                lines.RemoveAt(a);
                break;
            default:
                lines.InsertRange(a, Enumerable.Repeat(lines[b], 1 + random.Next(5)));
                break;
        }

        return [.. Encoding.Latin1.GetBytes(string.Join('\n', lines))];
    }

    private static List<byte> Spliced(List<byte> bytes, byte[] other, Random random)
    {
        var at = random.Next(bytes.Count + 1);
        var (from, count) = Piece(other.Length, random);
        return [.. bytes[..at], .. other[from..(from + count)], .. bytes[at..]];
    }

    private static List<byte> Inserted(List<byte> bytes, Random random)
    {
        var at = random.Next(bytes.Count + 1);
        return [.. bytes[..at], .. Encoding.UTF8.GetBytes(Tokens[random.Next(Tokens.Length)]), .. bytes[at..]];
    }

    private static (int From, int Count) Piece(int length, Random random)
    {
        var from = random.Next(length + 1);
        return (from, Math.Min(length - from, random.Next(random.Next(4) == 0 ? Math.Max(1, length) : 40)));
    }
}
