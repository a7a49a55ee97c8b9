using PodLayout.Reading;
using PodLayout.Tests.Cli;
using static PodLayout.Tests.Reading.Drawings;

namespace PodLayout.Tests.Reading;

/// <summary>The corpus of our own against closed forms, and against two readers that share nothing with this program.</summary>
public class CorpusTests
{
    public static TheoryData<string> DxfNames() => [.. DxfCorpus.All.Select(e => e.Name)];

    public static TheoryData<string> SvgNames() => [.. SvgCorpus.All.Select(e => e.Name)];

    [Fact]
    public void The_corpus_is_as_large_as_it_should_be()
    {
        Assert.True(DxfCorpus.All.Count() >= 60);
        Assert.True(SvgCorpus.All.Count() >= 60);
        Assert.Equal(5, DxfCorpus.Versions.Length);
    }

    [Theory]
    [MemberData(nameof(DxfNames))]
    public void A_DXF_drawing_has_the_areas_of_its_formula_or_is_refused(string name)
    {
        var entry = DxfCorpus.All.Single(e => e.Name == name);
        var outcome = Part(entry.Text);
        if (entry.Refusal is { } code)
        {
            Assert.Equal(code, outcome.Refusal?.Code);
            return;
        }

        Assert.True(outcome.Succeeded, string.Join('\n', outcome.Findings));
        // An inscribed line of sagitta 0.01 mm loses at most that much along its length.
        Assert.Equal(entry.OutlineMm2!.Value, outcome.Value.Outline.AreaMm2, 0.011 * outcome.Value.Outline.PerimeterMm);
        Assert.Equal(entry.HolesMm2.Length, outcome.Value.Holes.Length);
        Assert.All(outcome.Value.Holes.Zip(entry.HolesMm2), h => Assert.Equal(h.Second, h.First.AreaMm2, 0.011 * h.First.PerimeterMm));
        var curves = Read(entry.Text).Value!.Rings;
        // Curves are measured truly; what is mended of a flaw is less than a tenth of a micrometre along the ring.
        Assert.All(entry.HolesMm2.Append(entry.OutlineMm2.Value), area => Assert.Contains(
            curves, r => Math.Abs(r.TrueAreaMm2 - area) <= 1e-6 * area + 1e-4 * r.TrueLengthMm));
    }

    [Theory]
    [MemberData(nameof(SvgNames))]
    public void An_SVG_drawing_has_the_areas_of_its_formula_or_is_refused(string name)
    {
        var entry = SvgCorpus.All.Single(e => e.Name == name);
        var outcome = Part(entry.Text);
        Assert.Equal(entry.AreasMm2.Length > 0, outcome.Succeeded);
        if (!outcome.Succeeded)
            return;
        Assert.Equal(entry.AreasMm2.Length - 1, outcome.Value.Holes.Length);
        var curves = Read(entry.Text).Value!.Rings;
        Assert.All(curves.Zip(entry.AreasMm2), r => Assert.Equal(r.Second, r.First.TrueAreaMm2, 2e-6 * r.Second));
    }

    [Fact]
    public void Ezdxf_reads_the_same_areas()
    {
        using Scratch scratch = new();
        var entries = DxfCorpus.All.Where(e => e.ByLayer).ToList();
        var read = Ezdxf.Read(string.Join('\n', entries.Select(e => scratch.Put(e.Name + ".dxf", e.Text))), "Reading", "areas_by_ezdxf.py");
        foreach (var entry in entries)
        {
            var drawing = Read(entry.Text).Value!;
            var byLayer = read[entry.Name + ".dxf"]!.AsObject();
            Assert.Equal(drawing.Rings.Length, byLayer.Count);
            foreach (var ring in drawing.Rings)
            {
                // Its flattening by 1e-4 units leaves out at most that much along the line.
                var theirs = Math.Abs((double)byLayer[ring.Layer]!) * drawing.MmPerUnit * drawing.MmPerUnit;
                Assert.Equal(theirs, ring.TrueAreaMm2, 1e-4 * drawing.MmPerUnit * ring.TrueLengthMm + 0.1);
            }
        }
    }

    [Fact]
    public void Svgelements_reads_the_same_areas()
    {
        using Scratch scratch = new();
        var entries = SvgCorpus.All.Where(e => e.IsPlain && !e.Name.StartsWith("ring", StringComparison.Ordinal)).ToList();
        var read = Svgelements.Read(string.Join('\n', entries.Select(e => scratch.Put(e.Name + ".svg", e.Text))), "Reading", "areas_by_svgelements.py");
        foreach (var entry in entries)
        {
            var theirs = read[entry.Name + ".svg"]!.AsArray().Select(a => (double)a!).ToList();
            var ours = Read(entry.Text).Value!.Rings.Select(r => r.TrueAreaMm2).ToList();
            Assert.Equal(ours.Count, theirs.Count);
            Assert.All(ours.Zip(theirs), a => Assert.Equal(a.Second, a.First, 1e-5 * a.Second));
        }
    }

    [Fact]
    public void A_drawing_of_the_corpus_is_the_same_part_in_every_version()
    {
        var areas = DxfCorpus.All.Where(e => e.Refusal is null).GroupBy(e => e.Name[..e.Name.LastIndexOf('-')])
            .Select(g => g.Select(e => Shape(e.Text, ReadingOptions.Default).AreaMm2).Distinct().Count());
        Assert.All(areas, distinct => Assert.Equal(1, distinct));
    }
}
