using Coolproof.Evidence;
using Coolproof.Evidence.Earlier;
using Coolproof.Evidence.Forecasts;
using Coolproof.Notebook;
using Coolproof.Screen;

namespace Coolproof.Commands;

/// <summary>Tests that were judged, for what is reckoned from their draws.</summary>
/// <param name="Verdict">The verdict.</param>
/// <param name="Races">The draws.</param>
/// <param name="Earlier">Earlier days in both; null: they are of the tests by themselves.</param>
internal sealed record TestsJudged(Verdict Verdict, RaceEvidence Races, EarlierInAnswer? Earlier)
{
    /// <summary>Judges them.</summary>
    /// <returns>The tests; or the exit code where there is no verdict, which has then been said.</returns>
    public static (TestsJudged? Tests, int ExitCode) Of(TablesRead read, long seed, TemperatureUnitChoice units, Terminal terminal, CancellationToken cancel)
    {
        JudgeSettings settings = new(Seed: seed);
        var byThemselves = TableJudging.Of(read.Table, settings, terminal, cancel);
        if (byThemselves is not Judged { Verdict: var alone, Races: { } own }) return (null, TableJudging.Unjudged(byThemselves, units, terminal));
        if (read.Earlier.Count == 0) return (new(alone, own.Value, null), Exit.Done);
        var together = TableJudging.Together(read.Table, read.Before, alone, settings, terminal, cancel);
        return together is Judged { Verdict: var verdict, Races: { } races, Earlier: { } added }
            ? (new(verdict, races.Value, new(read.EarlierDays, added, own.Value)), Exit.Done)
            : (null, TableJudging.Unjudged(together, units, terminal));
    }
}

/// <summary>Earlier days in an answer.</summary>
/// <param name="Days">Which.</param>
/// <param name="Added">What they have added to the verdict.</param>
/// <param name="Alone">Draws from the new day by itself.</param>
internal sealed record EarlierInAnswer(IReadOnlyList<EarlierDay> Days, EarlierEvidence Added, RaceEvidence Alone);
