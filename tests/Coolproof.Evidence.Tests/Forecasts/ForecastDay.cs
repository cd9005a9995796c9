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
/// <param name="CanReaderWindingK">Of the winding, to somebody who knows all that but the winding's own constants, slot and copper's share of the heat: nothing read on the can tells them.</param>
/// <param name="Odds">Odds told of passing a limit on the can in any of the races in a row.</param>
/// <param name="Passed">Share of the race days that then came on which it was passed.</param>
internal sealed record ForecastCase(
    long Day, Summary Can, double TrueCanC, Summary Winding, double TrueWindingC, Summary Magnet, double TrueMagnetC, double IdealCanK, double IdealWindingK, double CanReaderWindingK, double Odds, double Passed)
{
    /// <summary>Width of the can's and of the winding's 90 % interval without a source of doubt, K, as named in <see cref="ForecastSources.Names"/>; empty on most days.</summary>
    public IReadOnlyList<(double CanK, double WindingK)> Without { get; init; } = [];
}

/// <summary>Kinds of notebooks that are forecast from.</summary>
public enum ForecastFrom
{
    /// <summary>Three evenings of any kind, the can read by the gun.</summary>
    Can,
    /// <summary>Six evenings of at most three options, each driven once or twice an evening, the winding's resistance noted beside each reading of the can.</summary>
    CanAndWinding,
}

/// <summary>Judges a simulated day and forecasts races that then come, by the full model.</summary>
internal static class ForecastDay
{
    private const int Options = 2, IdealDays = 80, DaysToCome = 25, EverySource = 4;
    private const double LimitSdK = 8;

    public static IReadOnlyList<ForecastCase> Of(long seed, ForecastFrom from)
    {
        SimulatedDay day = Rehearse.Day(Settings(seed, from));
        if (KeptEvidence.Of($"{from}-{seed}", day.Table, () => Judge.Of(day.Table, new(Seed: seed, Threads: 1)) is Judged { Races: { } races } ? races.Value : null) is not { } evidence)
            return [];
        RandomStream chance = new(seed, 77);
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

    private static RehearsalSettings Settings(long seed, ForecastFrom from)
    {
        RehearsalSettings any = DayGenerator.Settings(seed, sameOptionTwice: false) with { MagnetsWeaken = true };
        return from == ForecastFrom.Can ? any with { Evenings = 3 } : any with
        {
            Evenings = 6,
            Options = [.. any.Options.Take(3)],
            RunsPerOption = Math.Min(any.RunsPerOption, 2),
            WindingMeasured = true,
        };
    }

    private static ForecastCase Case(long seed, SimulatedDay day, RaceEvidence evidence, RaceScenario scenario, int option, RandomStream chance)
    {
        double ofDays = Math.Sqrt(1 + 1.0 / day.Settings.Evenings);
        TrueStop[] ideal = [.. Enumerable.Range(0, IdealDays).Select(_ => Come(day.Truth, evidence.Options[option], scenario, chance, ofDays)[^1])];
        TrueStop[] canReader = [.. Enumerable.Range(0, IdealDays).Select(i => Come(day.Truth.WithOtherWinding(seed * IdealDays + i), evidence.Options[option], scenario, chance, ofDays)[^1])];
        TrueStop came = Come(day.Truth, evidence.Options[option], scenario, chance, 1)[^1];
        // A limit that is in question, placed by the forecast alone: one placed by what an ideal observer expects would give away what came, and no odds could hold.
        RaceEvidence only = Only(evidence, option);
        double middle = Forecast.Of(only, scenario, new([], 1), seed, coolDowns: false)[0].Stops[^1].HighestCanC.Q50;
        RaceLimit limit = new(LimitedPart.Can, middle + LimitSdK * chance.NextNormal(), "drawn");
        OptionForecast forecast = Forecast.Of(only, scenario, new([limit], 1), seed, coolDowns: false)[0];
        RaceStop last = forecast.Stops[^1];
        double passed = Enumerable.Range(0, DaysToCome).Average(_ => Come(day.Truth, evidence.Options[option], scenario, chance, 1).Any(stop => stop.HighestCanC > limit.LimitC) ? 1.0 : 0);
        return new(seed, last.HighestCanC, came.HighestCanC, last.WindingC, came.WindingC, last.HighestMagnetC, came.HighestRotorC,
            Width([.. ideal.Select(s => s.HighestCanC)]), Width([.. ideal.Select(s => s.WindingC)]), Width([.. canReader.Select(s => s.WindingC)]), forecast.Limits[0].Odds, passed)
        {
            Without = seed % EverySource != 0 ? [] : ForecastSources.Widths(evidence, scenario, option, seed, day.Truth.Hyperparameters),
        };
    }

    private static RaceEvidence Only(RaceEvidence evidence, int option) =>
        evidence with { Options = [evidence.Options[option]], Draws = [.. evidence.Draws.Select(d => d with { Options = [d.Options[option]] })] };

    private static double Width(double[] values) => Summaries.Of(values) is var s ? s.Q95 - s.Q05 : 0;

    private static IReadOnlyList<TrueStop> Come(Truth truth, string option, RaceScenario scenario, RandomStream chance, double ofDays)
    {
        Hyperparameters h = truth.Hyperparameters;
        double dayHeat = ofDays * h.DayHeatSd * chance.NextNormal(), conductance = ofDays * h.DayConductanceSd * chance.NextNormal() + h.MountingSd * chance.NextNormal();
        double[] loads = [.. Enumerable.Range(0, scenario.Races).Select(_ => h.LoadSd * chance.NextNormal())];
        return truth.Races(option, new(scenario.AirC + 0.7 * chance.NextNormal(), scenario.RaceS, scenario.BreakS, dayHeat, loads, conductance, FanOn: false));
    }
}
