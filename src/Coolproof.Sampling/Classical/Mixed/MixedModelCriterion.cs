namespace Coolproof.Sampling.Classical;

/// <summary>Estimation criterion of a mixed model.</summary>
public enum MixedModelCriterion
{
    /// <summary>Restricted maximum likelihood: variances not biased by the fixed effects fitted.</summary>
    Reml,

    /// <summary>Maximum likelihood: deviances of models with different fixed effects can be compared.</summary>
    MaximumLikelihood,
}
