using Coolproof.Commands;
using Coolproof.Evidence.Words;
using Coolproof.Notebook;
using Coolproof.Screen;

namespace Coolproof.Words;

/// <summary>Earlier days in an answer that is reckoned from a verdict's draws, in words.</summary>
internal static class EarlierLines
{
    /// <summary>What stands out on the new day, a sentence each, then which days are in the answer and what the new one says alone.</summary>
    /// <param name="earlier">The earlier days.</param>
    /// <param name="alone">The answer from the new day by itself, in the degrees asked for.</param>
    /// <param name="units">These.</param>
    public static IReadOnlyList<string> Of(EarlierInAnswer earlier, string alone, TemperatureUnitChoice units) =>
    [
        .. EarlierWords.StandsOut(earlier.Added).Select(said => Cells.Clean(units == TemperatureUnitChoice.Fahrenheit ? FahrenheitWords.Of(said) : said)),
        Cells.Clean($"{EarlierWords.InAnswer(earlier.Added)}: {string.Join("; ", earlier.Days.Select(day => $"{day.Day} in {day.File}"))}. {EarlierWords.Alone(alone)}"),
    ];
}
