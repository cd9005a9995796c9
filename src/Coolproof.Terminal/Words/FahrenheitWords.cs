using System.Globalization;
using System.Text.RegularExpressions;
using Coolproof.Notebook;

namespace Coolproof.Words;

/// <summary>
/// Sentences written in °C and K put into °F. A number before K is a difference, and so is one before "°C cooler", "°C apart" and the like,
/// with the range in brackets that follows it; every other °C is a body's temperature.
/// </summary>
internal static partial class FahrenheitWords
{
    /// <summary>The sentence in °F.</summary>
    public static string Of(string sentence) => Quantity().Replace(sentence, Put);

    static string Put(Match match)
    {
        var comparison = match.Groups["cmp"].Value;
        var difference = match.Groups["unit"].Value == "K" || comparison.Length > 0;
        var ranged = match.Groups["low"].Success || match.Groups["second"].Success;
        string Number(string text, bool difference) => FahrenheitWords.Number(text, difference, keepTenth: !ranged);
        var text = Number(match.Groups["first"].Value, difference);
        if (match.Groups["second"].Success) text += match.Groups["join"].Value + Number(match.Groups["second"].Value, difference);
        text += " °F" + comparison;
        if (match.Groups["low"].Success) text += $" ({Number(match.Groups["low"].Value, difference)} to {Number(match.Groups["high"].Value, difference)})";
        return text;
    }

    static string Number(string text, bool difference, bool keepTenth)
    {
        var value = double.Parse(text.Replace('−', '-'), CultureInfo.InvariantCulture);
        var degrees = new DegreeWords(TemperatureUnitChoice.Fahrenheit);
        var decimals = text.IndexOf('.') is >= 0 and var point ? text.Length - point - 1 : 0;
        // 2 K rounded to "4 °F" would be a tenth off; a small difference that stands alone keeps its tenth.
        if (keepTenth && difference && decimals == 0 && Math.Abs(value) is > 0 and < 5) decimals = 1;
        return DegreeWords.Number(difference ? degrees.Difference(value) : degrees.Temperature(value), decimals);
    }

    const string Figure = @"[-−]?\d+(?:\.\d+)?";

    [GeneratedRegex(
        @"(?<![\w.])(?<first>" + Figure + @")(?:(?<join> to | and |–)(?<second>" + Figure + @"))? ?(?<unit>°C|K)(?![\w/])" +
        @"(?<cmp> (?:cooler|hotter|warmer|colder|apart|higher|lower|more|less|wide|either way|off))?" +
        @"(?: \((?<low>" + Figure + @") to (?<high>" + Figure + @")\))?")]
    private static partial Regex Quantity();
}
