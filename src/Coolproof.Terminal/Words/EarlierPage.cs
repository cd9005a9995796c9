using Coolproof.Evidence;

namespace Coolproof.Words;

/// <summary>What earlier days change, in words.</summary>
internal static class EarlierPage
{
    /// <summary>
    /// The two options in front by all days together, and how far they are apart with the earlier days and from the day alone, like "The rear blower against the bare can: 16 °C cooler (13 to 19)
    /// with your earlier days, 14 °C cooler (8 to 21) from this day alone."; null with a single option.
    /// </summary>
    /// <param name="together">The verdict from all days.</param>
    /// <param name="alone">The verdict from the day alone.</param>
    /// <param name="degrees">Degrees of the person.</param>
    public static string? Beside(Verdict together, Verdict alone, DegreeWords degrees)
    {
        if (together.MainPair is not { } main) return null;
        var pair = Ranking.CoolerFirst(main);
        var own = alone.Pairs.FirstOrDefault(one => one.On == pair.On && Same(one.A, pair.A) && Same(one.B, pair.B))
            ?? alone.Pairs.FirstOrDefault(one => one.On == pair.On && Same(one.A, pair.B) && Same(one.B, pair.A))?.Turned();
        var missing = new[] { pair.A, pair.B }.Where(name => !alone.Options.Any(option => Same(option.Name, name))).ToArray();
        return $"The {pair.A} against the {pair.B}: {Told(pair, degrees)} with your earlier days, "
            + (own is null ? $"not to be told from this day alone: the {string.Join(" and the ", missing)} {(missing.Length == 1 ? "was" : "were")} not driven." : $"{Told(own, degrees)} from this day alone.");
    }

    /// <summary>Like "3 earlier days".</summary>
    public static string Days(int count) => count == 1 ? "an earlier day" : $"{count} earlier days";

    static string Told(PairVerdict pair, DegreeWords degrees)
    {
        var cooler = pair.DifferenceK.Turned();
        var (said, word) = cooler.Q50 < 0 ? (pair.DifferenceK, "hotter") : (cooler, "cooler");
        var whole = degrees.DifferenceAndRange(said);
        return whole.Insert(whole.IndexOf(" (", StringComparison.Ordinal), $" {word}");
    }

    static bool Same(string a, string b) => string.Equals(a, b, StringComparison.OrdinalIgnoreCase);
}
