using Coolproof.Evidence.Causes;
using Coolproof.Evidence.Earlier;
using Coolproof.Evidence.Forecasts;

namespace Coolproof.Evidence;

/// <summary>What came of judging: <see cref="Judged"/>, <see cref="Refused"/> or <see cref="NotConverged"/>.</summary>
public abstract record Judgement;

/// <summary>A verdict.</summary>
/// <param name="Verdict">The verdict.</param>
public sealed record Judged(Verdict Verdict) : Judgement
{
    /// <summary>What the same draws say of races to come; null where a verdict was put together without draws.</summary>
    public Lazy<RaceEvidence>? Races { get; init; }

    /// <summary>What the same draws say of why runs read what they read; null likewise.</summary>
    public CauseEvidence? Causes { get; init; }

    /// <summary>What earlier days have added; null where the verdict is from the table by itself.</summary>
    public EarlierEvidence? Earlier { get; init; }
}

/// <summary>The table can't be judged as it stands (exit code 2).</summary>
/// <param name="Reason">What is missing or wrong, one sentence.</param>
/// <param name="Remedy">What to do.</param>
public sealed record Refused(string Reason, string Remedy) : Judgement;

/// <summary>The fit did not pass its own checks: no ranking is given (exit code 1).</summary>
/// <param name="Quantity">The quantity that failed.</param>
/// <param name="Reason">How it failed, one sentence.</param>
/// <param name="Remedy">What to do.</param>
public sealed record NotConverged(string Quantity, string Reason, string Remedy) : Judgement;
