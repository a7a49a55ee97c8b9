using PodLayout.Woods;

namespace PodLayout.Tests.Floors;

/// <summary>An orthotropic plate that rests all round, by finite differences on a grid: another way to its sag than a series.</summary>
internal static class PlateByDifferences
{
    private const int Cells = 24;

    /// <summary>Sag in the middle of a plate 1 mm thick, mm.</summary>
    public static double MiddleSag(PlateWood wood, double alongMm, double acrossMm, double pullMPa)
    {
        var share = 12 * (1 - wood.Poisson * wood.Poisson * wood.AcrossMPa / wood.AlongMPa);
        double d1 = wood.AlongMPa / share, d2 = wood.AcrossMPa / share, d12 = wood.Poisson * d2, h = d12 + 2 * wood.ShearMPa / 12;
        double dx = alongMm / Cells, dy = acrossMm / Cells;
        const int Inner = Cells - 1;
        var rows = new double[Inner * Inner][];
        for (var i = 0; i < Inner; i++)
        {
            for (var j = 0; j < Inner; j++)
            {
                var row = new double[Inner * Inner + 1];
                row[^1] = pullMPa;
                // D1 w,xxxx + 2 H w,xxyy + D2 w,yyyy = q.
                foreach (var (di, c) in new[] { (-2, 1.0), (-1, -4), (0, 6), (1, -4), (2, 1) })
                {
                    Add(row, i + di, j, c * d1 / Math.Pow(dx, 4));
                    Add(row, i, j + di, c * d2 / Math.Pow(dy, 4));
                }

                foreach (var (di, ci) in new[] { (-1, 1.0), (0, -2), (1, 1) })
                {
                    foreach (var (dj, cj) in new[] { (-1, 1.0), (0, -2), (1, 1) })
                    {
                        Add(row, i + di, j + dj, 2 * h * ci * cj / (dx * dx * dy * dy));
                    }
                }

                rows[i * Inner + j] = row;
            }
        }

        return Solve(rows)[Inner * Inner / 2];
    }

    // At the edge the sag is 0, and beyond it that of the mirrored point with the other sign.
    private static void Add(double[] row, int i, int j, double value)
    {
        const int Inner = Cells - 1;
        (i, var signI) = Mirrored(i);
        (j, var signJ) = Mirrored(j);
        if (i >= 0 && j >= 0 && i < Inner && j < Inner)
        {
            row[i * Inner + j] += signI * signJ * value;
        }

        static (int Index, int Sign) Mirrored(int k) => k < -1 ? (-2 - k, -1) : k > Inner ? (2 * Inner - k, -1) : (k, 1);
    }

    private static double[] Solve(double[][] rows)
    {
        var n = rows.Length;
        for (var p = 0; p < n; p++)
        {
            var best = Enumerable.Range(p, n - p).MaxBy(r => Math.Abs(rows[r][p]));
            (rows[p], rows[best]) = (rows[best], rows[p]);
            for (var r = p + 1; r < n; r++)
            {
                var by = rows[r][p] / rows[p][p];
                for (var c = p; by != 0 && c <= n; c++)
                {
                    rows[r][c] -= by * rows[p][c];
                }
            }
        }

        var x = new double[n];
        for (var p = n - 1; p >= 0; p--)
        {
            x[p] = (rows[p][n] - Enumerable.Range(p + 1, n - p - 1).Sum(c => rows[p][c] * x[c])) / rows[p][p];
        }

        return x;
    }
}
