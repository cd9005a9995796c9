using Coolproof.Evidence.Forecasts;

namespace Coolproof.Pages.Forecasts;

/// <summary>What the draws of a verdict say of a race day.</summary>
/// <param name="Evidence">The draws.</param>
/// <param name="Asked">The race day.</param>
/// <param name="Forecasts">Each option.</param>
/// <param name="Maps">Odds of other airs and lengths, an option each; none while a slider moves.</param>
/// <param name="Whole">Of all draws and with what would make it safe; else of few, while a slider moves.</param>
public sealed record RaceAnswer(RaceEvidence Evidence, RaceAsked Asked, IReadOnlyList<OptionForecast> Forecasts, IReadOnlyList<RaceMap> Maps, bool Whole)
{
    /// <summary>Draws while a slider moves: odds to some five points.</summary>
    const int FewDraws = 60;

    // A map drives each draw some fifty times.
    const int MapDraws = 100, LeastMapDraws = 40;

    // A day of many races takes as long as one: its draws are fewer, and those that changes are looked for with fewer still.
    const int RaceDraws = 2400, LeastDraws = 240, ChangeDraws = 240;

    const long Seed = 1;

    /// <summary>Drives the draws through the day.</summary>
    /// <param name="evidence">The draws.</param>
    /// <param name="asked">A day without faults.</param>
    /// <param name="whole">Whether it should be of all draws.</param>
    /// <param name="cancel">Stops the work.</param>
    public static RaceAnswer Of(RaceEvidence evidence, RaceAsked asked, bool whole, CancellationToken cancel)
    {
        var scenario = asked.Scenario;
        var odds = asked.Demand with { AcceptedOdds = 1 }; // nothing to be changed is looked for
        if (!whole) return new(evidence, asked, Forecast.Of(evidence.Thinned(Math.Max(FewDraws / scenario.Races, FewDraws / 4)), scenario, odds, Seed, coolDowns: false, cancel), [], false);
        var forecasts = Forecast.Of(evidence.Thinned(Math.Max(RaceDraws / scenario.Races, LeastDraws)), scenario, odds, Seed, cancel: cancel);
        var few = evidence.Thinned(Math.Max(MapDraws / scenario.Races, LeastMapDraws));
        RaceMap[] maps = [.. forecasts.Select((_, option) => RaceMap.Of(few, scenario, odds, option, Seed, cancel))];
        if (forecasts.All(one => one.OddsOfAny <= asked.Demand.AcceptedOdds)) return new(evidence, asked, forecasts, maps, true);
        var changes = Forecast.Of(evidence.Thinned(Math.Max(ChangeDraws / scenario.Races, FewDraws)), scenario, asked.Demand, Seed, coolDowns: false, cancel);
        return new(evidence, asked, [.. forecasts.Zip(changes, (one, change) => one with { ToBeSafe = one.OddsOfAny > asked.Demand.AcceptedOdds ? change.ToBeSafe : null })], maps, true);
    }
}
