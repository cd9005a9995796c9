using MathNet.Numerics.LinearAlgebra;

namespace Coolproof.Thermal;

/// <summary>
/// Exact answers of a network over intervals of constant heat, prepared once: two nodes in closed form, more by symmetric
/// eigen-decomposition, unsymmetric networks by scaling and squaring. Immutable, so threads may share it.
/// </summary>
public sealed class Stepper
{
    readonly Network network;
    readonly Modes? modes;

    internal Stepper(Network network)
    {
        this.network = network;
        modes = network.IsSymmetric ? new Modes(network) : null;
    }

    /// <summary>Number of nodes.</summary>
    public int Nodes => network.Nodes;

    /// <summary>
    /// Rates of decay, 1/s, of a symmetric network; a negative one is a runaway. Empty where scaling and squaring is used.
    /// </summary>
    public ReadOnlySpan<double> Rates => modes is null ? [] : modes.Rates;

    /// <summary>
    /// Temperatures after some seconds. Allocates nothing for a symmetric network. The output may be the state itself.
    /// </summary>
    /// <param name="state">Temperatures at the start, °C, one per node.</param>
    /// <param name="heatW">b of each node, W (<see cref="Network.Heat"/>), constant over the interval.</param>
    /// <param name="seconds">Length of the interval, s, not negative.</param>
    /// <param name="output">Receives the temperatures at the end, °C.</param>
    public void Step(ReadOnlySpan<double> state, ReadOnlySpan<double> heatW, double seconds, Span<double> output)
    {
        Check(state, heatW, seconds);
        if (modes is null) Over(seconds).Apply(state, heatW, output);
        else modes.Step(state, heatW, seconds, output);
    }

    /// <summary>Integral of each temperature over the interval, K s; divided by the seconds it is the mean temperature.</summary>
    /// <inheritdoc cref="Step"/>
    public void Integral(ReadOnlySpan<double> state, ReadOnlySpan<double> heatW, double seconds, Span<double> output)
    {
        Check(state, heatW, seconds);
        if (modes is null) IntegralBySquaring(state, heatW, seconds, output);
        else modes.Integral(state, heatW, seconds, output);
    }

    /// <summary>Prepares a step of fixed length, to be taken many times.</summary>
    /// <param name="seconds">Length of the step, s, not negative.</param>
    public Propagator Over(double seconds)
    {
        if (!(double.IsFinite(seconds) && seconds >= 0))
            throw new ArgumentOutOfRangeException(nameof(seconds), seconds, "A step lasts zero or more seconds.");
        return modes is null ? OverBySquaring(seconds) : modes.Over(seconds);
    }

    /// <summary>
    /// Temperatures on a uniform grid of times while the heat is constant; round-off stays below 1e-10 K whatever the number of rows.
    /// </summary>
    /// <param name="state">Temperatures at the start, °C.</param>
    /// <param name="heatW">b of each node, W.</param>
    /// <param name="firstSeconds">Time of the first row after the start, s.</param>
    /// <param name="everySeconds">Time between rows, s.</param>
    /// <param name="rows">Receives the temperatures row after row; its length is a multiple of the number of nodes.</param>
    public void Sample(ReadOnlySpan<double> state, ReadOnlySpan<double> heatW, double firstSeconds, double everySeconds, Span<double> rows)
    {
        Check(state, heatW, firstSeconds);
        if (rows.Length % Nodes != 0)
            throw new ArgumentException($"{rows.Length} values are no whole number of rows of {Nodes}.", nameof(rows));
        GridSampling.Fill(this, state, heatW, firstSeconds, everySeconds, rows);
    }

    /// <summary>
    /// Temperatures on a uniform grid of times, row k at (k + 1) × <paramref name="everySeconds"/>, through stretches of constant heat.
    /// </summary>
    /// <param name="state">Temperatures at the start, °C.</param>
    /// <param name="schedule">Stretches, one after another; they need not begin on the grid.</param>
    /// <param name="everySeconds">Time between rows, s.</param>
    /// <param name="rows">Receives the temperatures row after row.</param>
    /// <exception cref="ArgumentException">The rows reach beyond the schedule, or are no whole number of rows.</exception>
    public void Sample(ReadOnlySpan<double> state, ReadOnlySpan<HeatInterval> schedule, double everySeconds, Span<double> rows)
    {
        int count = rows.Length / Nodes, done = 0;
        double begin = 0;
        Span<double> start = stackalloc double[Nodes];
        state.CopyTo(start);
        foreach (HeatInterval interval in schedule)
        {
            double end = begin + interval.Seconds;
            // A row that rounding puts a hair past the end of a stretch still belongs to it: temperatures are continuous there.
            int upTo = (int)Math.Min(count, Math.Floor(end / everySeconds * (1 + 1e-14) + 1e-9));
            if (upTo > done)
            {
                double first = Math.Max(0, (done + 1) * everySeconds - begin);
                Sample(start, interval.HeatW, first, everySeconds, rows[(done * Nodes)..(upTo * Nodes)]);
                done = upTo;
            }
            if (done == count) return;
            Step(start, interval.HeatW, interval.Seconds, start);
            begin = end;
        }
        if (done < count) throw new ArgumentException($"{count} rows reach beyond the schedule's {begin} s.", nameof(rows));
    }

    void Check(ReadOnlySpan<double> state, ReadOnlySpan<double> heatW, double seconds)
    {
        if (state.Length != Nodes) throw new ArgumentException($"Has {state.Length} values for {Nodes} nodes.", nameof(state));
        if (heatW.Length != Nodes) throw new ArgumentException($"Has {heatW.Length} values for {Nodes} nodes.", nameof(heatW));
        if (!(double.IsFinite(seconds) && seconds >= 0))
            throw new ArgumentOutOfRangeException(nameof(seconds), seconds, "An interval lasts zero or more seconds.");
    }

    /// <summary>exp of [[−C⁻¹K, C⁻¹, 0], [0, 0, 1], [0, 0, 0]] Δ holds E, H and the integral of H side by side, K⁻¹ never formed.</summary>
    Matrix<double> Augmented(double seconds, int blocks)
    {
        int n = Nodes;
        var a = Matrix<double>.Build.Dense(blocks * n, blocks * n);
        for (int i = 0; i < n; i++)
        {
            for (int j = 0; j < n; j++) a[i, j] = -network.Matrix[i * n + j] / network.CapacitiesJK[i] * seconds;
            a[i, n + i] = seconds / network.CapacitiesJK[i];
            if (blocks == 3) a[n + i, 2 * n + i] = seconds;
        }
        return MatrixExponential.Of(a);
    }

    Propagator OverBySquaring(double seconds)
    {
        int n = Nodes;
        Matrix<double> e = Augmented(seconds, 2);
        return new Propagator(n, seconds, e.SubMatrix(0, n, 0, n).ToRowMajorArray(), e.SubMatrix(0, n, n, n).ToRowMajorArray());
    }

    void IntegralBySquaring(ReadOnlySpan<double> state, ReadOnlySpan<double> heatW, double seconds, Span<double> output)
    {
        int n = Nodes;
        Matrix<double> e = Augmented(seconds, 3);
        Span<double> sums = stackalloc double[n];
        for (int i = 0; i < n; i++)
        {
            double sum = 0;
            // H = (∫E) C⁻¹, so ∫E = H C.
            for (int j = 0; j < n; j++) sum += e[i, n + j] * network.CapacitiesJK[j] * state[j] + e[i, 2 * n + j] * heatW[j];
            sums[i] = sum;
        }
        sums.CopyTo(output);
    }
}
