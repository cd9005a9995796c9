namespace Coolproof.Thermal;

/// <summary>One exact step of fixed length: T(t + Δ) = E T(t) + H b, for a network and a Δ.</summary>
public sealed class Propagator
{
    readonly int n;
    readonly double[] keep;
    readonly double[] gain;

    internal Propagator(int nodes, double seconds, double[] keep, double[] gain)
    {
        n = nodes;
        Seconds = seconds;
        this.keep = keep;
        this.gain = gain;
    }

    /// <summary>Length of the step, s.</summary>
    public double Seconds { get; }

    /// <summary>E, row by row: how much of each node's temperature is left, and where.</summary>
    public ReadOnlySpan<double> Keep => keep;

    /// <summary>H, K/W, row by row: what a watt of b adds over the step.</summary>
    public ReadOnlySpan<double> Gain => gain;

    /// <summary>Takes the step; allocates nothing. The output may be the state itself.</summary>
    /// <param name="state">Temperatures at the start, one per node.</param>
    /// <param name="heatW">b, W, constant over the step.</param>
    /// <param name="output">Receives the temperatures at the end.</param>
    public void Apply(ReadOnlySpan<double> state, ReadOnlySpan<double> heatW, Span<double> output)
    {
        Span<double> next = stackalloc double[n];
        for (int i = 0; i < n; i++)
        {
            double sum = 0;
            for (int j = 0; j < n; j++) sum += keep[i * n + j] * state[j] + gain[i * n + j] * heatW[j];
            next[i] = sum;
        }
        next.CopyTo(output);
    }

    /// <summary>H b, K: what the heat alone does in one step.</summary>
    internal void FillGain(ReadOnlySpan<double> heatW, Span<double> output)
    {
        for (int i = 0; i < n; i++)
        {
            double sum = 0;
            for (int j = 0; j < n; j++) sum += gain[i * n + j] * heatW[j];
            output[i] = sum;
        }
    }
}
