using PodLayout.Air;

namespace PodLayout.Tests.Air;

public class DuctFlowTests
{
    // Shah and London, Laminar Flow Forced Convection in Ducts (1978), as tabulated in textbooks of fluid mechanics (White, Fluid Mechanics).
    [Theory]
    [InlineData(1, 56.91)]
    [InlineData(2, 62.19)]
    [InlineData(4, 72.93)]
    [InlineData(8, 82.34)]
    [InlineData(1e6, 96)]
    public void Friction_in_a_rectangular_duct_is_the_tabulated_one(double ratio, double expected)
    {
        Assert.Equal(expected, DuctFlow.FrictionReynolds(6, 6 * ratio), 0.01);
        Assert.Equal(expected, DuctFlow.FrictionReynolds(6 * ratio, 6), 0.01);
    }

    // Worked by hand: 0.2 L/s through 72 mm2 is 2.7778 m/s; hydraulic diameter 8 mm; 62.19 x 18.13e-6 x 2.7778 / (2 x 0.008^2) Pa/m.
    [Fact]
    public void A_metre_of_6_by_12_mm_loses_24_5_Pa_at_a_fifth_of_a_litre_a_second() =>
        Assert.Equal(24.47, DuctFlow.LossPa(12, 6, 1000, 12), 0.01);
}
