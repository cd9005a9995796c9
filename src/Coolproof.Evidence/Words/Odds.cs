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
