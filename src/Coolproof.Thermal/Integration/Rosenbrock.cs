namespace Coolproof.Thermal;

/// <summary>
/// Linearly implicit integrator of order 4 with an embedded error estimate of order 3, for stiff heat flows: a light node tied closely to a
/// heavy one (RODAS; Hairer and Wanner, Solving Ordinary Differential Equations II, section IV.7; coefficients from memory, their order shown by tests).
/// The Jacobian is taken by differences. An instance keeps a workspace: one per thread.
/// </summary>
public sealed class Rosenbrock
{
    const int Order = 4;
    const double Gamma = 0.25;

    static readonly double[][] a =
    [
        [],
        [1.544],
        [0.9466785280815826, 0.2557011698983284],
        [3.314825187068521, 2.896124015972201, 0.9986419139977817],
        [1.221224509226641, 6.019134481288629, 12.53708332932087, -0.6878860361058950],
        [1.221224509226641, 6.019134481288629, 12.53708332932087, -0.6878860361058950, 1],
    ];

    static readonly double[][] c =
    [
        [],
        [-5.6688],
        [-2.430093356833875, -0.2063599157091915],
        [-0.1073529058151375, -9.594562251023355, -20.47028614809616],
        [7.496443313967647, -10.24680431464352, -33.99990352819905, 11.70890893206160],
        [8.083246795921522, -7.981132988064893, -31.52159432874371, 16.31930543123136, -6.058818238834054],
    ];

    static readonly double[] alpha = [0, 0.386, 0.21, 0.63, 1, 1];
    static readonly double[] drift = [0.25, -0.1043, 0.1035, -0.03620000000000023, 0, 0];

    readonly HeatFlow flow;
    readonly int n;
    readonly double[][] u;
    readonly double[] stage, slope, slopeInTime, shifted, next, jacobian;
    readonly SmallSolver solver;
    int evaluations;

    /// <summary>Prepares an integration of a heat flow over a number of nodes.</summary>
    public Rosenbrock(int nodes, HeatFlow flow)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(nodes);
        this.flow = flow;
        n = nodes;
        u = [.. Enumerable.Range(0, 6).Select(_ => new double[nodes])];
        (stage, slope, slopeInTime) = (new double[nodes], new double[nodes], new double[nodes]);
        (shifted, next, jacobian) = (new double[nodes], new double[nodes], new double[nodes * nodes]);
        solver = new SmallSolver(nodes);
    }

    /// <summary>Integrates with step control.</summary>
    /// <param name="state">Temperatures at the start, °C; overwritten by those at the end.</param>
    /// <param name="from">Start, s.</param>
    /// <param name="to">End, s, not before the start.</param>
    /// <param name="tolerance">Error allowed in a step.</param>
    /// <exception cref="InvalidOperationException">The steps have shrunk to nothing, as where the flow isn't finite.</exception>
    public IntegrationRecord Run(Span<double> state, double from, double to, Tolerance tolerance)
    {
        Check(state, from, to);
        if (to == from) return default;
        StepControl control = new(Order);
        evaluations = 2;
        double at = from, step = StepControl.First(flow, from, state, to - from, Order, tolerance);
        Linearise(state, at, step);
        while (at < to)
        {
            bool last = at + 1.0001 * step >= to;
            double taken = last ? to - at : step;
            StepControl.RefuseStandstill(at, taken);
            bool solved = TryStep(state, at, taken);
            step = taken;
            if (!control.Keep(solved ? tolerance.Size(u[5], state, next) : double.PositiveInfinity, ref step)) continue;
            at = last ? to : at + taken;
            next.CopyTo(state);
            if (at < to) Linearise(state, at, step);
        }
        return new IntegrationRecord(control.Kept, control.Rejected, evaluations, LooksStiff: false);
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
        for (int i = 0; i < steps; i++)
        {
            Linearise(state, from + i * step, step);
            if (!TryStep(state, from + i * step, step)) throw new InvalidOperationException($"Singular at {from + i * step} s.");
            next.CopyTo(state);
        }
    }

    /// <summary>
    /// Slope, its derivative in time, and the Jacobian. Second-order differences, since the method's order rests on them; in time they look ahead
    /// only, so that a flow that jumped before the start isn't felt.
    /// </summary>
    void Linearise(ReadOnlySpan<double> y, double at, double step)
    {
        flow(at, y, slope);
        double one = at + Math.Min(Math.Max(1e-5, 1e-8 * Math.Abs(at)), 0.25 * step), ahead = one - at;
        flow(one, y, shifted);
        flow(one + ahead, y, stage);
        for (int i = 0; i < n; i++) slopeInTime[i] = (4 * shifted[i] - 3 * slope[i] - stage[i]) / (2 * ahead);
        y.CopyTo(stage);
        for (int j = 0; j < n; j++)
        {
            double nudge = 1e-5 * Math.Max(1, Math.Abs(y[j]));
            stage[j] = y[j] + nudge;
            flow(at, stage, shifted);
            stage[j] = y[j] - nudge;
            flow(at, stage, next);
            for (int i = 0; i < n; i++) jacobian[i * n + j] = (shifted[i] - next[i]) / (2 * nudge);
            stage[j] = y[j];
        }
        evaluations += 2 * n + 3;
    }

    bool TryStep(ReadOnlySpan<double> y, double at, double h)
    {
        if (!solver.Factor(jacobian, 1 / (h * Gamma))) return false;
        for (int s = 0; s < 6; s++)
        {
            if (s > 0)
            {
                Combine(y, a[s], 1, stage);
                flow(at + alpha[s] * h, stage, shifted);
                evaluations++;
            }
            else slope.CopyTo(shifted, 0);
            Combine(shifted, c[s], 1 / h, u[s]);
            for (int i = 0; i < n; i++) u[s][i] += drift[s] * h * slopeInTime[i];
            solver.Solve(u[s]);
        }
        for (int i = 0; i < n; i++) next[i] = stage[i] + u[5][i];
        return true;
    }

    void Combine(ReadOnlySpan<double> first, double[] weights, double factor, Span<double> sum)
    {
        for (int i = 0; i < n; i++)
        {
            double value = 0;
            for (int j = 0; j < weights.Length; j++) value += weights[j] * u[j][i];
            sum[i] = first[i] + factor * value;
        }
    }

    void Check(ReadOnlySpan<double> state, double from, double to)
    {
        if (state.Length != n) throw new ArgumentException($"Has {state.Length} values for {n} nodes.", nameof(state));
        if (!(to >= from)) throw new ArgumentOutOfRangeException(nameof(to), to, $"The end lies before the start, {from} s.");
    }
}
