namespace Coolproof.Advice.Orders;

/// <summary>
/// What a run's can temperature at the stop is off by, besides its option: sds in K for a can about 40 K over the air, after correction. For choosing orders
/// only; verdicts know nothing of it. Defaults follow the priors of the evidence (docs/model.md).
/// </summary>
/// <param name="RunK">Load and readings of one run: 5 % of the rise and 1 K.</param>
/// <param name="MountingK">A refit: 4 % of the watts shed per degree.</param>
/// <param name="TrendK">Drift of the load from the first to the last run: 5 % of the rise.</param>
/// <param name="WalkKPerRootHour">Air and track wandering, not seen by the notes.</param>
/// <param name="CarryK">Warmth carried over from the option driven before, not seen by the correction.</param>
/// <param name="OptionK">Spread of options.</param>
public sealed record RunNoise(
    double RunK = 2.2, double MountingK = 1.0, double TrendK = 2.0, double WalkKPerRootHour = 1.0, double CarryK = 0.8, double OptionK = 8);
