namespace Coolproof.Thermal;

/// <summary>
/// Explicit Runge-Kutta integrator of order 5 with an embedded error estimate of order 4, step control and continuous output of order 4
/// (Dormand and Prince 1980, J. Comput. Appl. Math. 6, 19; coefficients and output as in Hairer, Nørsett, Wanner, section II.5).
/// An instance keeps a workspace: one per thread. A heat flow that jumps (halt, fan off) is integrated piece by piece.
/// </summary>
public sealed class DormandPrince
{
    const int Order = 5, StiffAfter = 15;

    readonly HeatFlow flow;
    readonly int n;
    readonly double[][] k;
    readonly double[] stage, next, error;
    int evaluations;

    /// <summary>Prepares an integration of a heat flow over a number of nodes.</summary>
    public DormandPrince(int nodes, HeatFlow flow)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(nodes);
        this.flow = flow;
        n = nodes;
        k = [.. Enumerable.Range(0, 7).Select(_ => new double[nodes])];
        (stage, next, error) = (new double[nodes], new double[nodes], new double[nodes]);
    }

    /// <summary>Integrates with step control.</summary>
    /// <param name="state">Temperatures at the start, °C; overwritten by those at the end.</param>
    /// <param name="from">Start, s.</param>
    /// <param name="to">End, s, not before the start.</param>
    /// <param name="tolerance">Error allowed in a step.</param>
    /// <exception cref="InvalidOperationException">The steps have shrunk to nothing, as where the flow isn't finite.</exception>
    public IntegrationRecord Run(Span<double> state, double from, double to, Tolerance tolerance) =>
        Follow(state, from, to, tolerance, 1, []);

    /// <summary>Integrates with step control and writes temperatures on a uniform grid of times, row i at from + (i + 1) × every.</summary>
    /// <param name="state">Temperatures at the start, °C; overwritten by those at the last row.</param>
    /// <param name="from">Start, s.</param>
    /// <param name="every">Seconds between rows, above zero.</param>
    /// <param name="rows">Receives the temperatures row after row.</param>
    /// <param name="tolerance">Error allowed in a step; between steps the output has order 4.</param>
    /// <exception cref="InvalidOperationException">The steps have shrunk to nothing, as where the flow isn't finite.</exception>
    public IntegrationRecord Sample(Span<double> state, double from, double every, Span<double> rows, Tolerance tolerance)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(every);
        if (rows.Length % n != 0) throw new ArgumentException($"{rows.Length} values are no whole number of rows of {n}.", nameof(rows));
        return Follow(state, from, from + rows.Length / n * every, tolerance, every, rows);
    }

    /// <summary>Integrates in steps of equal length, without error control.</summary>
    /// <param name="state">Temperatures at the start, °C; overwritten by those at the end.</param>
    /// <param name="from">Start, s.</param>
    /// <param name="to">End, s.</param>
    /// <param name="steps">Number of steps.</param>
    public void RunFixed(Span<double> state, double from, double to, int steps)
    {
        Check(state, from, to);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(steps);
        double step = (to - from) / steps;
        flow(from, state, k[0]);
        for (int i = 0; i < steps; i++)
        {
            TryStep(state, from + i * step, step);
            Accept(state);
        }
    }

    IntegrationRecord Follow(Span<double> state, double from, double to, Tolerance tolerance, double every, Span<double> rows)
    {
        Check(state, from, to);
        if (to == from) return default;
        StepControl control = new(Order);
        double at = from, step = StepControl.First(flow, from, state, to - from, Order, tolerance);
        int row = 0, stiffSigns = 0;
        bool looksStiff = false;
        flow(from, state, k[0]);
        evaluations = 3;
        while (at < to)
        {
            bool last = at + 1.0001 * step >= to;
            double taken = last ? to - at : step;
            StepControl.RefuseStandstill(at, taken);
            TryStep(state, at, taken);
            step = taken;
            if (!control.Keep(tolerance.Size(error, state, next), ref step)) continue;
            stiffSigns = OnTheEdgeOfStability(taken) ? stiffSigns + 1 : 0;
            looksStiff |= stiffSigns >= StiffAfter;
            double end = last ? to : at + taken;
            for (; row < rows.Length / n && from + (row + 1) * every <= end + 1e-12 * every; row++)
                Between(state, (from + (row + 1) * every - at) / taken, taken, rows.Slice(row * n, n));
            at = end;
            Accept(state);
        }
        return new IntegrationRecord(control.Kept, control.Rejected, evaluations, looksStiff);
    }

    /// <summary>Fills the stages, the next state and its error; the first stage is in place already.</summary>
    void TryStep(ReadOnlySpan<double> y, double at, double h)
    {
        Stage(y, at, h, 1, 1.0 / 5, [1.0 / 5]);
        Stage(y, at, h, 2, 3.0 / 10, [3.0 / 40, 9.0 / 40]);
        Stage(y, at, h, 3, 4.0 / 5, [44.0 / 45, -56.0 / 15, 32.0 / 9]);
        Stage(y, at, h, 4, 8.0 / 9, [19372.0 / 6561, -25360.0 / 2187, 64448.0 / 6561, -212.0 / 729]);
        Stage(y, at, h, 5, 1, [9017.0 / 3168, -355.0 / 33, 46732.0 / 5247, 49.0 / 176, -5103.0 / 18656]);
        for (int i = 0; i < n; i++)
            next[i] = y[i] + h * (35.0 / 384 * k[0][i] + 500.0 / 1113 * k[2][i] + 125.0 / 192 * k[3][i]
                - 2187.0 / 6784 * k[4][i] + 11.0 / 84 * k[5][i]);
        flow(at + h, next, k[6]);
        evaluations += 6;
        for (int i = 0; i < n; i++)
            error[i] = h * (71.0 / 57600 * k[0][i] - 71.0 / 16695 * k[2][i] + 71.0 / 1920 * k[3][i]
                - 17253.0 / 339200 * k[4][i] + 22.0 / 525 * k[5][i] - 1.0 / 40 * k[6][i]);
    }

    void Stage(ReadOnlySpan<double> y, double at, double h, int index, double fraction, ReadOnlySpan<double> weights)
    {
        for (int i = 0; i < n; i++)
        {
            double sum = 0;
            for (int j = 0; j < weights.Length; j++) sum += weights[j] * k[j][i];
            stage[i] = y[i] + h * sum;
        }
        flow(at + fraction * h, stage, k[index]);
    }

    /// <summary>The last stage's slope is the next step's first.</summary>
    void Accept(Span<double> state)
    {
        next.CopyTo(state);
        (k[0], k[6]) = (k[6], k[0]);
    }

    /// <summary>Step × the rate of the fastest mode, estimated from the last two stages, near the end of the stable range (3.3).</summary>
    bool OnTheEdgeOfStability(double h)
    {
        double slopes = 0, states = 0;
        for (int i = 0; i < n; i++)
        {
            slopes += (k[6][i] - k[5][i]) * (k[6][i] - k[5][i]);
            states += (next[i] - stage[i]) * (next[i] - stage[i]);
        }
        return states > 0 && h * Math.Sqrt(slopes / states) > 3.25;
    }

    void Between(ReadOnlySpan<double> y, double s, double h, Span<double> row)
    {
        double r = 1 - s;
        for (int i = 0; i < n; i++)
        {
            double rise = next[i] - y[i], bend = h * k[0][i] - rise;
            double curve = rise - h * k[6][i] - bend;
            double rest = h * (-12715105075.0 / 11282082432 * k[0][i] + 87487479700.0 / 32700410799 * k[2][i]
                - 10690763975.0 / 1880347072 * k[3][i] + 701980252875.0 / 199316789632 * k[4][i]
                - 1453857185.0 / 822651844 * k[5][i] + 69997945.0 / 29380423 * k[6][i]);
            row[i] = y[i] + s * (rise + r * (bend + s * (curve + r * rest)));
        }
    }

    void Check(ReadOnlySpan<double> state, double from, double to)
    {
        if (state.Length != n) throw new ArgumentException($"Has {state.Length} values for {n} nodes.", nameof(state));
        if (!(to >= from)) throw new ArgumentOutOfRangeException(nameof(to), to, $"The end lies before the start, {from} s.");
    }
}
