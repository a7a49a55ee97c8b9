using PodLayout.Air;

namespace PodLayout.Tests.Air;

public class StandardAtmosphereTests
{
    // ISO 2533:1975 and US Standard Atmosphere 1976, tables by geopotential altitude; 500 and 1500 m computed from its formula.
    [Theory]
    [InlineData(0, 101.325)]
    [InlineData(500, 95.4608)]
    [InlineData(1000, 89.8746)]
    [InlineData(1500, 84.5560)]
    [InlineData(2000, 79.4952)]
    [InlineData(3000, 70.1085)]
    public void The_pressures_of_the_standard_atmosphere_are_met(double geopotentialM, double kPa) =>
        Assert.Equal(kPa, StandardAtmosphere.AtGeopotentialKPa(geopotentialM), 0.0002);

    // The same tables by height above sea level as a map gives it.
    [Theory]
    [InlineData(500, 95.4613)]
    [InlineData(1000, 89.8763)]
    [InlineData(2000, 79.5014)]
    [InlineData(3000, 70.1211)]
    public void Heights_of_a_map_lie_a_little_lower_than_geopotential_ones(double heightM, double kPa) =>
        Assert.Equal(kPa, StandardAtmosphere.AtKPa(heightM), 0.0002);

    // NIST SP 811 (2008), appendix B.8: the standard atmosphere in each unit.
    [Fact]
    public void Units_of_gauges_are_those_of_NIST_SP_811()
    {
        Assert.Equal(29.92126, StandardAtmosphere.SeaLevelKPa / PressureUnits.InHgKPa, 0.00002);
        Assert.Equal(14.69595, StandardAtmosphere.SeaLevelKPa / PressureUnits.PsiKPa, 0.00002);
        Assert.Equal(760, StandardAtmosphere.SeaLevelKPa / PressureUnits.TorrKPa, 0.001);
        Assert.Equal(1013.25, StandardAtmosphere.SeaLevelKPa / PressureUnits.MbarKPa, 1e-9);
    }

    // The textbook problem of the hemispheres of Magdeburg: radius 0.3 m, a tenth of an atmosphere left inside, about 26 kN.
    [Fact]
    public void The_hemispheres_of_Magdeburg_hold_26_kN() =>
        Assert.Equal(25_784, Math.PI * 0.3 * 0.3 * 0.9 * StandardAtmosphere.SeaLevelKPa * 1000, 1.0);
}
