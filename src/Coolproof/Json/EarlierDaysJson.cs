using Coolproof.Commands;

namespace Coolproof.Json;

/// <summary>Earlier days in an answer that is reckoned from a verdict's draws: which, what stands out against them, and what the new day says by itself.</summary>
internal sealed record EarlierDaysJson<TAlone>(
    int Days, int Runs, IReadOnlyList<EarlierDay> From, TAlone Alone, IReadOnlyList<ContradictionJson> Contradictions, int OptionsAsked, ChangedOptionJson? Changed, GunChangeJson? Gun);

/// <summary>The same put together.</summary>
internal static class EarlierDaysJson
{
    /// <summary>As it is printed.</summary>
    /// <param name="earlier">The earlier days.</param>
    /// <param name="alone">What the new day says by itself.</param>
    public static EarlierDaysJson<TAlone> Of<TAlone>(EarlierInAnswer earlier, TAlone alone) => new(
        earlier.Added.Days, earlier.Added.Runs, earlier.Days, alone, [.. earlier.Added.Contradictions.Select(ContradictionJson.Of)], earlier.Added.OptionsAsked,
        ChangedOptionJson.Of(earlier.Added.Changed), GunChangeJson.Of(earlier.Added.Gun));
}
