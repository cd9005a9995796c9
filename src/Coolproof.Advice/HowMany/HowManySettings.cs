using Coolproof.Evidence;
using Coolproof.Rehearsal;

namespace Coolproof.Advice.HowMany;

/// <summary>A question of how many rounds are enough.</summary>
/// <param name="Options">The options, with a fan of their own or not.</param>
/// <param name="Order">Option of each run over the longest day, places in <paramref name="Options"/>; whole rounds.</param>
/// <param name="DriveS">Hard driving, s.</param>
/// <param name="CoolDownMin">From halt to the next go, min; kept within 8 to 25.</param>
/// <param name="Days">Simulated days.</param>
/// <param name="SameWithinK">Half-width of the "same" band, K.</param>
/// <param name="Seed">Seed: the same question and seed give the same answer, whatever the number of threads.</param>
/// <param name="Threads">Days simulated at once.</param>
public sealed record HowManySettings(
    IReadOnlyList<RehearsalOption> Options, IReadOnlyList<int> Order, double DriveS = 360, double CoolDownMin = 20, int Days = 200, double SameWithinK = 2,
    long Seed = 1, int Threads = 2)
{
    /// <summary>Readings after each run.</summary>
    public int ReadingsPerRun { get; init; } = 3;

    /// <summary>What a day with these options has shown: truths are drawn from it; null: from the ranges of the rehearsal.</summary>
    public QuickVerdict? Known { get; init; }
}

/// <summary>What a number of rounds promises, over simulated days.</summary>
/// <param name="Rounds">Rounds.</param>
/// <param name="Runs">Runs of all options together.</param>
/// <param name="RightPick">Share of days on which the option named coolest truly is.</param>
/// <param name="PredictedRightPick">The same as the judging itself says: mean probability of the option named.</param>
/// <param name="IntervalK">Median width of the 90 % interval of the main difference, K.</param>
/// <param name="FirmCalls">Share of pairs called firmly.</param>
/// <param name="WrongFirmCalls">Share of firm calls that are wrong; NaN without firm calls.</param>
/// <param name="LossK">Mean of how much warmer the option named is than the truly coolest, K.</param>
/// <param name="RoughDays">Days judged only roughly: they count, and make no firm call.</param>
public sealed record RoundsPromise(
    int Rounds, int Runs, double RightPick, double PredictedRightPick, double IntervalK, double FirmCalls, double WrongFirmCalls, double LossK, int RoughDays);
