using CsCheck;

namespace Coolproof.Notebook.Tests;

/// <summary>Units at the edge: a temperature and a temperature difference are different things.</summary>
public sealed class UnitsAtTheEdge
{
    private const TemperatureUnitChoice C = TemperatureUnitChoice.Celsius;
    private const TemperatureUnitChoice F = TemperatureUnitChoice.Fahrenheit;

    // t/°F = 1.8 t/°C + 32 (NIST Special Publication 811, appendix B.8, from memory): fixed points from it.
    [Theory]
    [InlineData(0, 32)]
    [InlineData(100, 212)]
    [InlineData(-40, -40)]
    [InlineData(37, 98.6)]
    public void A_temperature_in_Celsius_is_that_in_Fahrenheit(double celsius, double fahrenheit)
    {
        Assert.Equal(fahrenheit, Units.FromCelsius(celsius, F), 1e-10);
        Assert.Equal(celsius, Units.CelsiusFrom(fahrenheit, F), 1e-10);
        Assert.Equal(celsius, Units.FromCelsius(celsius, C));
    }

    [Theory]
    [InlineData(0, 0)]
    [InlineData(10, 18)]
    [InlineData(-5, -9)]
    public void A_difference_of_kelvins_is_that_of_degrees_Fahrenheit(double kelvins, double degrees)
    {
        Assert.Equal(degrees, Units.FromKelvins(kelvins, F), 1e-10);
        Assert.Equal(kelvins, Units.KelvinsFrom(degrees, F), 1e-10);
        Assert.Equal(kelvins, Units.FromKelvins(kelvins, C));
    }

    // 1 oz (avoirdupois) = 28.349523125 g exactly (NIST Special Publication 811, appendix B.8, there rounded to 28.34952 g; from memory).
    [Fact]
    public void An_ounce_is_28_point_349523125_grams() => Assert.Equal(28.349523125, Units.GramsFrom(1, MassUnitChoice.Ounce), 1e-9);

    [Fact]
    public void Values_come_back_from_either_unit()
    {
        Gen.Select(Gen.Double[-300, 1000], Gen.Enum<TemperatureUnitChoice>(), Gen.Enum<MassUnitChoice>()).Sample((value, unit, mass) =>
            Math.Abs(Units.CelsiusFrom(Units.FromCelsius(value, unit), unit) - value) < 1e-9
            && Math.Abs(Units.KelvinsFrom(Units.FromKelvins(value, unit), unit) - value) < 1e-9
            && Math.Abs(Units.GramsFrom(Units.FromGrams(value, mass), mass) - value) < 1e-9);
    }

    [Fact]
    public void A_table_typed_in_Fahrenheit_and_minutes_is_the_one_in_Celsius_and_seconds_to_the_last_bit() =>
        Gen.Select(Gen.Int[200, 3000], Gen.Int[10, 1200]).Sample((tenthsC, tenthsMin) =>
        {
            decimal celsius = tenthsC / 10m, minutes = tenthsMin / 10m;
            ReadingsTable typed = TableText.Understood(FormattableString.Invariant($"option,read_f,drive_min\na,{celsius * 1.8m + 32},{minutes}\n"));
            return typed.Runs[0].Readings[0].ReadC == (double)celsius && typed.Runs[0].DriveS == (double)(minutes * 60);
        });

    [Fact]
    public void A_difference_of_two_temperatures_converts_as_a_difference()
    {
        Gen.Select(Gen.Double[-40, 350], Gen.Double[-40, 350]).Sample((a, b) =>
            Math.Abs(Units.FromCelsius(a, F) - Units.FromCelsius(b, F) - Units.FromKelvins(a - b, F)) < 1e-9);
    }

    [Fact]
    public void Texts_carry_their_unit()
    {
        Assert.Equal("61.5 °C", Units.TemperatureText(61.5, C));
        Assert.Equal("142.7 °F", Units.TemperatureText(61.5, F));
        Assert.Equal("-3.2 °C", Units.DifferenceText(-3.2, C));
        Assert.Equal("-6 °F", Units.DifferenceText(-3.2, F, 0));
        Assert.Equal("0 °C", Units.DifferenceText(-0.2, C, 0));
        Assert.Equal("38 g", Units.MassText(38.2, MassUnitChoice.Gram));
        Assert.Equal("1.34 oz", Units.MassText(38, MassUnitChoice.Ounce));
    }
}
