using System.Text.Json.Serialization;
using Coolproof.Commands;
using Coolproof.Evidence.Forecasts;

namespace Coolproof.Json;

/// <summary>`forecast --json`, version 1 (docs/formats/forecast.schema.json): °C and minutes.</summary>
internal sealed record ForecastJson(
    int Version, ForecastDayJson Day, IReadOnlyList<ForecastOptionJson> Options, [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] EarlierDaysJson<ForecastAloneJson>? Earlier)
{
    /// <summary>As text.</summary>
    /// <param name="tests">The tests.</param>
    /// <param name="scenario">The race day.</param>
    /// <param name="demand">Limits and accepted odds.</param>
    /// <param name="forecasts">Each option.</param>
    /// <param name="alone">Each option from the new day by itself; null: there are no earlier days.</param>
    public static string Text(TestsJudged tests, RaceScenario scenario, RaceDemand demand, IReadOnlyList<OptionForecast> forecasts, IReadOnlyList<OptionForecast>? alone) => AdviceJson.Text(new ForecastJson(
        AdviceJson.CurrentVersion,
        new(R(scenario.AirC), R(scenario.RaceS / 60, 3), scenario.Races, R(scenario.BreakS / 60, 3), scenario.AltitudeM, scenario.TestedAtM, scenario.HeatFactor, R(tests.Races.LongestDriveS / 60, 3), demand.AcceptedOdds,
            [.. demand.Limits.Select(l => new ForecastLimitJson(l.PartName, l.LimitC, l.Reason))]),
        [.. forecasts.Select(Of)],
        tests.Earlier is { } earlier && alone is not null ? EarlierDaysJson.Of(earlier, new ForecastAloneJson([.. alone.Select(f => new ForecastAloneOptionJson(
            f.Option, R(f.OddsOfAny, 4), QuantilesJson.Of(f.Stops[^1].HighestCanC), QuantilesJson.Of(f.Stops[^1].HighestWindingC), QuantilesJson.Of(f.Stops[^1].HighestMagnetC)))])) : null));

    static ForecastOptionJson Of(OptionForecast f) => new(
        f.Option, R(f.OddsOfAny, 4),
        [.. f.Limits.Select(l => new ForecastOddsJson(l.Limit.PartName, l.Limit.LimitC, R(l.Odds, 4), l.MinutesTo is { } m ? QuantilesJson.Of(m) : null))],
        [.. f.Stops.Select(s => new ForecastStopJson(s.Race, QuantilesJson.Of(s.CanC), QuantilesJson.Of(s.WindingC), QuantilesJson.Of(s.HighestCanC), QuantilesJson.Of(s.HighestWindingC), QuantilesJson.Of(s.HighestMagnetC)))],
        QuantilesJson.Of(f.CoolMin!),
        f.ToBeSafe is { } safe ? new(safe.RaceS is { } s ? R(s / 60, 3) : null, safe.AirC is { } a ? R(a) : null, safe.HeatFactor is { } h ? R(h, 4) : null) : null,
        new([.. f.Seconds.Select(s => R(s / 60, 4))], [.. f.CanC.Select(c => QuantilesJson.Of(c))], [.. f.WindingC.Select(c => QuantilesJson.Of(c))], [.. f.MagnetC.Select(c => QuantilesJson.Of(c))]));

    static double R(double value, int decimals = 2) => AdviceJson.Rounded(value, decimals) ?? 0;
}

/// <summary>The day that was asked for.</summary>
internal sealed record ForecastDayJson(
    double AirC, double RaceMin, int Races, double BreakMin, double AltitudeM, double TestedAtM, double HeatFactor, double LongestTestMin, double AcceptedOdds, IReadOnlyList<ForecastLimitJson> Limits);

/// <summary>A limit.</summary>
internal sealed record ForecastLimitJson(string Part, double LimitC, string Reason);

/// <summary>One option.</summary>
internal sealed record ForecastOptionJson(
    string Name, double OddsOfAny, IReadOnlyList<ForecastOddsJson> Limits, IReadOnlyList<ForecastStopJson> Races, QuantilesJson CooledAfterMin, ForecastChangeJson? ToBeSafe,
    ForecastPathJson Path);

/// <summary>Odds of passing a limit, and minutes to it where it is passed.</summary>
internal sealed record ForecastOddsJson(string Part, double LimitC, double Odds, QuantilesJson? MinutesTo);

/// <summary>The end of a race and the highest values with the soak after it.</summary>
internal sealed record ForecastStopJson(
    int Race, QuantilesJson CanC, QuantilesJson WindingC, QuantilesJson HighestCanC, QuantilesJson HighestWindingC, QuantilesJson HighestMagnetC);

/// <summary>What, changed alone, would make it safe; null where nothing within reason does.</summary>
internal sealed record ForecastChangeJson(double? RaceMin, double? AirC, double? HeatFactor);

/// <summary>Temperatures over the day.</summary>
internal sealed record ForecastPathJson(
    IReadOnlyList<double> Minutes, IReadOnlyList<QuantilesJson> CanC, IReadOnlyList<QuantilesJson> WindingC, IReadOnlyList<QuantilesJson> MagnetC);

/// <summary>What the new day says by itself.</summary>
internal sealed record ForecastAloneJson(IReadOnlyList<ForecastAloneOptionJson> Options);

/// <summary>One option of it, with the highest values of the last race and the soak after it.</summary>
internal sealed record ForecastAloneOptionJson(string Name, double OddsOfAny, QuantilesJson HighestCanC, QuantilesJson HighestWindingC, QuantilesJson HighestMagnetC);
