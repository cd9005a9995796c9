using System.Numerics;

namespace Coolproof.Evidence.Causes;

/// <summary>
/// Shapley values: what each player adds, averaged over all orders in which the players can join (L. S. Shapley 1953, "A value for n-person games", from
/// memory). They sum to the worth of all players less the worth of none.
/// </summary>
internal static class Shapley
{
    /// <summary>Fills each player's value.</summary>
    /// <param name="worth">Worth of each coalition: bit i of the index says whether player i is in. 2^n of them.</param>
    /// <param name="values">Receives n values.</param>
    public static void Fill(ReadOnlySpan<double> worth, Span<double> values)
    {
        int n = values.Length;
        if (worth.Length != 1 << n)
            throw new ArgumentException($"{worth.Length} coalitions; expected {1 << n} for {n} players.", nameof(worth));
        values.Clear();
        Span<double> weights = stackalloc double[n];
        // |S|! (n − |S| − 1)! / n! by recursion.
        for (int size = 0; size < n; size++)
            weights[size] = size == 0 ? 1.0 / n : weights[size - 1] * size / (n - size);
        for (int coalition = 0; coalition < worth.Length; coalition++)
        {
            for (int player = 0; player < n; player++)
            {
                if ((coalition & (1 << player)) == 0)
                    values[player] += weights[BitOperations.PopCount((uint)coalition)] * (worth[coalition | (1 << player)] - worth[coalition]);
            }
        }
    }
}
