namespace Coolproof.Rehearsal;

/// <summary>What an oracle may be told about a simulated day: the sds that its deviations were drawn with, and the gun.</summary>
/// <param name="LoadSd">Sd of log heat from run to run.</param>
/// <param name="MountingSd">Sd of log conductance from refit to refit.</param>
/// <param name="DayHeatSd">Sd of log heat from day to day.</param>
/// <param name="DayConductanceSd">Sd of log conductance common to a day.</param>
/// <param name="TrendSd">Sd of the slope of log heat over a day.</param>
/// <param name="DriverSd">Sd of log heat between drivers.</param>
/// <param name="OptionLogSd">Sd of log conductance between options.</param>
/// <param name="ScatterK">σ of a reading's scatter, K.</param>
/// <param name="WildChance">Part of readings that scatter further.</param>
/// <param name="WildFactor">How much further.</param>
/// <param name="AimLossMean">Mean of the aim loss of one shot, a fraction.</param>
/// <param name="GunOffsetK">The gun's offset, K.</param>
/// <param name="GunGain">The gun's gain.</param>
/// <param name="ThermometerOffsetK">The thermometer's offset, K, one for each evening.</param>
/// <param name="ThermometerSdK">Sd of a thermometer reading about that, K.</param>
/// <param name="MeanLogHeat">Mean of log heat, heat in W with the winding at 25 °C.</param>
/// <param name="CopperShare">Copper's share of that heat.</param>
/// <param name="ChargeExponent">Log heat over log charge rate.</param>
/// <param name="ChargeSd">Sd of log charge about that relation.</param>
public sealed record Hyperparameters(
    double LoadSd, double MountingSd, double DayHeatSd, double DayConductanceSd, double TrendSd, double DriverSd, double OptionLogSd,
    double ScatterK, double WildChance, double WildFactor, double AimLossMean, double GunOffsetK, double GunGain,
    IReadOnlyList<double> ThermometerOffsetK, double ThermometerSdK, double MeanLogHeat, double CopperShare,
    double ChargeExponent, double ChargeSd);
