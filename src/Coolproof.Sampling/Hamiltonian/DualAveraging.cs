namespace Coolproof.Sampling.Hamiltonian;

/// <summary>
/// Nesterov's dual averaging of the log step size towards a target acceptance, with γ = 0.05, t₀ = 10, κ = 0.75 of
/// Hoffman and Gelman (2014), section 3.2.
/// </summary>
sealed class DualAveraging(double target)
{
    const double Gamma = 0.05, Delay = 10, Kappa = 0.75;
    double attractor, errorMean, averageLog;
    int count;

    /// <summary>The step to try next.</summary>
    public double Step { get; private set; }

    /// <summary>The averaged step, to be kept after the warm-up; the present one when nothing was learnt yet.</summary>
    public double Averaged => count == 0 ? Step : Math.Exp(averageLog);

    /// <summary>Begins anew at <paramref name="step"/>, leaning towards ten times as much.</summary>
    public void Restart(double step)
    {
        (attractor, errorMean, averageLog, count) = (Math.Log(10 * step), 0, 0, 0);
        Step = step;
    }

    /// <summary>Learns from one transition's acceptance.</summary>
    public void Learn(double acceptance)
    {
        count++;
        double weight = 1 / (count + Delay);
        errorMean = (1 - weight) * errorMean + weight * (target - acceptance);
        double logStep = attractor - errorMean * Math.Sqrt(count) / Gamma;
        double fade = Math.Pow(count, -Kappa);
        averageLog = fade * logStep + (1 - fade) * averageLog;
        Step = Math.Exp(logStep);
    }
}
