using System.Globalization;
using System.Text;

namespace PodLayout.Benchmarks;

/// <summary>Posted programs that are hard to read and sweep, made here. All cut below the underside of a part 30 mm thick.</summary>
internal static class ProgramCases
{
    /// <summary>The programs by name.</summary>
    public static readonly SortedDictionary<string, (string Words, Func<string> Make)> All = new(StringComparer.Ordinal)
    {
        ["1-spline"] = ("a posted spline: 100,000 lines of about 0.05 mm", Spline),
        ["2-raster"] = ("a raster over 400 x 250 mm: passes 1 mm apart, 100,000 lines of 1 mm", Raster),
        ["3-holes"] = ("10,000 drilled holes of 6 mm, 8 mm apart", Holes),
        ["4-walk"] = ("a random walk that crosses itself: 10,000 lines of up to 40 mm over 600 x 400 mm", Walk),
        ["5-fine-walk"] = ("a random walk that crosses itself: 100,000 lines of 1.5 mm", FineWalk),
        ["6-helices"] = ("5,000 helices of 1 to 8 mm, each cut at the height that counts", Helices),
    };

    private static string Spline()
    {
        const int Lines = 100_000;
        var text = Start();
        for (var i = 0; i <= Lines; i++)
        {
            var t = 2 * Math.PI * i / Lines;
            var r = 400 + 60 * Math.Sin(5 * t) + 25 * Math.Cos(13 * t);
            Add(text, $"G1 X{500 + 1.2 * r * Math.Cos(t):0.0000} Y{350 + 0.7 * r * Math.Sin(t):0.0000}\n");
        }

        return End(text);
    }

    private static string Raster()
    {
        var text = Start();
        for (var row = 0; row < 250; row++)
        {
            for (var i = 0; i <= 400; i++)
            {
                Add(text, $"G1 X{100 + (row % 2 == 0 ? i : 400 - i)} Y{100 + row}\n");
            }
        }

        return End(text);
    }

    private static string Holes()
    {
        var text = Start();
        text.Append("G0 Z5\n");
        for (var i = 0; i < 10_000; i++)
        {
            Add(text, $"G81 X{10 + 8 * (i % 100)} Y{10 + 8 * (i / 100)} Z-31 R2\n");
        }

        return End(text.Append("G80\n"));
    }

    private static string Walk()
    {
        var random = new Random(Cases.Seed);
        var text = Start();
        double x = 300, y = 200;
        for (var i = 0; i < 10_000; i++)
        {
            (x, y) = (Math.Clamp(x + 80 * random.NextDouble() - 40, 0, 600), Math.Clamp(y + 80 * random.NextDouble() - 40, 0, 400));
            Add(text, $"G1 X{x:0.000} Y{y:0.000}\n");
        }

        return End(text);
    }

    private static string FineWalk()
    {
        var random = new Random(Cases.Seed);
        var text = Start();
        double x = 300, y = 200, angle = 0;
        for (var i = 0; i < 100_000; i++)
        {
            angle += 0.6 * (random.NextDouble() - 0.5);
            (x, y) = (x + 1.5 * Math.Cos(angle), y + 1.5 * Math.Sin(angle));
            if (x is < 0 or > 600 || y is < 0 or > 400)
            {
                (x, y, angle) = (Math.Clamp(x, 0, 600), Math.Clamp(y, 0, 400), angle + Math.PI);
            }

            Add(text, $"G1 X{x:0.000} Y{y:0.000}\n");
        }

        return End(text);
    }

    private static string Helices()
    {
        var random = new Random(Cases.Seed);
        var text = Start();
        for (var i = 0; i < 5000; i++)
        {
            var radius = 1 + 7 * random.NextDouble();
            Add(text, $"G0 Z5\nG0 X{600 * random.NextDouble():0.000} Y{400 * random.NextDouble():0.000}\nG1 Z-28\nG2 I{radius:0.000} Z{-30.2 - random.NextDouble():0.000}\n");
        }

        return End(text);
    }

    private static StringBuilder Start() => new("G21 G90 G17\nT1 M6\nS18000 M3\nG0 Z5\nG0 X0 Y0\nG1 Z-31 F3000\n");

    private static string End(StringBuilder text) => text.Append("G0 Z5\nM2\n").ToString();

    private static void Add(StringBuilder text, FormattableString line) => text.Append(line.ToString(CultureInfo.InvariantCulture));
}
