using Coolproof.Evidence.Forecasts;
using Coolproof.Rehearsal;
using Coolproof.Sampling;

namespace Coolproof.Evidence.Tests.Forecasts;

/// <summary>One forecast beside what came true.</summary>
/// <param name="Day">Seed of the day that was judged.</param>
/// <param name="Can">Highest can with the soak, forecast.</param>
/// <param name="TrueCanC">The same as it came, °C.</param>
/// <param name="Winding">Winding at the stop, forecast.</param>
/// <param name="TrueWindingC">As it came, °C.</param>
/// <param name="Magnet">Highest magnet, forecast.</param>
/// <param name="TrueMagnetC">As it came, °C.</param>
/// <param name="IdealCanK">
/// Width of the 90 % interval of the can, K, to somebody who knows motor, options, gun and every deviation of the evenings driven, but of the mean heat and conductance only what those
/// evenings show: a new day differs from their mean by its own deviation and by theirs.
/// </param>
/// <param name="IdealWindingK">Likewise of the winding.</param>
/// <param name="Odds">Odds told of passing a limit on the can.</param>
/// <param name="Passed">Whether it was passed.</param>
internal sealed record ForecastCase(
    long Day, Summary Can, double TrueCanC, Summary Winding, double TrueWindingC, Summary Magnet, double TrueMagnetC, double IdealCanK, double IdealWindingK, double Odds, bool Passed);

/// <summary>Judges a simulated day and forecasts races that then come, by the full model.</summary>
internal static class ForecastDay
{
    private const int Options = 2, IdealDays = 80, Evenings = 3;

    public static IReadOnlyList<ForecastCase> Of(long seed)
    {
        SimulatedDay day = Rehearse.Day(DayGenerator.Settings(seed, sameOptionTwice: false) with { Evenings = Evenings });
        if (Judge.Of(day.Table, new(Seed: seed, Threads: 1)) is not Judged { Races: { } races })
            return [];
        RandomStream chance = new(seed, 77);
        RaceEvidence evidence = races.Value;
        List<ForecastCase> cases = [];
        for (int i = 0; i < 2; i++)
        {
            // Another air, another length, one race or three in a row.
            int raceCount = i == 0 ? 1 : 3;
            RaceScenario scenario = new(15 + 23 * chance.NextUniform(), evidence.Fair.DriveS * (0.7 + 0.8 * chance.NextUniform())) { Races = raceCount, BreakS = 60 * (8 + 20 * chance.NextUniform()) };
            foreach (int option in Enumerable.Range(0, evidence.Options.Count).Take(Options))
                cases.Add(Case(seed, day, evidence, scenario, option, chance));
        }
        return cases;
    }

    private static ForecastCase Case(long seed, SimulatedDay day, RaceEvidence evidence, RaceScenario scenario, int option, RandomStream chance)
    {
        TrueStop[] ideal = [.. Enumerable.Range(0, IdealDays).Select(_ => Come(day, evidence.Options[option], scenario, chance, Math.Sqrt(1 + 1.0 / Evenings)))];
        TrueStop came = Come(day, evidence.Options[option], scenario, chance, 1);
        // A limit that is in question: near what an ideal observer expects.
        RaceLimit limit = new(LimitedPart.Can, Summaries.Of([.. ideal.Select(s => s.HighestCanC)]).Q50 + 6 * chance.NextNormal(), "drawn");
        OptionForecast forecast = Forecast.Of(evidence, scenario, new([limit], 1), seed)[option];
        RaceStop last = forecast.Stops[^1];
        double soFar = forecast.Limits[0].Odds;
        return new(seed, last.HighestCanC, came.HighestCanC, last.WindingC, came.WindingC, last.HighestMagnetC, came.HighestRotorC,
            Width([.. ideal.Select(s => s.HighestCanC)]), Width([.. ideal.Select(s => s.WindingC)]), soFar, came.HighestCanC > limit.LimitC);
    }

    private static double Width(double[] values) => Summaries.Of(values) is var s ? s.Q95 - s.Q05 : 0;

    private static TrueStop Come(SimulatedDay day, string option, RaceScenario scenario, RandomStream chance, double ofDays)
    {
        Hyperparameters h = day.Truth.Hyperparameters;
        double dayHeat = ofDays * h.DayHeatSd * chance.NextNormal(), conductance = ofDays * h.DayConductanceSd * chance.NextNormal() + h.MountingSd * chance.NextNormal();
        double[] loads = [.. Enumerable.Range(0, scenario.Races).Select(_ => h.LoadSd * chance.NextNormal())];
        return day.Truth.Races(option, new(scenario.AirC + 0.7 * chance.NextNormal(), scenario.RaceS, scenario.BreakS, dayHeat, loads, conductance, FanOn: false))[^1];
    }
}
