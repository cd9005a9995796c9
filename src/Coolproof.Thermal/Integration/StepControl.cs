namespace Coolproof.Thermal;

/// <summary>
/// Length of the next step from the error of the last: proportional-integral control (Hairer, Nørsett, Wanner, Solving Ordinary
/// Differential Equations I, section II.4, and II, section IV.2).
/// </summary>
internal struct StepControl(int order)
{
    const double Safety = 0.9, Shrink = 0.2, Grow = 10, Beta = 0.04;
    readonly double exponent = 1.0 / order;
    double lastError = 1e-4;

    internal int Kept { get; private set; }
    internal int Rejected { get; private set; }

    /// <summary>Judges a step and sets the length of the next one.</summary>
    internal bool Keep(double error, ref double step)
    {
        if (double.IsNaN(error)) error = double.PositiveInfinity;
        double factor = Safety * Math.Pow(Math.Max(error, 1e-10), Beta * 0.75 - exponent);
        if (error <= 1)
        {
            step *= Math.Clamp(factor * Math.Pow(lastError, Beta), Shrink, Grow);
            lastError = Math.Max(error, 1e-4);
            Kept++;
            return true;
        }
        step *= Math.Clamp(factor, Shrink, 1);
        Rejected++;
        return false;
    }

    /// <summary>A first step that a low-order estimate of the error supports (Hairer, Nørsett, Wanner, section II.4).</summary>
    internal static double First(HeatFlow flow, double from, ReadOnlySpan<double> state, double span, int order, Tolerance tolerance)
    {
        int n = state.Length;
        Span<double> rate = stackalloc double[n], ahead = stackalloc double[n], rateAhead = stackalloc double[n];
        flow(from, state, rate);
        double size = tolerance.Size(state, state, state), speed = tolerance.Size(rate, state, state);
        double step = size < 1e-5 || speed < 1e-5 ? 1e-6 : 0.01 * size / speed;
        step = Math.Min(step, span);
        for (int i = 0; i < n; i++) ahead[i] = state[i] + step * rate[i];
        flow(from + step, ahead, rateAhead);
        for (int i = 0; i < n; i++) rateAhead[i] -= rate[i];
        double bend = Math.Max(tolerance.Size(rateAhead, state, state) / step, speed);
        double better = bend <= 1e-15 ? Math.Max(1e-6, step * 1e-3) : Math.Pow(0.01 / bend, 1.0 / order);
        return Math.Min(Math.Min(100 * step, better), span);
    }

    /// <summary>Refuses to go on where the steps have become too short to move the clock.</summary>
    internal static void RefuseStandstill(double at, double step)
    {
        if (!(step > 1e-14 * Math.Max(1, Math.Abs(at))))
            throw new InvalidOperationException($"The heat flow can't be followed past {at} s: the step has shrunk to {step} s.");
    }
}
