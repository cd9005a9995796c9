using Coolproof.Evidence;
using Coolproof.Notebook.Journal;
using NodaTime;

namespace Coolproof.Board;

/// <summary>How the verdict of a day or a question stands.</summary>
/// <param name="About">UUID of the day or the question.</param>
/// <param name="Stamp">Rises with each change of any state.</param>
/// <param name="Judgement">The latest judgement that came to an end: a verdict, a refusal or a failed check, with its words; null before the first.</param>
/// <param name="Table">The readings that it is of; null before the first.</param>
/// <param name="JudgedAt">When that was.</param>
/// <param name="Current">Whether it is of the readings as they stand now; an old one must not be shown as the answer.</param>
/// <param name="Progress">What is being done for a newer one; null when nothing is.</param>
/// <param name="Fault">Words of an unexpected failure of the latest try; null when there was none.</param>
internal sealed record VerdictState(
    Guid About, long Stamp, Judgement? Judgement, NotebookTable? Table, Instant? JudgedAt, bool Current, JudgeProgress? Progress, string? Fault)
{
    /// <summary>Mark of the readings and settings that the judgement is of: <see cref="JudgeTask.Mark"/>; null before the first.</summary>
    public string? Mark { get; init; }

    /// <summary>What the quick path says of the newest readings while their verdict is being worked out; null before and after.</summary>
    public FirstLook? First { get; init; }

    /// <summary>What the quick path believes of the newest readings that were looked at: for steering and cool-downs, never for a call; null where it was not asked.</summary>
    public QuickVerdict? Quick { get; init; }

    /// <summary>Runs that it is of.</summary>
    public int QuickRuns { get; init; }

    /// <summary>How the verdict together with earlier days stands; null where none belongs or nobody asked.</summary>
    public EarlierState? Earlier { get; init; }

    /// <summary>The verdict, where the latest judgement is one.</summary>
    public Verdict? Verdict => (Judgement as Judged)?.Verdict;

    /// <summary>Its age; null before the first.</summary>
    public Duration? Age(Instant now) => JudgedAt is { } at ? now - at : null;

    /// <summary>One word: none (nothing to judge yet), working (no answer yet), old, current, refused, failed.</summary>
    public string Word => this switch
    {
        { Judgement: null, Progress: not null } => "working",
        { Fault: not null } => "failed",
        { Judgement: null } => "none",
        { Current: false } => "old",
        { Judgement: Refused } => "refused",
        { Judgement: NotConverged } => "failed",
        _ => "current",
    };
}
