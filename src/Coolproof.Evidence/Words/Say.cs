using System.Globalization;
using Coolproof.Notebook;

namespace Coolproof.Evidence.Words;

/// <summary>Names and numbers within a sentence. Beside °C a number before K is a difference; in °F both carry °F. Numbers are rounded once, in the unit that is said.</summary>
internal static class Say
{
    // With a range wider than this a tenth of a kelvin is worth nothing.
    private const double TenthWorthK = 3;
    private const string Minus = "−";

    // First words of a name that read ill behind an article.
    private static readonly string[] NoArticle = ["option", "no", "without", "the", "a", "an", "my", "our", "both", "two"];

    /// <summary>An option within a sentence: "the clamp", but "Clamp 3" and "option A" as they stand.</summary>
    public static string Option(string name) =>
        name.Length > 0 && char.IsLower(name[0]) && !NoArticle.Contains(name.Split(' ')[0], StringComparer.OrdinalIgnoreCase) ? "the " + name : name;

    /// <summary>"a", "a and b", "a, b and c".</summary>
    public static string List(IEnumerable<string> items)
    {
        string[] all = [.. items];
        return all.Length < 2 ? string.Concat(all) : string.Join(", ", all[..^1]) + " and " + all[^1];
    }

    /// <summary>Like "8 K cooler" or "0.6 K hotter", seen from the first of a difference first − second.</summary>
    public static string Cooler(Summary difference, TemperatureUnitChoice unit = TemperatureUnitChoice.Celsius) =>
        $"{Number(Units.FromKelvins(Math.Abs(difference.Q50), unit), Decimals(difference))} {Degree(unit)} {(difference.Q50 <= 0 ? "cooler" : "hotter")}";

    /// <summary>Like "4 to 12 K": how much cooler the first of a difference first − second is, or with a difference that is above 0 how much hotter.</summary>
    public static string Range(Summary difference, TemperatureUnitChoice unit = TemperatureUnitChoice.Celsius)
    {
        int decimals = Decimals(difference);
        (double low, double high) = difference.Q50 <= 0 ? (-difference.Q95, -difference.Q05) : (difference.Q05, difference.Q95);
        return $"{Number(Units.FromKelvins(low, unit), decimals)} to {Number(Units.FromKelvins(high, unit), decimals)} {Degree(unit)}";
    }

    /// <summary>Like "71 °C (68 to 74)".</summary>
    public static string Temperature(Summary celsius, TemperatureUnitChoice unit = TemperatureUnitChoice.Celsius)
    {
        int decimals = Decimals(celsius);
        string In(double c) => Number(Units.FromCelsius(c, unit), decimals);
        return $"{In(celsius.Q50)} {Units.Symbol(unit)} ({In(celsius.Q05)} to {In(celsius.Q95)})";
    }

    /// <summary>A degree of difference: K beside °C.</summary>
    public static string Degree(TemperatureUnitChoice unit) => unit == TemperatureUnitChoice.Celsius ? "K" : Units.Symbol(unit);

    /// <summary>Decimals that a quantity is worth.</summary>
    public static int Decimals(Summary summary) => summary.Q95 - summary.Q05 > TenthWorthK ? 0 : 1;

    /// <summary>A number in plain digits with a true minus sign, a zero without one; whole where no tenth is left.</summary>
    public static string Number(double value, int decimals = 0)
    {
        double rounded = Math.Round(value, decimals, MidpointRounding.AwayFromZero);
        return (rounded < 0 ? Minus : "") + Math.Abs(rounded).ToString("F" + decimals, CultureInfo.InvariantCulture);
    }

    /// <summary>Like "1 run" and "3 runs".</summary>
    public static string Count(int count, string one, string? many = null) => $"{count} {(count == 1 ? one : many ?? one + "s")}";

    /// <summary>With a capital letter at the start.</summary>
    public static string Capital(string sentence) => sentence.Length == 0 ? sentence : char.ToUpperInvariant(sentence[0]) + sentence[1..];
}
