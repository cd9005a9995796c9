using Coolproof.Evidence.Earlier;
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
    /// <summary>Earlier days that were asked for, in the order of time; none: none were, or none belongs to the day.</summary>
    public IReadOnlyList<Guid> EarlierDays { get; init; } = [];

    /// <summary>What they have added; null: they are not in it.</summary>
    public EarlierEvidence? Earlier { get; private init; }

    /// <summary>Why they are not, in °C; null: they are, or none were asked for.</summary>
    public string? NotTogether { get; init; }

    /// <summary>Each option from the day by itself, where earlier ones are in the answer; null: they aren't, or a slider moves.</summary>
    public IReadOnlyList<OptionForecast>? Alone { get; private init; }

    /// <summary>Draws while a slider moves: odds to some five points.</summary>
    const int FewDraws = 60;

    // A map drives each draw some fifty times.
    const int MapDraws = 100, LeastMapDraws = 40;

    // A day of many races takes as long as one: its draws are fewer, and those that changes are looked for with fewer still.
    const int RaceDraws = 2400, LeastDraws = 240, ChangeDraws = 240;

    const long Seed = 1;

    /// <summary>The same, with what is told of the earlier days in it.</summary>
    /// <param name="added">What they have added.</param>
    /// <param name="alone">Draws of the day by itself.</param>
    /// <param name="cancel">Stops the work.</param>
    public RaceAnswer With(EarlierEvidence added, RaceEvidence alone, CancellationToken cancel) => this with
    {
        Earlier = added,
        Alone = Whole ? Forecast.Of(alone.Thinned(Math.Max(ChangeDraws / Asked.Scenario.Races, FewDraws)), Asked.Scenario, Asked.Demand with { AcceptedOdds = 1 }, Seed, coolDowns: false, cancel) : null,
    };

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
