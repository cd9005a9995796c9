using Coolproof.Notebook;

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

/// <summary>What came of judging: <see cref="Judged"/>, <see cref="Refused"/> or <see cref="NotConverged"/>.</summary>
public abstract record Judgement;

/// <summary>A verdict.</summary>
public sealed record Judged(Verdict Verdict) : Judgement;

/// <summary>The table can't be judged as it stands (exit code 2).</summary>
/// <param name="Reason">What is missing or wrong, one sentence.</param>
/// <param name="Remedy">What to do.</param>
public sealed record Refused(string Reason, string Remedy) : Judgement;

/// <summary>The fit did not pass its own checks: no ranking is given (exit code 1).</summary>
/// <param name="Quantity">The quantity that failed.</param>
/// <param name="Reason">How it failed, one sentence.</param>
/// <param name="Remedy">What to do.</param>
public sealed record NotConverged(string Quantity, string Reason, string Remedy) : Judgement;

/// <summary>The question of a readings table answered at fair, equal conditions.</summary>
public static class Judge
{
    /// <summary>Judges a table.</summary>
    /// <param name="table">A table that was understood.</param>
    /// <param name="settings">How to judge it.</param>
    /// <param name="progress">Told what is being done.</param>
    /// <param name="cancel">Stops the work; <see cref="OperationCanceledException"/> follows.</param>
    public static Judgement Of(ReadingsTable table, JudgeSettings settings, IProgress<JudgeProgress>? progress = null, CancellationToken cancel = default) =>
        throw new InvalidOperationException("Judging is not wired up yet.");
}
