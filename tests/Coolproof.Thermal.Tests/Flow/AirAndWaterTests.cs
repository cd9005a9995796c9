namespace Coolproof.Thermal.Tests;

public class AirAndWaterTests
{
    // Source: check table of Lemmon and Jacobsen 2004, six digits (verification-points.csv).
    [Theory]
    [InlineData(100, 0, 7.09559)]
    [InlineData(300, 0, 18.5230)]
    [InlineData(300, 5000, 21.3241)]
    [InlineData(200, 10000, 21.1392)]
    public void Viscosity_agrees_with_the_check_values_of_its_formulation(double kelvin, double molPerM3, double microPascalSecond) =>
        Close.Within(microPascalSecond, 1e6 * Air.ViscosityOf(kelvin, molPerM3), 6e-5);

    // Source: the same table. The third value holds the critical enhancement that is left out here, below 0.002 mW/(m K) there.
    [Theory]
    [InlineData(100, 0, 9.35902, 6e-6)]
    [InlineData(300, 0, 26.3529, 6e-5)]
    [InlineData(300, 5000, 32.6062, 0.002)]
    public void Conductivity_agrees_with_the_check_values_of_its_formulation(double kelvin, double molPerM3, double milliwatt, double tolerance) =>
        Close.Within(milliwatt, 1e3 * Air.ConductivityOf(kelvin, molPerM3), tolerance);

    // Source: dry-air-properties.csv, same formulations with the full equation of state; density there differs from an ideal gas by up to 0.1 %.
    [Fact]
    public void Dry_air_agrees_with_the_table_of_properties_and_with_the_US_Standard_Atmosphere()
    {
        List<string[]> rows = Table.Rows("dry-air-properties.csv");
        Assert.Equal(54, rows.Count);
        foreach (string[] row in rows)
        {
            double[] v = [.. row.Select(Table.Number)];
            Air air = new(v[0], v[1]);
            Close.Relative(v[2], air.Density, 1e-3, "density");
            Close.Relative(v[3], air.SpecificHeat, 1e-3, "specific heat");
            Close.Relative(v[4], air.Viscosity, 1e-5, "viscosity");
            Close.Relative(v[5], air.Conductivity, 1e-5, "conductivity");
            Close.Relative(v[8], air.Prandtl, 1.1e-3, "Prandtl");
            Close.Relative(v[9], air.Viscosity, 0.0105, "viscosity, 1976");
            Close.Relative(v[10], air.Conductivity, 0.013, "conductivity, 1976");
        }
    }

    // Source: us-standard-atmosphere-1976.csv, five digits, and the pressures of water-saturation.csv by the same standard.
    [Fact]
    public void Pressure_falls_with_altitude_as_in_the_US_Standard_Atmosphere()
    {
        foreach (string[] row in Table.Rows("us-standard-atmosphere-1976.csv"))
            Close.Relative(Table.Number(row[2]), Air.PressureAtPa(Table.Number(row[0])), 5e-5);
        foreach (string[] row in Table.Rows("water-saturation.csv").Where(row => row[0] == "altitude"))
            Close.Relative(Table.Number(row[2]), Air.PressureAtPa(Table.Number(row[1])), 1e-8);
    }

    // Source: water-saturation.csv (IAPWS-IF97 region 4; IAPWS-95 within 0.25 mK).
    [Fact]
    public void Water_boils_where_IAPWS_says()
    {
        foreach (string[] row in Table.Rows("water-saturation.csv"))
        {
            Close.Within(Table.Number(row[3]), Water.BoilingPointC(Table.Number(row[2])), 1e-6);
            Close.Within(Table.Number(row[4]), Water.BoilingPointC(Table.Number(row[2])), 1e-3);
        }
    }

    // Source: check values of the IAPWS-IF97 release, region 4 (verification-points.csv).
    [Theory]
    [InlineData(300, 0.353658941e-2)]
    [InlineData(500, 0.263889776e1)]
    [InlineData(600, 0.123443146e2)]
    public void Vapour_pressure_agrees_with_the_release(double kelvin, double megapascal) =>
        Close.Relative(megapascal * 1e6, Water.SaturationPressurePa(kelvin - 273.15), 2e-9);

    [Theory]
    [InlineData(0.1e6, 0.372755919e3)]
    [InlineData(1e6, 0.453035632e3)]
    [InlineData(10e6, 0.584149488e3)]
    public void Boiling_point_agrees_with_the_release(double pascal, double kelvin) =>
        Close.Relative(kelvin, Water.BoilingPointC(pascal) + 273.15, 2e-9);

    [Fact]
    public void Boiling_point_and_vapour_pressure_are_each_others_inverse()
    {
        for (double celsius = 5; celsius < 200; celsius += 13)
            Close.Within(celsius, Water.BoilingPointC(Water.SaturationPressurePa(celsius)), 1e-6);
    }

    [Fact]
    public void Humid_air_is_lighter_than_dry_air()
    {
        // By hand: at 30 °C and half saturation the vapour holds 2124 Pa of 101325; each share of vapour weighs 18.015/28.959 of dry air.
        double share = 0.5 * Water.SaturationPressurePa(30) / 101325;
        Close.Relative(new Air(30).Density * (1 - share * (1 - 18.015268 / 28.9586)), new Air(30, 101325, 0.5).Density, 1e-12);
        Assert.InRange(share, 0.0205, 0.0215);
    }

    [Fact]
    public void Air_and_water_beyond_their_formulas_are_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new Air(double.NaN));
        Assert.Throws<ArgumentOutOfRangeException>(() => new Air(20, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => new Air(20, 1e5, 1.2));
        Assert.Throws<ArgumentOutOfRangeException>(() => Air.PressureAtPa(20_000));
        Assert.Throws<ArgumentOutOfRangeException>(() => Water.BoilingPointC(100));
        Assert.Throws<ArgumentOutOfRangeException>(() => Water.SaturationPressurePa(-1));
    }
}
