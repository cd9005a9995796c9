using System.Globalization;

namespace Coolproof.Evidence.Curves;

/// <summary>Why a run fits badly with the rest, in plain words; null where it fits.</summary>
internal static class Misfit
{
    private const double FarOut = 2.5, LeastPart = 0.10, SurelyWild = 0.8, RoundFromK = 3;

    private static readonly string[] Ordinals = ["first", "second", "third", "fourth", "fifth", "sixth"];

    /// <summary>A run's heat against the others'.</summary>
    /// <param name="deviation">Its log-heat deviation.</param>
    /// <param name="standardised">The same over its spread from run to run.</param>
    public static string? OfHeat(double deviation, double standardised)
    {
        double part = Math.Exp(deviation) - 1;
        return Math.Abs(standardised) > FarOut && Math.Abs(part) > LeastPart
            ? $"the motor made {Figure(100 * part, "0")} % {(part > 0 ? "more" : "less")} heat than the other runs let expect"
            : null;
    }

    /// <summary>A reading against the rest of its run.</summary>
    /// <param name="wideProbability">Probability that its scatter was the wide one.</param>
    /// <param name="aboveK">How far it lies above what is expected, K.</param>
    /// <param name="number">Its number within the run, from 1.</param>
    /// <param name="line">Its line of the file; 0 where there is none.</param>
    /// <param name="alone">Whether its run has no other.</param>
    public static string? OfReading(double wideProbability, double aboveK, int number, int line, bool alone)
    {
        if (!(wideProbability > SurelyWild))
            return null;
        string which = alone ? "only reading" : number <= Ordinals.Length ? $"{Ordinals[number - 1]} reading" : $"reading number {number}";
        string where = line > 0 ? $" (line {line})" : "", side = aboveK > 0 ? "above" : "below";
        string rest = alone ? "what the other runs let expect" : "the rest of its run";
        return $"the {which}{where} is {Figure(aboveK, Math.Abs(aboveK) < RoundFromK ? "0.#" : "0")} K {side} {rest}";
    }

    private static string Figure(double value, string format) => Math.Abs(value).ToString(format, CultureInfo.InvariantCulture);
}
