using Coolproof.Sampling.Diagnostics;

namespace Coolproof.Sampling.Laplace;

/// <summary>Draws from a posterior by importance sampling, with the word on whether they can be relied on.</summary>
/// <param name="Dimension">Numbers in a position.</param>
/// <param name="Weighted">The importance draws, one position after another.</param>
/// <param name="LogWeights">Their log importance weights before smoothing.</param>
/// <param name="Weights">Their Pareto smoothed weights, sum 1.</param>
/// <param name="Equal">As many draws of equal weight, resampled, one position after another.</param>
/// <param name="ParetoShape">k̂ of the weights: up to 0.7 the draws can be relied on; +∞ when there was too little to tell.</param>
/// <param name="LogIntegral">Log of the integral of the density.</param>
/// <param name="Gradients">Gradients evaluated.</param>
public sealed record QuickDraws(
    int Dimension, double[] Weighted, double[] LogWeights, double[] Weights, double[] Equal, double ParetoShape, double LogIntegral, int Gradients)
{
    /// <summary>k̂ above which no firm call is made (Vehtari et al. 2024, JMLR 25:72).</summary>
    public const double RoughAbove = 0.7;

    /// <summary>Number of draws.</summary>
    public int Count => Weights.Length;

    /// <summary>Whether the draws are only rough: k̂ above <see cref="RoughAbove"/>.</summary>
    public bool Rough => !(ParetoShape <= RoughAbove);

    /// <summary>Effective number of draws, 1/Σw².</summary>
    public double EffectiveSize => ParetoSmoothing.SampleSize(Weights);

    /// <summary>One of the equally weighted draws.</summary>
    public ReadOnlySpan<double> Draw(int index) => Equal.AsSpan(index * Dimension, Dimension);

    /// <summary>Weighted mean of a quantity over the importance draws; less noisy than the mean over the equally weighted ones.</summary>
    /// <param name="quantity">From a position to a number.</param>
    public double Mean(Func<ReadOnlySpan<double>, double> quantity)
    {
        double sum = 0;
        for (int i = 0; i < Count; i++) sum += Weights[i] * quantity(Weighted.AsSpan(i * Dimension, Dimension));
        return sum;
    }
}
