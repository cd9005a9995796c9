namespace Coolproof.Sampling.Classical;

/// <summary>A fitted linear mixed model.</summary>
public sealed class MixedModelFit
{
    readonly LinearFit _ordinary;
    readonly MixedModelCovariance? _covariance;

    internal MixedModelFit(LinearFit ordinary, double[] fixedEffects, double residualSd, IReadOnlyList<VarianceComponent> components,
        double deviance, ContrastCaveat caveat, MixedModelCovariance? covariance)
    {
        (_ordinary, _covariance, FixedEffects, ResidualSd) = (ordinary, covariance, fixedEffects, residualSd);
        (Components, Deviance, Caveat) = (components, deviance, caveat);
        StandardErrors = [.. Enumerable.Range(0, fixedEffects.Length).Select(StandardError)];
    }

    /// <summary>Estimates, one for each column of the design; NaN for a column that depends linearly on those before it.</summary>
    public IReadOnlyList<double> FixedEffects { get; }

    /// <summary>Standard errors of the fixed effects; NaN where there are none.</summary>
    public IReadOnlyList<double> StandardErrors { get; }

    /// <summary>Standard deviation of single readings about their fixed and random effects; NaN where it cannot be estimated.</summary>
    public double ResidualSd { get; }

    /// <summary>Covariances of the random effects, in the order the terms were given; NaN where they cannot be estimated.</summary>
    public IReadOnlyList<VarianceComponent> Components { get; }

    /// <summary>The criterion at its minimum: −2 log (restricted) likelihood; NaN where there is none.</summary>
    public double Deviance { get; }

    /// <summary>What keeps the whole fit from being taken as it stands.</summary>
    public ContrastCaveat Caveat { get; }

    /// <summary>
    /// Estimates Σ weightⱼ effectⱼ with Satterthwaite's degrees of freedom (F. E. Satterthwaite, Biometrics Bulletin 2, 1946, 110-114) from the
    /// curvature of the criterion; where variances sit at zero they count as known.
    /// </summary>
    /// <param name="weights">One weight for each column of the design.</param>
    /// <exception cref="ArgumentException">The number of weights is not the number of columns.</exception>
    public ContrastEstimate Contrast(IReadOnlyList<double> weights)
    {
        var ordinary = _ordinary.Contrast(weights);
        if (ordinary.Caveat == ContrastCaveat.Confounded) return ordinary;
        var estimate = _ordinary.Kept.Sum(j => weights[j] * FixedEffects[j]);
        if (_covariance is null) return new(estimate, double.NaN, 0, Caveat);
        double[] kept = [.. _ordinary.Kept.Select(j => weights[j])];
        var (variance, df) = _covariance.Of(kept);
        return new(estimate, Math.Sqrt(variance), df, Caveat);
    }

    double StandardError(int column)
    {
        if (_covariance is null || !_ordinary.Kept.Contains(column)) return double.NaN;
        return Math.Sqrt(_covariance.Variance([.. _ordinary.Kept.Select(j => j == column ? 1.0 : 0.0)]));
    }
}
