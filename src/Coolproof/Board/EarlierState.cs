using Coolproof.Evidence;
using NodaTime;

namespace Coolproof.Board;

/// <summary>How the verdict on a day together with earlier ones stands.</summary>
/// <param name="Days">The earlier days in the order of time.</param>
/// <param name="Judgement">The latest that came to an end; null before the first.</param>
/// <param name="Judged">The earlier days that it is of.</param>
/// <param name="JudgedAt">When that was.</param>
/// <param name="Current">Whether it is of the readings as they stand now.</param>
/// <param name="Progress">What is being done for a newer one; null when nothing is.</param>
/// <param name="Fault">Words of an unexpected failure of the latest try; null when there was none.</param>
public sealed record EarlierState(IReadOnlyList<Guid> Days, Judgement? Judgement, IReadOnlyList<Guid> Judged, Instant? JudgedAt, bool Current, JudgeProgress? Progress, string? Fault)
{
    /// <summary>Mark of the readings and settings that the judgement is of: <see cref="EarlierTask.Mark"/>.</summary>
    public string? Mark { get; init; }

    /// <summary>Before anything was judged.</summary>
    public static EarlierState Waiting(IReadOnlyList<Guid> days) => new(days, null, [], null, Current: false, null, null);

    /// <summary>The verdict with what the earlier days have added, where there is one.</summary>
    public Judged? Together => Judgement as Judged;
}
