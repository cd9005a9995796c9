using System.Globalization;
using Coolproof.Evidence;
using Coolproof.Notebook;

namespace Coolproof.Words;

/// <summary>
/// Temperatures and temperature differences in words. The two never mix: 20 °C is 68 °F, but 20 °C cooler is 36 °F cooler.
/// </summary>
/// <param name="In">The unit shown.</param>
internal readonly record struct DegreeWords(TemperatureUnitChoice In)
{
    const string Minus = "−";

    /// <summary>The unit's sign.</summary>
    public string Unit => Units.Symbol(In);

    /// <summary>A body's temperature in the unit shown.</summary>
    /// <param name="celsius">Temperature, °C.</param>
    public double Temperature(double celsius) => Units.FromCelsius(celsius, In);

    /// <summary>A difference in the unit shown.</summary>
    /// <param name="kelvin">Difference, K.</param>
    public double Difference(double kelvin) => Units.FromKelvins(kelvin, In);

    /// <summary>Like "58 °C".</summary>
    public string Say(double celsius, int decimals = 0) => $"{Number(Temperature(celsius), decimals)} {Unit}";

    /// <summary>Like "16 °C", for a difference.</summary>
    public string SayDifference(double kelvin, int decimals = 0) => $"{Number(Difference(kelvin), decimals)} {Unit}";

    /// <summary>Like "58 (54 to 62)": the middle and the range that holds the true value 9 times in 10; the unit stands elsewhere.</summary>
    public string MiddleAndRange(Summary celsius)
    {
        var decimals = Worth(celsius);
        var (low, middle, high) = (Temperature(celsius.Q05), Temperature(celsius.Q50), Temperature(celsius.Q95));
        return $"{Number(middle, decimals)} ({Number(low, decimals)} to {Number(high, decimals)})";
    }

    /// <summary>Like "16 °C (9 to 24)", for a difference.</summary>
    public string DifferenceAndRange(Summary kelvin)
    {
        var decimals = Worth(kelvin);
        var (low, middle, high) = (Difference(kelvin.Q05), Difference(kelvin.Q50), Difference(kelvin.Q95));
        return $"{Number(middle, decimals)} {Unit} ({Number(low, decimals)} to {Number(high, decimals)})";
    }

    /// <summary>A number in plain digits with a true minus sign, a zero never with one.</summary>
    public static string Number(double value, int decimals = 0)
    {
        var rounded = Math.Round(value, decimals, MidpointRounding.AwayFromZero);
        return (rounded < 0 ? Minus : "") + Math.Abs(rounded).ToString("F" + decimals, CultureInfo.InvariantCulture);
    }

    /// <summary>The same words, with each number on one line with its unit.</summary>
    public static string OnOneLine(string sentence) => sentence.Replace(" °", "\u00a0°", StringComparison.Ordinal).Replace(" K", "\u00a0K", StringComparison.Ordinal);

    /// <summary>A number with its sign.</summary>
    public static string Signed(double value, int decimals) =>
        Number(value, decimals) is var text && text.StartsWith(Minus, StringComparison.Ordinal) ? text : "+" + text;

    /// <summary>Decimals that a quantity is worth: none unless nine tenths of it lie within 3 K.</summary>
    static int Worth(Summary summary) => summary.Q95 - summary.Q05 < 3 ? 1 : 0;
}
