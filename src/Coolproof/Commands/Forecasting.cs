using Coolproof.Evidence;
using Coolproof.Evidence.Forecasts;
using Coolproof.Json;
using Coolproof.Notebook;
using Coolproof.Pictures;
using Coolproof.Screen;
using Coolproof.Words;

namespace Coolproof.Commands;

/// <summary>What `coolproof forecast` was asked.</summary>
/// <param name="File">A readings table; "-" for standard input.</param>
/// <param name="AirC">Air on race day, °C; null: the tests'.</param>
/// <param name="RaceS">Length of the race, s; null: the tests'.</param>
/// <param name="Scenario">The rest of the day.</param>
/// <param name="Demand">Limits and accepted odds.</param>
/// <param name="Seed">Seed.</param>
/// <param name="Units">Degrees for people.</param>
/// <param name="Json">Whether to print JSON.</param>
internal sealed record ForecastRequest(
    string File, double? AirC, double? RaceS, RaceScenario Scenario, RaceDemand Demand, long Seed, TemperatureUnitChoice Units, bool Json)
{
    /// <summary>Where to draw one option; null: nowhere.</summary>
    public string? Picture { get; init; }

    /// <summary>Name of the option that is drawn; null: the one least likely to pass a limit.</summary>
    public string? Drawn { get; init; }
}

/// <summary>`coolproof forecast` from the file to the exit code.</summary>
internal sealed class Forecasting(Terminal terminal)
{
    /// <summary>Judges the tests, forecasts, prints.</summary>
    /// <returns>The exit code.</returns>
    public int Run(ForecastRequest request, CancellationToken cancel)
    {
        if (TableFile.Read(request.File, null, terminal) is not { } table) return Exit.BadInput;
        Judgement judgement = TableJudging.Of(table, new JudgeSettings(Seed: request.Seed), terminal, cancel);
        if (judgement is not Judged { Races: { } races } judged) return TableJudging.Unjudged(judgement, request.Units, terminal);
        RaceScenario scenario = request.Scenario with { AirC = request.AirC ?? judged.Verdict.Fair.AmbientC, RaceS = request.RaceS ?? judged.Verdict.Fair.DriveS };
        if (Forecast.Refusal(scenario) is { } refused)
        {
            terminal.Error.WriteLine($"coolproof forecast: {refused}");
            return Exit.BadInput;
        }
        if (request.Drawn is { } name && !races.Value.Options.Contains(name, StringComparer.OrdinalIgnoreCase))
        {
            terminal.Error.WriteLine($"coolproof forecast: --option {Cells.Clean(name)}: expected one of {Cells.Clean(string.Join(", ", races.Value.Options))}.");
            return Exit.BadInput;
        }
        IReadOnlyList<OptionForecast> forecasts = Forecast.Of(races.Value, scenario, request.Demand, request.Seed, cancel: cancel);
        terminal.Out.Write(request.Json
            ? ForecastJson.Text(races.Value, scenario, request.Demand, forecasts)
            : string.Join('\n', ForecastPage.Lines(races.Value, scenario, request.Demand, forecasts, new DegreeWords(request.Units), terminal.Width)) + "\n");
        terminal.Out.Flush();
        return request.Picture is { } path ? Draw(races.Value, forecasts, scenario, request, path, cancel) : Exit.Done;
    }

    int Draw(RaceEvidence evidence, IReadOnlyList<OptionForecast> forecasts, RaceScenario scenario, ForecastRequest request, string path, CancellationToken cancel)
    {
        OptionForecast drawn = forecasts.FirstOrDefault(f => string.Equals(f.Option, request.Drawn, StringComparison.OrdinalIgnoreCase)) ?? forecasts.MinBy(f => f.OddsOfAny)!;
        int place = forecasts.ToList().IndexOf(drawn);
        RaceMap map = RaceMap.Of(evidence, scenario, request.Demand, place, request.Seed, cancel);
        return PictureFile.Drawn(() => ForecastPicture.Of(drawn, scenario, place, new PictureStyle(Units: request.Units), map, request.Demand.AcceptedOdds).Save(path), terminal);
    }
}
