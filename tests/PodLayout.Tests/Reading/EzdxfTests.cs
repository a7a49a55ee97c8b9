using PodLayout.Reading;

namespace PodLayout.Tests.Reading;

/// <summary>
/// Drawings written by ezdxf (version in ezdxf/VERSION.txt), read against the figures' definitions in ezdxf/generate.py by formula.
/// </summary>
public class EzdxfTests
{
    private const double Pi = Math.PI;

    private static readonly Dictionary<string, (double Area, double Perimeter, int Holes)> Figures = new()
    {
        ["slot"] = (400 * 200 + 10000 * Pi - 900 * Pi, 800 + 200 * Pi, 1),
        ["loose"] = (300 * 200 - (4 - Pi) * 625, 2 * (250 + 150) + 50 * Pi, 0),
        ["inches"] = ((200 - Pi) * 645.16, 60 * 25.4, 1),
        ["blocks"] = (160000 - 800 * Pi - 300 * Pi - 600 * Pi, 1600, 8),
        ["ellipses"] = (54000 * Pi - 400 * Pi, EllipsePerimeter(300, 180), 1),
        ["splines"] = (40000 * Pi - 2.0 / 3 * 5400, 400 * Pi, 1),
        // Area of a closed uniform cubic B-spline: sums of P(i) x P(i+k) with the values of the sixth-degree
        // B-spline's differences, (245, 56, 1) / 720 for k = 1, 2, 3.
        ["periodic"] = (12 * 1e4 * (245 * Math.Sin(Pi / 6) + 56 * Math.Sin(Pi / 3) + Math.Sin(Pi / 2)) / 720, double.NaN, 0),
        ["mirrored"] = (5000 * Pi - 225 * Pi, 200 + 100 * Pi, 1),
        ["hidden"] = (20000, 600, 0),
        ["named"] = (8000, 360, 0),
    };

    public static TheoryData<string> Files()
    {
        string[] all = ["R12", "R2000", "R2010", "R2018"], modern = ["R2000", "R2010", "R2018"];
        var data = new TheoryData<string>();
        foreach (var figure in Figures.Keys)
        {
            foreach (var version in figure is "ellipses" or "splines" or "periodic" ? modern : all)
                data.Add($"{figure}-{version}");
        }

        foreach (var name in (string[])["slot-R12", "slot-R2010", "blocks-R12", "blocks-R2010", "splines-R2010"])
            data.Add(name + "-binary");
        return data;
    }

    [Theory]
    [MemberData(nameof(Files))]
    public void A_drawing_by_another_library_has_its_defined_area_perimeter_and_holes(string name)
    {
        var (area, perimeter, holes) = Figures[name.Split('-')[0]];
        // A sagitta of 1e-5 mm on the smallest radius here (10 mm) costs 2/3 of 2e-6 of the area.
        var fine = ReadingOptions.Default with { ChordToleranceMm = 1e-5 };
        foreach (var options in (ReadingOptions[])[ReadingOptions.Default, fine])
        {
            // R12 has no header variable for the unit.
            var withUnit = name.Contains("R12") ? options with { UnitOverride = name.StartsWith("inches") ? LengthUnit.Inch : LengthUnit.Millimetre } : options;
            var outcome = Drawings.Part(Drawings.Ezdxf(name), withUnit);
            Assert.True(outcome.Succeeded, string.Join('\n', outcome.Findings));
            var shape = outcome.Value;
            Assert.Equal(holes, shape.Holes.Length);
            var length = shape.Outline.PerimeterMm + shape.Holes.Sum(h => h.PerimeterMm);
            Assert.Equal(area, shape.AreaMm2, options.ChordToleranceMm * length + 1e-6);
            if (!double.IsNaN(perimeter))
                Assert.Equal(perimeter, shape.Outline.PerimeterMm, perimeter * (options == fine ? 1e-6 : 1e-4));
        }
    }

    [Theory]
    [InlineData("R2000")]
    [InlineData("R2010")]
    [InlineData("R2018")]
    public void A_spline_of_fit_points_only_runs_through_them_and_near_the_circle_they_lie_on(string version)
    {
        var outcome = Drawings.Part(Drawings.Ezdxf("fit-" + version));
        Assert.True(outcome.Succeeded, string.Join('\n', outcome.Findings));
        Assert.Contains(outcome.Findings, f => f.Code == "dxf-fit-points");
        // The cubic spline through a circle's points is off by about h^4/384: 1.2e-5 of the radius for 24 points.
        Assert.All(outcome.Value.Outline.Points, p => Assert.Equal(150, p.Length, 0.002));
        for (var i = 0; i < 24; i++)
        {
            var angle = Math.Tau * i / 24;
            Assert.Contains(outcome.Value.Outline.Points, p => Math.Abs(p.X - 150 * Math.Cos(angle)) < 1e-9 && Math.Abs(p.Y - 150 * Math.Sin(angle)) < 1e-9);
        }
    }

    [Theory]
    [InlineData("R12")]
    [InlineData("R2018")]
    public void What_is_hidden_is_left_out_with_notes(string version)
    {
        var outcome = Drawings.Read(Drawings.Ezdxf("hidden-" + version), ReadingOptions.Default with { UnitOverride = LengthUnit.Millimetre });
        var notes = outcome.Findings.Where(f => f.Code == "dxf-left-out").Select(f => f.Message).ToList();
        Assert.Contains("Left out: 2 on frozen layer FROZEN.", notes);
        Assert.Contains("Left out: 1 on layer OFF, which is off.", notes);
        Assert.Contains("Left out: 1 TEXT, no edge of a part.", notes);
        Assert.Contains("Left out: 1 POINT, no edge of a part.", notes);
        Assert.Contains(notes, n => n.EndsWith("in paper space."));
    }

    [Theory]
    [InlineData("R12")]
    [InlineData("R2000")]
    [InlineData("R2010")]
    public void A_layer_name_outside_ASCII_is_read(string version)
    {
        var outcome = Drawings.Read(Drawings.Ezdxf("named-" + version), ReadingOptions.Default with { UnitOverride = LengthUnit.Millimetre });
        Assert.Equal("KONTUR_Ä", Assert.Single(outcome.Value!.Rings).Layer, ignoreCase: true);
    }

    /// <summary>Simpson's rule on the arc length; the integrand is periodic, so it converges fast.</summary>
    private static double EllipsePerimeter(double a, double b)
    {
        const int n = 2000;
        return Enumerable.Range(0, n).Sum(i =>
        {
            var t = Math.Tau * i / n;
            return Math.Sqrt(Math.Pow(a * Math.Sin(t), 2) + Math.Pow(b * Math.Cos(t), 2));
        }) * Math.Tau / n;
    }
}
