namespace Coolproof.Sampling.Diagnostics;

/// <summary>
/// How well chains know one quantity (Vehtari, Gelman, Simpson, Carpenter and Bürkner 2021, Bayesian Analysis 16:667). Every figure is NaN
/// when a draw is not finite, when nothing varies, or when there are fewer than four draws in a half chain.
/// </summary>
/// <param name="Mean">Mean of all draws, in the quantity's unit.</param>
/// <param name="StandardDeviation">Standard deviation of all draws, in the quantity's unit.</param>
/// <param name="RHat">The larger of rank-normalised split R-hat and the same of the folded draws; 1 at convergence.</param>
/// <param name="BulkSampleSize">Effective sample size of the rank-normalised draws: for the centre.</param>
/// <param name="TailSampleSize">The smaller effective sample size of the 5 % and 95 % quantiles.</param>
/// <param name="MeanSampleSize">Effective sample size for the mean.</param>
/// <param name="SpreadSampleSize">Effective sample size for the standard deviation.</param>
/// <param name="MeanError">Monte Carlo standard error of the mean, in the quantity's unit.</param>
/// <param name="StandardDeviationError">Monte Carlo standard error of the standard deviation, in the quantity's unit.</param>
public readonly record struct QuantityDiagnostics(
    double Mean,
    double StandardDeviation,
    double RHat,
    double BulkSampleSize,
    double TailSampleSize,
    double MeanSampleSize,
    double SpreadSampleSize,
    double MeanError,
    double StandardDeviationError);
