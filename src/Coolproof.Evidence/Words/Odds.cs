namespace Coolproof.Evidence.Words;

/// <summary>Probabilities as they are said at a track: rounded toward even chances, so that words never claim more than the number.</summary>
public static class Odds
{
    // 99 in 100 is the most that a few thousand draws are asked to bear.
    private static readonly (double Least, string Words)[] Likely =
    [
        (0.99, "99 in 100"), (0.975, "39 in 40"), (0.95, "19 in 20"), (0.9, "9 in 10"), (0.8, "4 in 5"), (0.75, "3 in 4"), (2.0 / 3, "2 in 3"), (0.6, "3 in 5"),
        (0.5, "1 in 2"),
    ];

    private static readonly (double Most, string Words)[] Unlikely =
    [
        (0.01, "1 in 100"), (0.025, "1 in 40"), (0.05, "1 in 20"), (0.1, "1 in 10"), (0.2, "1 in 5"), (0.25, "1 in 4"), (1.0 / 3, "1 in 3"), (0.4, "2 in 5"),
    ];

    /// <summary>Shares in whole hundredths that add up to 100: each rounded down, and what is left given to the largest remainders (common practice, no source).</summary>
    /// <param name="shares">Shares of a whole: counts, or parts that add up to 1.</param>
    /// <returns>Hundredths in the order of the shares.</returns>
    /// <exception cref="ArgumentOutOfRangeException">One is negative or no number, or there is nothing to share.</exception>
    public static IReadOnlyList<int> OfHundred(IReadOnlyList<double> shares)
    {
        ArgumentNullException.ThrowIfNull(shares);
        double whole = shares.Sum();
        if (shares.Any(share => !(share >= 0)) || whole is not (> 0 and < double.PositiveInfinity))
            throw new ArgumentOutOfRangeException(nameof(shares), string.Join(", ", shares), "Shares are not negative, and some are more than 0.");
        double[] exact = [.. shares.Select(share => 100 * share / whole)];
        int[] hundredths = [.. exact.Select(share => (int)Math.Floor(share + 1e-9))];
        foreach (int i in Enumerable.Range(0, shares.Count).OrderByDescending(i => exact[i] - hundredths[i]).Take(100 - hundredths.Sum()))
            hundredths[i]++;
        return hundredths;
    }

    /// <summary>Like "19 in 20"; at most "99 in 100", and below one in a hundred "under 1 in 100".</summary>
    /// <param name="p">Probability, 0 to 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">Not a probability.</exception>
    public static string Say(double p)
    {
        if (p is not (>= 0 and <= 1))
            throw new ArgumentOutOfRangeException(nameof(p), p, "A probability lies between 0 and 1.");
        if (p < 0.01)
            return "under 1 in 100";
        foreach ((double least, string words) in Likely)
            if (p >= least)
                return words;
        foreach ((double most, string words) in Unlikely)
            if (p <= most)
                return words;
        return "1 in 2";
    }
}
