namespace Coolproof.Sampling.Hamiltonian;

/// <summary>The leapfrog integrator: symplectic, reversible, energy error of order step².</summary>
sealed class Leapfrog(LogDensity density, InverseMetric metric)
{
    readonly double[] blockProduct = new double[metric.BlockSize];

    /// <summary>Log density and gradient evaluations so far.</summary>
    public long Evaluations { get; private set; }

    /// <summary>Fills log density and gradient at the point's position.</summary>
    public void Evaluate(PhasePoint at)
    {
        EvaluateInBlockUnits(at);
        for (int i = 0; i < at.Gradient.Length; i++)
            at.Gradient[i] *= metric.Scale[i];
    }

    /// <summary>Draws a fresh momentum and sets the energy.</summary>
    public static void Refresh(PhasePoint at, RandomStream random)
    {
        random.FillNormal(at.Momentum);
        double squares = 0;
        foreach (double p in at.Momentum)
            squares += p * p;
        at.Energy = 0.5 * squares - at.LogDensity;
    }

    /// <summary>One step of size <paramref name="step"/> (negative: back in time) from one point to another.</summary>
    public void Step(PhasePoint from, PhasePoint to, double step)
    {
        Kernels.KickDrift(from, to, metric.Scale, step);
        int k = metric.BlockSize;
        if (k > 0)
        {
            Kernels.TransposedProduct(metric.Upper, false, to.Momentum.AsSpan(0, k), blockProduct);
            for (int i = 0; i < k; i++)
                to.Position[i] = from.Position[i] + step * blockProduct[i];
        }

        EvaluateInBlockUnits(to);
        double squares = Kernels.Kick(to, metric.Scale, step);
        to.Energy = 0.5 * squares - to.LogDensity;
        if (!double.IsFinite(to.Energy))
            to.Energy = double.PositiveInfinity;
    }

    void EvaluateInBlockUnits(PhasePoint at)
    {
        Evaluations++;
        at.LogDensity = density(at.Position, at.Gradient);
        int k = metric.BlockSize;
        if (k > 0)
        {
            Kernels.TransposedProduct(metric.Lower, true, at.Gradient.AsSpan(0, k), blockProduct);
            blockProduct.CopyTo(at.Gradient, 0);
        }
    }
}
