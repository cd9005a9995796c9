namespace Coolproof.Thermal.FullModel;

/// <summary>
/// The full model by a step-controlled integrator that linearises nothing: the slow judge of <see cref="FastPath"/>.
/// Dormand and Prince's pair of orders 5 and 4 (1980), error per step held to the tolerance.
/// </summary>
public static class ReferencePath
{
    const int N = HeatFlows.Nodes;

    /// <summary>Brings a state forward through one phase.</summary>
    /// <param name="body">The motor.</param>
    /// <param name="cooling">The option fitted.</param>
    /// <param name="phase">The conditions, constant throughout.</param>
    /// <param name="seconds">How long, s.</param>
    /// <param name="t">Six temperatures, °C; overwritten.</param>
    /// <param name="toleranceK">Error allowed in a step, K.</param>
    /// <exception cref="ArgumentOutOfRangeException">The time is negative or not finite.</exception>
    /// <exception cref="ArithmeticException">No step is short enough, as after an overflow.</exception>
    public static void Advance(
        MotorBody body, CoolingOption cooling, in Phase phase, double seconds, Span<double> t, double toleranceK = 1e-9)
    {
        if (!(seconds >= 0) || !double.IsFinite(seconds))
            throw new ArgumentOutOfRangeException(nameof(seconds), seconds, "Time runs forward by a finite number of seconds.");
        Span<double> slopes = stackalloc double[7 * N];
        Span<double> next = stackalloc double[N];
        double done = 0, h = Math.Min(seconds, 0.1);
        while (done < seconds)
        {
            h = Math.Min(h, seconds - done);
            double error = TryStep(body, cooling, phase, h, t, slopes, next) / toleranceK;
            if (error <= 1)
            {
                next.CopyTo(t);
                done += h;
            }
            else if (!(h > 1e-12))
            {
                throw new ArithmeticException($"No step from {done} s on keeps within {toleranceK} K.");
            }
            h *= double.IsFinite(error) ? Math.Clamp(0.9 * Math.Pow(Math.Max(error, 1e-10), -0.2), 0.2, 5) : 0.2;
        }
    }

    static double TryStep(
        MotorBody body, CoolingOption cooling, in Phase phase, double h, ReadOnlySpan<double> t, Span<double> slopes, Span<double> next)
    {
        HeatFlows.Rates(body, cooling, phase, t, slopes[..N]);
        for (int stage = 1; stage < 7; stage++)
        {
            double[] weights = Stages[stage - 1];
            for (int i = 0; i < N; i++)
            {
                double sum = 0;
                for (int s = 0; s < stage; s++)
                    sum += weights[s] * slopes[s * N + i];
                next[i] = t[i] + h * sum;
            }
            HeatFlows.Rates(body, cooling, phase, next, slopes.Slice(stage * N, N));
        }
        double worst = 0;
        for (int i = 0; i < N; i++)
        {
            double sum = 0;
            for (int s = 0; s < 7; s++)
                sum += ErrorWeights[s] * slopes[s * N + i];
            worst = Math.Max(worst, Math.Abs(h * sum));
        }
        return worst;
    }

    // The last stage is the fifth-order result itself.
    static readonly double[][] Stages =
    [
        [1.0 / 5],
        [3.0 / 40, 9.0 / 40],
        [44.0 / 45, -56.0 / 15, 32.0 / 9],
        [19372.0 / 6561, -25360.0 / 2187, 64448.0 / 6561, -212.0 / 729],
        [9017.0 / 3168, -355.0 / 33, 46732.0 / 5247, 49.0 / 176, -5103.0 / 18656],
        [35.0 / 384, 0, 500.0 / 1113, 125.0 / 192, -2187.0 / 6784, 11.0 / 84],
    ];

    static readonly double[] ErrorWeights =
    [
        35.0 / 384 - 5179.0 / 57600, 0, 500.0 / 1113 - 7571.0 / 16695, 125.0 / 192 - 393.0 / 640,
        -2187.0 / 6784 + 92097.0 / 339200, 11.0 / 84 - 187.0 / 2100, -1.0 / 40,
    ];
}
