using System.Globalization;
using UnitsNet;
using UnitsNet.Units;

namespace Coolproof.Notebook;

/// <summary>
/// The one door between the units a person likes and °C, K and grams inside. A temperature and a difference of temperatures are different
/// things: 10 °C is 50 °F, while 10 °C cooler is 18 °F cooler; so each has its own methods.
/// </summary>
public static class Units
{
    /// <summary>A temperature in the chosen unit, as °C.</summary>
    public static double CelsiusFrom(double temperature, TemperatureUnitChoice unit) =>
        unit == TemperatureUnitChoice.Celsius ? temperature : new Temperature(temperature, TemperatureUnit.DegreeFahrenheit).DegreesCelsius;

    /// <summary>A temperature of <paramref name="celsius"/> °C in the chosen unit.</summary>
    public static double FromCelsius(double celsius, TemperatureUnitChoice unit) =>
        unit == TemperatureUnitChoice.Celsius ? celsius : new Temperature(celsius, TemperatureUnit.DegreeCelsius).DegreesFahrenheit;

    /// <summary>A temperature difference in degrees of the chosen unit, as K.</summary>
    public static double KelvinsFrom(double difference, TemperatureUnitChoice unit) =>
        unit == TemperatureUnitChoice.Celsius ? difference : new TemperatureDelta(difference, TemperatureDeltaUnit.DegreeFahrenheit).Kelvins;

    /// <summary>A temperature difference of <paramref name="kelvins"/> K in degrees of the chosen unit.</summary>
    public static double FromKelvins(double kelvins, TemperatureUnitChoice unit) =>
        unit == TemperatureUnitChoice.Celsius ? kelvins : new TemperatureDelta(kelvins, TemperatureDeltaUnit.Kelvin).DegreesFahrenheit;

    /// <summary>A mass in the chosen unit, as g.</summary>
    public static double GramsFrom(double mass, MassUnitChoice unit) =>
        unit == MassUnitChoice.Gram ? mass : new Mass(mass, MassUnit.Ounce).Grams;

    /// <summary>A mass of <paramref name="grams"/> g in the chosen unit.</summary>
    public static double FromGrams(double grams, MassUnitChoice unit) =>
        unit == MassUnitChoice.Gram ? grams : new Mass(grams, MassUnit.Gram).Ounces;

    /// <summary>A temperature for people: "61.5 °C" or "142.7 °F".</summary>
    /// <param name="celsius">Temperature, °C.</param>
    /// <param name="unit">Unit to show.</param>
    /// <param name="decimals">Digits after the point.</param>
    public static string TemperatureText(double celsius, TemperatureUnitChoice unit, int decimals = 1) =>
        $"{Rounded(FromCelsius(celsius, unit), decimals)} {Symbol(unit)}";

    /// <summary>A temperature difference for people: "3.2 °C" or "5.8 °F"; the sign is kept.</summary>
    /// <param name="kelvins">Difference, K.</param>
    /// <param name="unit">Unit to show.</param>
    /// <param name="decimals">Digits after the point.</param>
    public static string DifferenceText(double kelvins, TemperatureUnitChoice unit, int decimals = 1) =>
        $"{Rounded(FromKelvins(kelvins, unit), decimals)} {Symbol(unit)}";

    /// <summary>A mass for people: "38 g" or "1.34 oz".</summary>
    /// <param name="grams">Mass, g.</param>
    /// <param name="unit">Unit to show.</param>
    public static string MassText(double grams, MassUnitChoice unit) =>
        unit == MassUnitChoice.Gram ? $"{Rounded(grams, 0)} g" : $"{Rounded(FromGrams(grams, unit), 2)} oz";

    /// <summary>"°C" or "°F".</summary>
    public static string Symbol(TemperatureUnitChoice unit) => unit == TemperatureUnitChoice.Celsius ? "°C" : "°F";

    private static string Rounded(double value, int decimals)
    {
        string text = value.ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
        // "-0.0" says nothing that "0.0" does not.
        return text.AsSpan().IndexOfAnyInRange('1', '9') < 0 ? text.TrimStart('-') : text;
    }
}
