using System.Globalization;
using Coolproof.Evidence;
using Coolproof.Evidence.Words;

namespace Coolproof.Pictures.Drawing;

/// <summary>Numbers in the words of the pit table, in one unit.</summary>
/// <param name="unit">Celsius or Fahrenheit.</param>
/// <param name="sameWithinK">Half-width of the "same" band, K.</param>
internal sealed class Words(Degrees unit, double sameWithinK)
{
    /// <summary>"78 °C".</summary>
    public string Temperature(double celsius) => $"{Whole(unit.Temperature(celsius))} {unit.Symbol}";

    /// <summary>"78 °C (74 to 83)".</summary>
    public string Temperature(Summary s)
    {
        string format = FormatFor(unit.Difference(s.Q95 - s.Q05));
        return $"{Say(unit.Temperature(s.Q50), format)} {unit.Symbol} ({Range(Say(unit.Temperature(s.Q05), format), Say(unit.Temperature(s.Q95), format))})";
    }

    /// <summary>"2 °C", "3.6 °F".</summary>
    public string Span(double kelvin) => $"{Say(unit.Difference(kelvin), "0.#")} {unit.Symbol}";

    /// <summary>"9 °C hotter (4 to 14)"; the interval is turned so that it reads in the direction of the words.</summary>
    public string Hotter(Summary differenceK)
    {
        double middle = unit.Difference(differenceK.Q50), low = unit.Difference(differenceK.Q05), high = unit.Difference(differenceK.Q95);
        string format = FormatFor(high - low);
        return middle >= 0
            ? $"{Say(middle, format)} {unit.Symbol} hotter ({Range(Say(low, format), Say(high, format))})"
            : $"{Say(-middle, format)} {unit.Symbol} cooler ({Range(Say(-high, format), Say(-low, format))})";
    }

    /// <summary>"67.5 °C", as a display shows it.</summary>
    public string Reading(double celsius) => $"{Say(unit.Temperature(celsius), "0.0")} {unit.Symbol}";

    /// <summary>"+3.2 °C", "−0.4 °C".</summary>
    public string Signed(double kelvin) => $"{Plus(unit.Difference(kelvin))} {unit.Symbol}";

    /// <summary>"+3.2 °C (1.1 to 5.4)".</summary>
    public string Signed(Summary differenceK) =>
        $"{Signed(differenceK.Mean)} ({Range(Say(unit.Difference(differenceK.Q05), "0.0"), Say(unit.Difference(differenceK.Q95), "0.0"))})";

    /// <summary>
    /// What is said of an option beside the coolest, in two parts, the weightier first: "9 °C hotter (4 to 14)" and ", 39 in 40 sure", or
    /// "can’t be told yet" and ": 3 °C hotter (−2 to 8)".
    /// </summary>
    public (string First, string Then) Call(PairCall call, Summary hotterK, double probabilityHotter) => call switch
    {
        PairCall.Same => (Same, ": " + Hotter(hotterK)),
        PairCall.Open => ("can’t be told yet", ": " + Hotter(hotterK)),
        _ => (Hotter(hotterK), $", {Odds.Say(Math.Max(probabilityHotter, 1 - probabilityHotter))} sure"),
    };

    /// <summary>"the same within 2 °C".</summary>
    public string Same => $"the same within {Span(sameWithinK)}";

    /// <summary>"2 to 9 °C", "4 °C", "−1 to 3 °C".</summary>
    public string Moves(double leastK, double mostK)
    {
        string least = Whole(unit.Difference(leastK)), most = Whole(unit.Difference(mostK));
        return least == most ? $"{most} {unit.Symbol}" : $"{Range(least, most)} {unit.Symbol}";
    }

    /// <summary>"41 %", "under 1 %".</summary>
    public static string Percent(double share) => share > 0 && share < 0.01 ? "under 1 %" : $"{Whole(100 * share)} %";

    /// <summary>"1 run", "3 runs".</summary>
    public static string Count(int n, string thing) => string.Create(CultureInfo.InvariantCulture, $"{n} {thing}{(n == 1 ? "" : "s")}");

    private static string Plus(double value) => Say(value, "0.0") is var text && text[0] != '−' && text != "0.0" ? "+" + text : text;

    private static string Whole(double value) => Say(value, "0");

    private static string Range(string low, string high) => $"{low} to {high}";

    /// <summary>Tenths only where the doubt is small enough to give them a meaning.</summary>
    private static string FormatFor(double ninetyPercentWidth) => ninetyPercentWidth < 2 ? "0.0" : "0";

    private static string Say(double value, string format)
    {
        string text = value.ToString(format, CultureInfo.InvariantCulture);
        return (text.Trim('-', '0', '.').Length == 0 ? text.TrimStart('-') : text).Replace('-', '−');
    }
}
