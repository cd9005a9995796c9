namespace Coolproof.Sampling;

/// <summary>Equally weighted draws out of weighted ones.</summary>
public static class Resampling
{
    /// <summary>Weights out of their logarithms, the largest 1: none overflows.</summary>
    /// <param name="logs">Logarithms up to a constant.</param>
    public static double[] Weights(IReadOnlyList<double> logs)
    {
        double highest = logs.Max();
        return [.. logs.Select(log => Math.Exp(log - highest))];
    }

    /// <summary>Systematic resampling: places in equal steps along the sum of the weights, so that each is taken as often as its share has it, within one. No chance is in it.</summary>
    /// <param name="weights">Weights, 0 or more, not all 0.</param>
    /// <param name="draws">How many to take.</param>
    /// <returns>Places in ascending order; one may come more than once.</returns>
    /// <exception cref="ArgumentException">No weight is above 0, or one is no number.</exception>
    public static int[] Systematic(IReadOnlyList<double> weights, int draws)
    {
        double sum = weights.Sum();
        if (!(sum > 0) || !double.IsFinite(sum) || weights.Any(w => w < 0))
            throw new ArgumentException($"Weights add up to {sum}: expected finite ones of 0 or more, and one above 0.", nameof(weights));
        int[] taken = new int[draws];
        double upTo = 0;
        int last = 0;
        for (int place = 0, draw = 0; place < weights.Count; place++)
        {
            if (weights[place] > 0)
                last = place;
            upTo += weights[place] / sum * draws;
            for (; draw < draws && draw + 0.5 < upTo; draw++)
                taken[draw] = place;
            if (place == weights.Count - 1) // rounding may leave the last ones out
                taken.AsSpan(draw).Fill(last);
        }
        return taken;
    }
}
