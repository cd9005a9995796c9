using Coolproof.Evidence.Forecasts;
using Coolproof.Json;
using Coolproof.Notebook;
using Coolproof.Pictures;
using Coolproof.Screen;
using Coolproof.Words;

namespace Coolproof.Commands;

/// <summary>What `coolproof forecast` was asked.</summary>
/// <param name="Table">The readings table of the tests.</param>
/// <param name="AirC">Air on race day, °C; null: the tests'.</param>
/// <param name="RaceS">Length of the race, s; null: the tests'.</param>
/// <param name="Scenario">The rest of the day.</param>
/// <param name="Demand">Limits and accepted odds.</param>
/// <param name="Seed">Seed.</param>
/// <param name="Units">Degrees for people.</param>
/// <param name="Json">Whether to print JSON.</param>
internal sealed record ForecastRequest(
    TableAsked Table, double? AirC, double? RaceS, RaceScenario Scenario, RaceDemand Demand, long Seed, TemperatureUnitChoice Units, bool Json)
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
        if (request.Table.Read("forecast", null, terminal) is not { } read) return Exit.BadInput;
        var (tests, exit) = TestsJudged.Of(read, request.Seed, request.Units, terminal, cancel);
        if (tests is null) return exit;
        RaceScenario scenario = request.Scenario with { AirC = request.AirC ?? tests.Verdict.Fair.AmbientC, RaceS = request.RaceS ?? tests.Verdict.Fair.DriveS };
        if (Forecast.Refusal(scenario) is { } refused)
        {
            terminal.Error.WriteLine($"coolproof forecast: {refused}");
            return Exit.BadInput;
        }
        if (request.Drawn is { } name && !tests.Races.Options.Contains(name, StringComparer.OrdinalIgnoreCase))
        {
            terminal.Error.WriteLine($"coolproof forecast: --option {Cells.Clean(name)}: expected one of {Cells.Clean(string.Join(", ", tests.Races.Options))}.");
            return Exit.BadInput;
        }
        IReadOnlyList<OptionForecast> forecasts = Forecast.Of(tests.Races, scenario, request.Demand, request.Seed, cancel: cancel);
        // Of the day by itself only temperatures and odds are told.
        IReadOnlyList<OptionForecast>? alone = tests.Earlier is { } earlier ? Forecast.Of(earlier.Alone, scenario, request.Demand with { AcceptedOdds = 1 }, request.Seed, coolDowns: false, cancel) : null;
        terminal.Out.Write(request.Json ? ForecastJson.Text(tests, scenario, request.Demand, forecasts, alone) : string.Join('\n', Lines(tests, scenario, request, forecasts, alone)) + "\n");
        terminal.Out.Flush();
        return request.Picture is { } path ? Draw(tests.Races, forecasts, scenario, request, path, cancel) : Exit.Done;
    }

    IEnumerable<string> Lines(TestsJudged tests, RaceScenario scenario, ForecastRequest request, IReadOnlyList<OptionForecast> forecasts, IReadOnlyList<OptionForecast>? alone)
    {
        DegreeWords degrees = new(request.Units);
        IReadOnlyList<string> earlier = tests.Earlier is { } days && alone is not null ? EarlierLines.Of(days, ForecastPage.Sentence(scenario, request.Demand, alone, degrees), request.Units) : [];
        return ForecastPage.Lines(tests.Races, scenario, request.Demand, forecasts, earlier, degrees, terminal.Width);
    }

    int Draw(RaceEvidence evidence, IReadOnlyList<OptionForecast> forecasts, RaceScenario scenario, ForecastRequest request, string path, CancellationToken cancel)
    {
        OptionForecast drawn = forecasts.FirstOrDefault(f => string.Equals(f.Option, request.Drawn, StringComparison.OrdinalIgnoreCase)) ?? forecasts.MinBy(f => f.OddsOfAny)!;
        int place = forecasts.ToList().IndexOf(drawn);
        RaceMap map = RaceMap.Of(evidence, scenario, request.Demand, place, request.Seed, cancel);
        return PictureFile.Drawn(() => ForecastPicture.Of(drawn, scenario, place, new PictureStyle(Units: request.Units), map, request.Demand.AcceptedOdds).Save(path), terminal);
    }
}
