using CsCheck;

namespace Coolproof.Thermal.Tests;

public class RadianceTests
{
    // Source: constants.csv (SI defining constants, exact since 2019).
    [Fact]
    public void The_radiation_constants_are_the_exact_ones_of_the_SI()
    {
        double Exact(string name) => Table.Number(Table.Rows("constants.csv").Single(row => row[0].StartsWith(name, StringComparison.Ordinal))[2]);
        Close.Relative(Exact("c2 "), PhysicalConstants.SecondRadiation, 1e-15);
        Close.Relative(Exact("sigma "), PhysicalConstants.StefanBoltzmann, 1e-16);
        Close.Relative(Exact("R "), PhysicalConstants.MolarGas, 1e-15);
    }

    // Source: blackbody-fraction.csv, 40 digits.
    [Fact]
    public void Fractions_of_black_radiation_agree_with_forty_digits_to_a_trillionth()
    {
        foreach (string[] row in Table.Rows("blackbody-fraction.csv"))
        {
            double expected = Table.Number(row[1]), actual = Radiance.FractionBelow(Table.Number(row[0]) * 1e-6, 1);
            Close.Within(expected, actual, 1e-12, row[0]);
            Close.Relative(expected, actual, 1e-12, row[0]);
        }
    }

    // Source: band-8-14um.csv, computed from Planck's law to 13 digits.
    [Fact]
    public void Radiance_exitance_share_and_exponent_of_8_to_14_micrometres_agree_with_the_table()
    {
        foreach (string[] row in Table.Rows("band-8-14um.csv"))
        {
            double kelvin = Table.Number(row[1]), radiance = Radiance.Of(kelvin, Band.Gun);
            Close.Within(Table.Number(row[2]), Radiance.FractionBelow(8e-6, kelvin), 1e-12);
            Close.Within(Table.Number(row[3]), Radiance.FractionBelow(14e-6, kelvin), 1e-12);
            Close.Relative(Table.Number(row[5]), Math.PI * Radiance.Of(kelvin, Band.All), 1e-12);
            Close.Relative(Table.Number(row[6]), Math.PI * radiance, 1e-12);
            Close.Relative(Table.Number(row[7]), radiance, 1e-12);
            Close.Within(Table.Number(row[8]), Radiance.Exponent(kelvin, Band.Gun), 1e-7);
            Close.Within(kelvin, Radiance.Temperature(Table.Number(row[7]), Band.Gun), 1e-9);
        }
    }

    [Fact]
    public void Temperature_is_the_inverse_of_radiance_from_the_night_sky_to_a_furnace() =>
        Gen.Double[30, 3000].Sample(kelvin =>
        {
            Close.Relative(kelvin, Radiance.Temperature(Radiance.Of(kelvin, Band.Gun), Band.Gun), 1e-12);
            Close.Relative(kelvin, Radiance.Temperature(Radiance.Of(kelvin, Band.All), Band.All), 1e-12);
        });

    [Fact]
    public void The_exponent_is_the_slope_that_central_differences_give() =>
        Gen.Double[150, 1500].Sample(kelvin =>
        {
            double up = Math.Log(Radiance.Of(kelvin * 1.0001, Band.Gun)), down = Math.Log(Radiance.Of(kelvin / 1.0001, Band.Gun));
            Close.Relative((up - down) / (2 * Math.Log(1.0001)), Radiance.Exponent(kelvin, Band.Gun), 1e-6);
        });

    [Fact]
    public void No_radiance_means_absolute_zero_and_less_than_none_means_no_temperature()
    {
        Assert.Equal(0, Radiance.Temperature(0, Band.Gun));
        Assert.True(double.IsNaN(Radiance.Temperature(-1, Band.Gun)));
        Assert.True(double.IsNaN(Radiance.Temperature(double.NaN, Band.Gun)));
        Assert.Equal(0, Radiance.Of(-5, Band.Gun));
    }

    [Fact]
    public void Fractions_join_where_the_two_series_meet()
    {
        double edge = PhysicalConstants.SecondRadiation / 2;
        Close.Relative(Radiance.FractionBelow(edge * (1 - 1e-15), 1), Radiance.FractionBelow(edge * (1 + 1e-15), 1), 3e-15);
    }
}
