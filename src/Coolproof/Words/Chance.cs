namespace Coolproof.Words;

/// <summary>Probabilities as a racer says them. Rounded toward "even", so that words never claim more than the number.</summary>
internal static class Chance
{
    static readonly (double Least, string Words)[] Steps =
    [
        (0.995, "over 99 in 100"), (0.99, "99 in 100"), (0.95, "19 in 20"), (0.9, "9 in 10"), (0.8, "4 in 5"), (0.75, "3 in 4"),
        (2.0 / 3, "2 in 3"), (0.6, "3 in 5"), (0.5, "1 in 2"),
    ];

    static readonly (double Most, string Words)[] Small =
    [
        (0.005, "under 1 in 100"), (0.01, "1 in 100"), (0.05, "1 in 20"), (0.1, "1 in 10"), (0.2, "1 in 5"), (0.25, "1 in 4"),
        (1.0 / 3, "1 in 3"), (0.4, "2 in 5"),
    ];

    /// <summary>Like "19 in 20".</summary>
    /// <param name="probability">0 to 1.</param>
    public static string InWords(double probability)
    {
        foreach (var (least, words) in Steps) if (probability >= least) return words;
        foreach (var (most, words) in Small) if (probability <= most) return words;
        return "1 in 2";
    }
}
