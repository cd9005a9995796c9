namespace Coolproof.Sampling.Classical;

/// <summary>Why an estimate or its standard error is not to be taken as it stands.</summary>
public enum ContrastCaveat
{
    /// <summary>Nothing to say.</summary>
    None,

    /// <summary>The design cannot tell this combination from another effect; no estimate.</summary>
    Confounded,

    /// <summary>No residual degrees of freedom: as many coefficients as readings; no standard error.</summary>
    NoResidualDegreesOfFreedom,

    /// <summary>The model fits every reading to the last digit, so scatter cannot be judged; no standard error.</summary>
    NoScatter,
}
