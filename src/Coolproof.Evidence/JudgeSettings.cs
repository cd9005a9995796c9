namespace Coolproof.Evidence;

/// <summary>How to judge a readings table.</summary>
/// <param name="AmbientC">Fair air, °C; null: the median noted.</param>
/// <param name="DriveS">Fair seconds of hard driving; null: the median.</param>
/// <param name="SameWithinK">Half-width of the "same" band, K.</param>
/// <param name="Seed">Random seed: the same table, options and seed give the same answer, whatever the number of threads.</param>
/// <param name="Threads">Threads for the chains.</param>
public sealed record JudgeSettings(double? AmbientC = null, double? DriveS = null, double SameWithinK = 2, long Seed = 1, int Threads = 2);

/// <summary>What is being done, for people who wait.</summary>
/// <param name="Doing">In plain words.</param>
/// <param name="Fraction">Part done, 0 to 1.</param>
public sealed record JudgeProgress(string Doing, double Fraction);
