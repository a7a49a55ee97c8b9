using System.Globalization;

namespace PodLayout.Tests.Reading;

/// <summary>
/// SVG files of our own whose areas are known in closed form: each figure in six dressings of units, transforms, uses and style
/// sheets (SVG 1.1, sections 5.6, 6.4, 7.6, 7.10, 11.5; SVG 2, section 8.2).
/// </summary>
internal static class SvgCorpus
{
    /// <summary>A file and what is known of it.</summary>
    /// <param name="Name">Its name.</param>
    /// <param name="Text">The SVG.</param>
    /// <param name="AreasMm2">Areas of outline and holes; empty where it must be refused.</param>
    /// <param name="IsPlain">Whether everything in it is seen, so that a reader that knows no style sheets reads the same.</param>
    public sealed record Entry(string Name, string Text, double[] AreasMm2, bool IsPlain);

    private static readonly (string Name, string Inner, double[] Areas)[] Figures =
    [
        ("rect", "<rect x='50' y='50' width='200' height='100'/>", [20000]),
        ("round-rect", "<rect x='50' y='50' width='200' height='100' rx='20'/>", [20000 - (4 - Math.PI) * 400]),
        ("circle", "<circle cx='200' cy='150' r='100'/>", [10000 * Math.PI]),
        ("ellipse", "<ellipse cx='200' cy='150' rx='120' ry='60'/>", [7200 * Math.PI]),
        ("polygon", "<polygon points='50,50 250,50 250,200'/>", [15000]),
        ("path-arc", "<path d='M50 150A100 100 0 0 1 250 150z'/>", [5000 * Math.PI]),
        ("parabola", "<path d='M50 200Q150 0 250 200z'/>", [2.0 / 3 * 20000]),
        ("ring", "<path d='M50 50h200v100h-200zM100 75h50v50h-50z'/>", [20000, 2500]),
        ("hole", "<circle cx='200' cy='150' r='100'/><circle cx='200' cy='150' r='20' fill='white'/>", [10000 * Math.PI, 400 * Math.PI]),
        ("relative", "<path d='m50 50 200 0 0 100-200 0z'/>", [20000]),
        ("smooth", "<path d='M50 100q50-100 100 0t100 0v100h-200z'/>", [20000]),
    ];

    public static IEnumerable<Entry> All
    {
        get
        {
            foreach (var (name, inner, areas) in Figures)
            {
                yield return new(name + "-mm", Svg("width='400mm' height='300mm' viewBox='0 0 400 300'", inner), areas, true);
                yield return new(name + "-inches", Svg("width='20in' height='15in' viewBox='0 0 400 300'", inner), Scaled(areas, 20 * 25.4 / 400), true);
                yield return new(name + "-px", Svg("width='400' height='300'", inner), Scaled(areas, 25.4 / 96), true);
                yield return new(name + "-turned", Svg("width='400mm' height='300mm' viewBox='0 0 400 300'", $"<g transform='translate(40 -20) rotate(17) scale(.5 .8)'>{inner}</g>"), [.. areas.Select(a => 0.4 * a)], true);
                yield return new(name + "-used", Svg("width='400mm' height='300mm' viewBox='0 0 400 300'", $"<defs><g id='a'>{inner}</g></defs><use xlink:href='#a' x='5' y='7' transform='scale(.9)'/>"), Scaled(areas, 0.9), true);
                yield return new(name + "-styled", Svg("width='400mm' height='300mm' viewBox='0 0 400 300'", $"<style type='text/css'>.guide{{display:none}} #page{{fill:none;stroke:none}}</style><rect id='page' width='400' height='300'/><circle class='guide x' r='90'/><clipPath id='c'><rect width='400' height='300'/></clipPath><g clip-path='url(#c)'>{inner}</g>"), areas, false);
            }

            yield return new("masked", Svg("width='400mm' height='300mm' viewBox='0 0 400 300'", "<mask id='m'><rect width='9' height='9'/></mask><g mask='url(#m)'><rect width='90' height='90'/></g>"), [], false);
            yield return new("two", Svg("width='400mm' height='300mm' viewBox='0 0 400 300'", "<rect width='90' height='90'/><rect x='200' width='90' height='90'/>"), [], false);
        }
    }

    private static double[] Scaled(double[] areas, double scale) => [.. areas.Select(a => a * scale * scale)];

    private static string Svg(string size, string inner) =>
        string.Create(CultureInfo.InvariantCulture, $"<svg xmlns='http://www.w3.org/2000/svg' xmlns:xlink='http://www.w3.org/1999/xlink' {size}>{inner}</svg>");
}
