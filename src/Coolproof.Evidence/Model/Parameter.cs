namespace Coolproof.Evidence.Model;

/// <summary>Where doubt comes from, as the verdict names it.</summary>
internal enum DoubtSource { Delay, ScatterAndAim, Gun, Air, Warmth, Load, MountingAndDay, MotorAndPriors }

/// <summary>The prior of one unconstrained parameter u.</summary>
internal enum PriorKind
{
    /// <summary>u ~ N(0, 1).</summary>
    Unit,

    /// <summary>u ~ N(0, 1), and the scale times <see cref="HalfNormal"/> of u is half-normal.</summary>
    HalfNormal,

    /// <summary>e^u is gamma with a shape and a mean.</summary>
    LogGamma,

    /// <summary>A gap gamma distributed and cut off at a known later delay: gap = room × logistic(u).</summary>
    CutGamma,

    /// <summary>logistic(u) is Beta with two equal shapes.</summary>
    LogitBeta,

    /// <summary>A member of a group: u ~ N(0, (spread/scale)^2w), deviation = spread^(1−w) scale^w u.</summary>
    Member,

    /// <summary>u ~ N(A, B): a parameter that is as good as known.</summary>
    Known,
}

/// <summary>One unconstrained parameter.</summary>
/// <param name="Name">Name, for the gate's messages and for tests.</param>
/// <param name="Prior">Kind of prior.</param>
/// <param name="A">Scale, shape or mean, by kind.</param>
/// <param name="B">Mean or sd, by kind.</param>
/// <param name="Source">Whose doubt it is.</param>
internal sealed record Parameter(string Name, PriorKind Prior, double A, double B, DoubtSource Source)
{
    /// <summary>Where a half-normal parameter is held for a while, with an sd of <see cref="HeldSd"/>; NaN when free.</summary>
    public double Held { get; init; } = double.NaN;

    /// <summary>Scale of a half-normal parameter, known or not; 0 for others.</summary>
    public double Scale { get; init; }

    /// <summary>Sd of a held parameter.</summary>
    public const double HeldSd = 0.01;

    /// <summary>Precision of the prior about its middle.</summary>
    public double Precision => Prior switch
    {
        PriorKind.LogGamma or PriorKind.CutGamma => A,
        PriorKind.LogitBeta => A / 2,
        PriorKind.Known => 1 / (B * B),
        _ => 1,
    };
}

/// <summary>Deviations that share one unknown spread, partially non-centred.</summary>
/// <param name="Spread">Index of the spread, a half-normal parameter.</param>
/// <param name="Scale">Prior scale of the spread.</param>
/// <param name="Members">Indices of the members.</param>
/// <param name="CentredWeight">w: 0 non-centred, 1 centred; fixed before sampling.</param>
internal sealed record DeviationGroup(int Spread, double Scale, int[] Members, double CentredWeight)
{
    /// <summary>
    /// What the evidence says of each member given all else, for coordinates only; empty: nothing. A deviation is then its expected value given this and the
    /// spread, plus the member times its sd.
    /// </summary>
    public MemberEvidence[] Evidence { get; init; } = [];
}

/// <summary>What the evidence says of one member of a group.</summary>
/// <param name="Information">Precision of the deviation by it, times the variance of log heat that stands between it and the readings.</param>
/// <param name="Asks">Deviation it asks for.</param>
/// <param name="OtherVariance">What that variance is without the heat that differs from run to run.</param>
/// <param name="ChargePrecision">Precision of a run's log heat by its charge.</param>
/// <param name="HeatShare">Share of the runs' variance of heat that counts: 1 for a member of one run, 0 where heat doesn't matter.</param>
internal readonly record struct MemberEvidence(double Information, double Asks, double OtherVariance, double ChargePrecision, double HeatShare)
{
    /// <summary>What else the deviation asked for depends on, so that <see cref="Asks"/> is for all of it at zero.</summary>
    public AskTerm[] Follows { get; init; } = [];

    /// <summary>Precision at a variance of heat run to run, and its logarithm's slope by that of the variance.</summary>
    public (double Precision, double LogSlope) At(double heatVariance)
    {
        double free = heatVariance / (1 + heatVariance * ChargePrecision), between = HeatShare * free + OtherVariance;
        return (Information / between, -HeatShare * free / between / (1 + heatVariance * ChargePrecision));
    }
}

/// <summary>By how much what a member is asked for goes with something else.</summary>
/// <param name="Parameter">Index of the other parameter.</param>
/// <param name="Slope">Deviation asked for by its value, or by its deviation where it is a member of another group.</param>
/// <param name="IsMember">Whether it is one.</param>
internal readonly record struct AskTerm(int Parameter, double Slope, bool IsMember);
