namespace Coolproof.Evidence.Forecasts;

/// <summary>How warm the motor gets on a race day, and how likely it passes a limit.</summary>
public static class Forecast
{
    /// <summary>Within this of the air the motor counts as cooled down, K.</summary>
    public const double CooledWithinK = 5;

    /// <summary>How long a cool-down is looked at, min.</summary>
    public const double LongestCoolMin = 90;

    /// <summary>Forecasts every option.</summary>
    /// <param name="evidence">What a judged table says.</param>
    /// <param name="scenario">The race day.</param>
    /// <param name="demand">Limits, and the odds accepted.</param>
    /// <param name="seed">Seed of what the readings leave open.</param>
    /// <param name="coolDowns">Whether minutes of cooling are asked for: for one race, most of the work.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <exception cref="ArgumentException">The scenario is beyond what can be forecast.</exception>
    public static IReadOnlyList<OptionForecast> Of(RaceEvidence evidence, RaceScenario scenario, RaceDemand demand, long seed, bool coolDowns = true, CancellationToken cancel = default)
    {
        if (Refusal(scenario) is { } refused)
            throw new ArgumentException(refused, nameof(scenario));
        RaceChance[] chances = RaceChance.Of(evidence.Draws.Count, seed);
        OptionForecast[] forecasts = new OptionForecast[evidence.Options.Count];
        Parallel.For(0, forecasts.Length, new ParallelOptions { CancellationToken = cancel }, option =>
            forecasts[option] = One(evidence, scenario, demand, chances, option, coolDowns));
        return forecasts;
    }

    internal static double Odds(RaceEvidence evidence, RaceScenario scenario, RaceDemand demand, RaceChance[] chances, int option) =>
        Odds(RacePaths.Of(evidence, scenario, chances, option), demand);

    private static double Odds(RacePaths paths, RaceDemand demand) =>
        (double)Enumerable.Range(0, paths.Draws).Count(i => demand.Limits.Any(limit => paths.HighestC(limit.Part, i) > limit.LimitC)) / paths.Draws;

    /// <summary>Why a race day can't be forecast, with what would be right; null where it can.</summary>
    /// <param name="scenario">The race day.</param>
    public static string? Refusal(RaceScenario scenario) =>
        scenario.AirC is not (>= -20 and <= 55) ? $"air of {scenario.AirC:0.#} °C is not forecast: expected -20 to 55 °C."
        : scenario.RaceS is not (>= 30 and <= 3600) ? $"a race of {scenario.RaceS / 60:0.#} min is not forecast: expected half a minute to an hour."
        : scenario.Races is not (>= 1 and <= RaceScenario.MostRaces) ? $"{scenario.Races} races in a row are not forecast: expected 1 to {RaceScenario.MostRaces}."
        : scenario.BreakS is not (>= 60 and <= 4 * 3600) ? $"a break of {scenario.BreakS / 60:0.#} min is not forecast: expected a minute to four hours."
        : scenario.HeatFactor is not (>= 0.3 and <= 3) ? $"{100 * scenario.HeatFactor:0} % of the tests' heat are not forecast: expected 30 to 300 %."
        : null;

    private static OptionForecast One(RaceEvidence evidence, RaceScenario scenario, RaceDemand demand, RaceChance[] chances, int option, bool coolDowns)
    {
        RacePaths paths = RacePaths.Of(evidence, scenario, chances, option);
        RaceStop[] stops = [.. Enumerable.Range(0, scenario.Races).Select(race => new RaceStop(
            race + 1, Summaries.Of(paths.AtStopC(LimitedPart.Can, race)), Summaries.Of(paths.AtStopC(LimitedPart.Winding, race)),
            Summaries.Of(paths.HighestsC(LimitedPart.Can, race)), Summaries.Of(paths.HighestsC(LimitedPart.Winding, race)),
            Summaries.Of(paths.HighestsC(LimitedPart.Magnet, race))))];
        LimitOdds[] odds = [.. demand.Limits.Select(limit => OddsOf(paths, limit))];
        double any = Odds(paths, demand);
        SafeChange? change = any > demand.AcceptedOdds ? SafeChange.Of(evidence, scenario, demand, chances, option) : null;
        return new(evidence.Options[option], paths.Seconds, paths.Over(LimitedPart.Can), paths.Over(LimitedPart.Winding), paths.Over(LimitedPart.Magnet), stops, odds, any,
            coolDowns ? CoolMinutes(evidence, scenario, chances, option) : null, change);
    }

    private static LimitOdds OddsOf(RacePaths paths, RaceLimit limit)
    {
        double[] passed = [.. Enumerable.Range(0, paths.Draws).Select(i => paths.FirstAboveS(limit, i)).Where(s => !double.IsNaN(s))];
        return new(limit, (double)passed.Length / paths.Draws, passed.Length == 0 ? null : Summaries.Of([.. passed.Select(s => s / 60)]));
    }

    // After the last race: minutes until winding, core and magnet are near the air.
    private static Summary CoolMinutes(RaceEvidence evidence, RaceScenario scenario, RaceChance[] chances, int option)
    {
        RacePaths paths = RacePaths.Of(evidence, scenario with { Races = 1, BreakS = 60 * LongestCoolMin }, chances, option);
        return Summaries.Of([.. Enumerable.Range(0, paths.Draws).Select(i => paths.CooledAfterS(i, CooledWithinK) / 60)]);
    }
}
