namespace Coolproof.Sampling.Uncertainty;

/// <summary>What inputs must keep to.</summary>
internal static class InputChecks
{
    /// <summary>Refuses what can't be.</summary>
    /// <exception cref="ArgumentException">No input, a number that isn't finite, a negative uncertainty, or correlations that don't fit.</exception>
    public static void Refuse(IReadOnlyList<Input> inputs, double[,]? correlation)
    {
        if (inputs.Count == 0)
            throw new ArgumentException("A model needs at least one input.", nameof(inputs));
        foreach (Input input in inputs)
            if (!double.IsFinite(input.Estimate) || !(input.StandardUncertainty >= 0 && double.IsFinite(input.StandardUncertainty)) || !(input.DegreesOfFreedom > 0))
                throw new ArgumentException($"{input.Name}: {input.Estimate} with standard uncertainty {input.StandardUncertainty} and {input.DegreesOfFreedom} degrees of freedom can't be.", nameof(inputs));
        if (correlation is null)
            return;
        if (correlation.GetLength(0) != inputs.Count || correlation.GetLength(1) != inputs.Count)
            throw new ArgumentException($"Correlations of {inputs.Count} inputs are {inputs.Count} by {inputs.Count}.", nameof(correlation));
        for (int i = 0; i < inputs.Count; i++)
            for (int j = 0; j < inputs.Count; j++)
                if (correlation[i, j] != correlation[j, i] || !(Math.Abs(correlation[i, j]) <= 1) || (i == j && correlation[i, j] != 1))
                    throw new ArgumentException($"The correlation of {inputs[i].Name} and {inputs[j].Name} can't be {correlation[i, j]} one way and {correlation[j, i]} the other.", nameof(correlation));
    }
}
