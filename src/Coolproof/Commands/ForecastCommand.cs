using System.CommandLine;
using Coolproof.Evidence.Forecasts;
using Coolproof.Notebook;
using Coolproof.Screen;

namespace Coolproof.Commands;

/// <summary>`coolproof forecast FILE` as it is typed.</summary>
internal static class ForecastCommand
{
    const double BreakS = 1200;

    /// <summary>The command.</summary>
    public static Command On(Terminal terminal)
    {
        var file = new Argument<string>("FILE") { Description = "The readings table of the tests (CSV); - reads it from standard input." };
        var earlier = EarlierFiles.Option("A readings table of earlier days of the same motor: the forecast is of all days together, at this one's driver, surface and gearing.");
        var checks = GunChecksFile.Option();
        var air = new QuantityOption("--air", "38C|100F", "Air in the shade on race day. Otherwise the middle of the tests.", Typed.Air);
        var race = new QuantityOption("--race", "8min|480s|8:00", "Length of the race. Otherwise the middle of the tests.", Typed.Drive);
        var races = QuantityOption.Whole("--races", "Races in a row. Otherwise 1.", 1, RaceScenario.MostRaces);
        var pause = new QuantityOption("--break", "20min", "From the halt of one race to the start of the next. Otherwise 20min.", Typed.Stretch);
        var by = new WordOption("--by", "How it cools in the breaks.", "shade", "own-fan", "pit-fan");
        var altitude = QuantityOption.Whole("--altitude", "Altitude of the race in metres. Otherwise 0.", -400, 5000);
        var tested = QuantityOption.Whole("--tested-at", "Altitude of the tests in metres. Otherwise that of the race.", -400, 5000);
        var sky = new WordOption("--sky", "Sky over the race.", "as-tested", "sun", "cloud", "dusk", "indoor");
        var wind = new WordOption("--wind", "Wind at the race.", "as-tested", "calm", "light", "strong");
        var heat = QuantityOption.Whole("--heat", "Heat against the tests in percent, as by gearing or pace. Otherwise 100.", 30, 300);
        var limits = new LimitOptions();
        var seed = QuantityOption.Whole("--random-seed", "The same table, question and seed give the same answer. Otherwise 1.", 0, int.MaxValue);
        var units = WordOption.Units("Degrees for people.");
        var picture = PictureFile.Option("Also draws can and winding of one option over the day to a file.");
        var drawn = new Option<string?>("--option") { HelpName = "NAME", Description = "The option that is drawn. Otherwise the one least likely to pass a limit." };
        var json = new Option<bool>("--json") { Description = "Prints JSON, version 1 (docs/formats). Always in °C and minutes." };
        var command = new Command("forecast", "How warm can, winding and magnet get on race day, and how likely they pass a limit.")
        {
            file, earlier, checks, air.Option, race.Option, races.Option, pause.Option, by.Option, altitude.Option, tested.Option, sky.Option, wind.Option, heat.Option, limits.Can.Option, limits.Insulation, limits.Magnet,
            limits.Odds.Option, seed.Option, picture, drawn, units.Option, json,
        };
        command.SetAction((parsed, cancel) => Task.FromResult(new Forecasting(terminal).Run(
            new ForecastRequest(
                new(parsed.GetValue(file)!, parsed.GetValue(checks)) { Earlier = parsed.GetValue(earlier) ?? [] }, air.In(parsed), race.In(parsed),
                new RaceScenario(0, 0)
                {
                    Races = (int)(races.In(parsed) ?? 1),
                    BreakS = pause.In(parsed) ?? BreakS,
                    Cooling = by.In(parsed) switch { "own-fan" => BreakCooling.OwnFan, "pit-fan" => BreakCooling.PitFan, _ => BreakCooling.Shade },
                    AltitudeM = altitude.In(parsed) ?? 0,
                    TestedAtM = tested.In(parsed) ?? altitude.In(parsed) ?? 0,
                    Sky = sky.In(parsed) switch { "sun" => Sky.Sun, "cloud" => Sky.Cloud, "dusk" => Sky.Dusk, "indoor" => Sky.Indoor, _ => null },
                    Wind = wind.In(parsed) switch { "calm" => Wind.Calm, "light" => Wind.Light, "strong" => Wind.Strong, _ => null },
                    HeatFactor = (heat.In(parsed) ?? 100) / 100,
                },
                limits.In(parsed),
                (long)(seed.In(parsed) ?? 1), units.UnitIn(parsed), parsed.GetValue(json))
            { Picture = parsed.GetValue(picture), Drawn = parsed.GetValue(drawn) },
            cancel)));
        return command;
    }
}
