namespace Coolproof.Evidence.Words;

/// <summary>Probabilities as they are said at a track, never more than the number.</summary>
internal static class Odds
{
    private static readonly (double Least, string Words)[] Steps =
    [
        (0.99, "99 in 100"), (0.975, "39 in 40"), (0.95, "19 in 20"), (0.9, "9 in 10"), (0.8, "4 in 5"), (0.75, "3 in 4"), (2.0 / 3, "2 in 3"),
        (0.6, "3 in 5"), (0.5, "1 in 2"), (0.4, "2 in 5"), (1.0 / 3, "1 in 3"), (0.25, "1 in 4"), (0.2, "1 in 5"), (0.1, "1 in 10"), (0.05, "1 in 20"),
        (0.01, "1 in 100"),
    ];

    /// <summary>Like "19 in 20": rounded down, at most "99 in 100"; below one in a hundred "under 1 in 100".</summary>
    /// <param name="p">Probability, 0 to 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">Not a probability.</exception>
    public static string Say(double p)
    {
        if (p is not (>= 0 and <= 1))
            throw new ArgumentOutOfRangeException(nameof(p), p, "A probability lies between 0 and 1.");
        foreach ((double least, string words) in Steps)
            if (p >= least)
                return words;
        return "under 1 in 100";
    }
}
