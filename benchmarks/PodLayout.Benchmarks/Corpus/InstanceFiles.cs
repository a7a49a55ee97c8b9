using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using PodLayout.Geometry;

namespace PodLayout.Benchmarks.Corpus;

/// <summary>A job as a user has it: a shop, a job and a drawing.</summary>
/// <param name="ShopJson">The shop file.</param>
/// <param name="JobJson">The job file, which names the other two as <c>shop.json</c> and <c>part.dxf</c>.</param>
/// <param name="Rings">What is drawn, mm.</param>
internal sealed record InstanceFiles(string ShopJson, string JobJson, ImmutableArray<Ring> Rings)
{
    /// <summary>Area of the part, m².</summary>
    public double AreaM2 => (2 * Rings.Max(r => r.AreaMm2) - Rings.Sum(r => r.AreaMm2)) / 1e6;

    /// <summary>Writes the three files.</summary>
    public void WriteTo(string folder)
    {
        Directory.CreateDirectory(folder);
        File.WriteAllText(Path.Combine(folder, "shop.json"), ShopJson);
        File.WriteAllText(Path.Combine(folder, "job.json"), JobJson);
        File.WriteAllText(Path.Combine(folder, "part.dxf"), Drawing());
    }

    // Closed polylines of release 12, which have neither handles nor subclasses.
    private string Drawing()
    {
        StringBuilder text = new("0\nSECTION\n2\nENTITIES\n");
        foreach (var ring in Rings)
        {
            text.Append("0\nPOLYLINE\n8\n0\n66\n1\n70\n1\n");
            foreach (var p in ring.Points)
            {
                text.Append(CultureInfo.InvariantCulture, $"0\nVERTEX\n8\n0\n10\n{p.X:R}\n20\n{p.Y:R}\n");
            }

            text.Append("0\nSEQEND\n8\n0\n");
        }

        return text.Append("0\nENDSEC\n0\nEOF\n").ToString();
    }
}
