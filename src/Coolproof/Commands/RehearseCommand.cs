using System.CommandLine;
using System.Globalization;
using Coolproof.Rehearsal;
using Coolproof.Screen;

namespace Coolproof.Commands;

/// <summary>`coolproof rehearse` as it is typed: a made-up test day, to learn on and to test with.</summary>
internal static class RehearseCommand
{
    const int MostOptions = 40;
    const double DriftK = 4;

    /// <summary>The command.</summary>
    public static Command On(Terminal terminal)
    {
        var options = new Option<string?>("--options")
        {
            HelpName = "N|NAME,NAME,...",
            Description = "How many cooling options, or their names. Otherwise the six of the demo.",
        };
        var runs = QuantityOption.Whole("--runs", "Runs of each option an evening. Otherwise 2.", 1, 20);
        var readings = QuantityOption.Whole("--readings", "Readings after each run. Otherwise 3.", 1, 20);
        var evenings = QuantityOption.Whole("--evenings", "Evenings, a week apart. Otherwise 1.", 1, 50);
        var order = new WordOption("--order", "Each round in a new order, or all in the same.", "shuffled", "fixed");
        var weather = new WordOption("--weather", "What the air does over the evening.", "cooling", "steady", "warming");
        var hands = new WordOption("--hands", "How well the gun is used.", "good", "bad");
        var air = new QuantityOption("--air", "30C|86F", "Air at the first run. Otherwise drawn by chance.", Typed.Air);
        var drive = new QuantityOption("--drive", "360s|6min|6:00", "Length of a run. Otherwise 360s.", Typed.Drive);
        var winding = new Option<bool>("--winding") { Description = "Notes the winding's resistance beside each reading, as by a four-wire meter on leads left soldered." };
        var seed = QuantityOption.Whole("--random-seed", "The same options and seed give the same day. Otherwise 1.", 0, int.MaxValue);
        var units = WordOption.Units("Degrees of the table.");
        var place = new Option<string?>("--out")
        {
            HelpName = "FILE.csv",
            Description = "Writes the readings table here, and the truth beside it in FILE.truth.json. Otherwise the table goes to standard output.",
        };
        place.Validators.Add(result =>
        {
            if (result.GetValueOrDefault<string?>() is { } path && RehearsalPlace.Wrong(path) is { } wrong) result.AddError($"--out {path}: {wrong}");
        });
        options.Validators.Add(result =>
        {
            if (result.GetValueOrDefault<string?>() is { } text && Named(text, out var wrong) is null) result.AddError($"--options {text}: {wrong}");
        });
        var command = new Command("rehearse", "Makes up a test day: invented options, runs and readings by simulation, and the truth behind them.")
        {
            options, runs.Option, readings.Option, evenings.Option, order.Option, weather.Option, hands.Option, air.Option, drive.Option, winding, seed.Option,
            units.Option, place,
        };
        command.SetAction(parsed =>
        {
            var nights = (int)(evenings.In(parsed) ?? 1);
            var cooled = parsed.GetValue(options) is { } text ? Named(text, out _)! : Demo;
            var settings = new RehearsalSettings((long)(seed.In(parsed) ?? 1), cooled, (int)(runs.In(parsed) ?? 2))
            {
                ReadingsPerRun = (int)(readings.In(parsed) ?? 3),
                Evenings = nights,
                Order = order.In(parsed) == "fixed" ? RunOrder.Fixed : RunOrder.Shuffled,
                Hands = hands.In(parsed) == "bad" ? Hands.Bad : Hands.Good,
                AirDriftK = weather.In(parsed) switch { "cooling" => -DriftK, "warming" => DriftK, _ => 0 },
                AirFromC = air.In(parsed) is { } celsius ? [.. Enumerable.Repeat(celsius, nights)] : null,
                DriveS = drive.In(parsed) ?? 360,
                WindingMeasured = parsed.GetValue(winding),
            };
            return new Rehearsing(terminal).Run(settings, parsed.GetValue(place), units.UnitIn(parsed));
        });
        return command;
    }

    /// <summary>The six options of the demo, all made up.</summary>
    internal static IReadOnlyList<RehearsalOption> Demo { get; } =
    [
        new("bare can", HasFan: false), new("clip-on finned clamp", HasFan: false), new("clamp with a 25 mm fan"), new("nose-scoop duct", HasFan: false),
        new("twin 30 mm fans in a printed duct"), new("rear blower"),
    ];

    /// <summary>Options by their number or their names; null where neither is understood.</summary>
    internal static IReadOnlyList<RehearsalOption>? Named(string text, out string wrong)
    {
        wrong = $"expected 1 to {MostOptions}, or names with commas between them, each once";
        if (int.TryParse(text, NumberStyles.Integer, CultureInfo.InvariantCulture, out var count))
            return count is < 1 or > MostOptions ? null : [.. Enumerable.Range(0, count).Select(Numbered)];
        var names = text.Split(',', StringSplitOptions.TrimEntries);
        if (names.Length > MostOptions || names.Any(name => name.Length == 0) || names.Distinct(StringComparer.OrdinalIgnoreCase).Count() < names.Length) return null;
        return [.. names.Select(name => new RehearsalOption(name))];
    }

    static RehearsalOption Numbered(int i) => i < Demo.Count ? Demo[i] : new RehearsalOption($"trial {i + 1 - Demo.Count}");
}
