using Coolproof.Evidence;
using Coolproof.Evidence.Words;

namespace Coolproof.Board;

/// <summary>
/// What the quick path says of readings whose verdict is still being worked out: which option leads, and how probably it is the coolest. It stands beside the last answer and
/// is no verdict itself: nothing is called by it.
/// </summary>
/// <param name="Leader">The option.</param>
/// <param name="Probability">How probable it is that it is the coolest.</param>
/// <param name="Rough">Whether even that is rough: then no odds are given.</param>
internal sealed record FirstLook(string Leader, double Probability, bool Rough)
{
    // Above this the quick path is no longer quick: the whole answer is as soon there.
    const int MostRuns = 60;

    /// <summary>What the quick path believes of a task's readings; null where there is nothing to judge or it would take long.</summary>
    public static QuickVerdict? Judged(JudgeTask task) => task.Table.Table.Runs.Count > MostRuns ? null : QuickJudge.Of(task.Table.Table, task.Settings);

    /// <summary>In one look; null where there is nothing to compare.</summary>
    public static FirstLook? Of(QuickVerdict? quick) => quick?.Main() is { } main ? new FirstLook(quick.Options[main.Best], quick.ProbabilityCoolest()[main.Best], quick.Rough) : null;

    /// <summary>As a sentence.</summary>
    public string Words => Rough
        ? $"First look at the newest readings: the {Leader} is in front, too roughly for odds. The answer follows."
        : $"First look at the newest readings: the {Leader} is in front, the odds that it is the coolest: {Odds.Say(Probability)}. The answer follows.";
}
