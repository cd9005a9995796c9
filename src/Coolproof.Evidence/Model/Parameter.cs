namespace Coolproof.Evidence.Model;

/// <summary>Where doubt comes from, as the verdict names it.</summary>
internal enum DoubtSource { Delay, ScatterAndAim, Gun, Air, Warmth, Load, MountingAndDay, MotorAndPriors }

/// <summary>The prior of one unconstrained parameter u.</summary>
internal enum PriorKind
{
    /// <summary>u ~ N(0, 1).</summary>
    Unit,

    /// <summary>e^u is half-normal with a scale.</summary>
    LogHalfNormal,

    /// <summary>e^u is gamma with a shape and a mean.</summary>
    LogGamma,

    /// <summary>A gap gamma distributed and cut off at a known later delay: gap = room × logistic(u).</summary>
    CutGamma,

    /// <summary>logistic(u) is Beta with two equal shapes.</summary>
    LogitBeta,

    /// <summary>A member of a group: u ~ N(0, (spread/scale)^2w), deviation = spread^(1−w) scale^w u.</summary>
    Member,

    /// <summary>u ~ N(mean, sd): a spread's logarithm that is known (tests against a known generator).</summary>
    KnownLog,
}

/// <summary>One unconstrained parameter.</summary>
/// <param name="Name">Name, for the gate's messages and for tests.</param>
/// <param name="Prior">Kind of prior.</param>
/// <param name="A">Scale, shape or mean, by kind.</param>
/// <param name="B">Mean or sd, by kind.</param>
/// <param name="Source">Whose doubt it is.</param>
internal sealed record Parameter(string Name, PriorKind Prior, double A, double B, DoubtSource Source);

/// <summary>Deviations that share one unknown spread, partially non-centred.</summary>
/// <param name="Spread">Index of the log of the spread.</param>
/// <param name="Scale">Prior scale of the spread.</param>
/// <param name="Members">Indices of the members.</param>
/// <param name="CentredWeight">w: 0 non-centred, 1 centred; fixed before sampling.</param>
internal sealed record DeviationGroup(int Spread, double Scale, IReadOnlyList<int> Members, double CentredWeight);
