namespace Coolproof.Evidence.Causes;

/// <summary>Which runs of two sets are set against each other, and with what weight: each run weighs the same within its set.</summary>
internal static class RunPairs
{
    /// <summary>Pairs; runs of the same option meet as far as their numbers go, the others in order.</summary>
    /// <param name="a">Options of the runs of the first set.</param>
    /// <param name="b">Options of the runs of the second set.</param>
    public static IReadOnlyList<(int A, int B, double Weight)> Of(IReadOnlyList<int> a, IReadOnlyList<int> b)
    {
        // Whole shares, so that nothing is left over by rounding.
        int[] leftA = [.. a.Select(_ => b.Count)], leftB = [.. b.Select(_ => a.Count)];
        List<(int, int, double)> pairs = [];
        foreach (bool sameOption in (ReadOnlySpan<bool>)[true, false])
            for (int i = 0; i < a.Count; i++)
                for (int j = 0; j < b.Count; j++)
                    if (Math.Min(leftA[i], leftB[j]) is var share and > 0 && (!sameOption || a[i] == b[j]))
                    {
                        pairs.Add((i, j, share / ((double)a.Count * b.Count)));
                        (leftA[i], leftB[j]) = (leftA[i] - share, leftB[j] - share);
                    }
        return pairs;
    }
}
