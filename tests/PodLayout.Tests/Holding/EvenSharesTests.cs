using System.Collections.Immutable;
using PodLayout.Holding;

namespace PodLayout.Tests.Holding;

/// <summary>The even shares against the published grasping example.</summary>
public class EvenSharesTests
{
    // Lobo, Vandenberghe, Boyd and Lebret, Applications of second-order cone programming (1998), section 3.4: least largest
    // normal force .49112 with round cones. With inscribed pyramids of 4, 8 and 16 facets: computed independently.
    [Theory]
    [InlineData(4, 0.51725)]
    [InlineData(8, 0.51369)]
    [InlineData(16, 0.49112)]
    [InlineData(64, 0.49112)]
    public void The_published_grasp_needs_the_published_force(int facets, double expected)
    {
        ImmutableArray<Contact> contacts = [.. Enumerable.Range(1, 5).Select(j =>
        {
            double x = 0.3 + Math.Cos(2 * Math.PI * j / 5), y = Math.Sin(2 * Math.PI * j / 5), z = x * x + y * y;
            double[] normal = Unit(-2 * x, -2 * y, 1);
            // Two directions across the normal: the first lies level.
            double[] a = Unit(-normal[1], normal[0], 0);
            double[] b = [normal[1] * a[2] - normal[2] * a[1], normal[2] * a[0] - normal[0] * a[2], normal[0] * a[1] - normal[1] * a[0]];
            Wrench Of(double[] f) => Wrench.Of(new(f[0], f[1], f[2]), x, y, z);
            return new Contact(Of(normal), Of(a), Of(b), 0.3);
        })];
        var shares = EvenShares.Of(contacts, Wrench.Of(new(0, 0, -1), 0, 0, 0), facets, 1);
        Assert.Equal(expected, shares!.Value.LargestN, 2e-4);
    }

    private static double[] Unit(double x, double y, double z)
    {
        var length = Math.Sqrt(x * x + y * y + z * z);
        return [x / length, y / length, z / length];
    }
}
