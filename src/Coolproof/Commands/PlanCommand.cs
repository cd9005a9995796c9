using System.CommandLine;
using Coolproof.Advice.Orders;
using Coolproof.Rehearsal;
using Coolproof.Screen;

namespace Coolproof.Commands;

/// <summary>`coolproof plan` as it is typed: the order of a day's runs, how many are enough, and what to do next once it has begun.</summary>
internal static class PlanCommand
{
    const int MostOptions = 12, MostDays = 2000;

    // Defaults of a club evening (common practice, no source).
    const double LengthS = 4 * 3600, DriveS = 360, CoolS = 20 * 60, ReadS = 120, SwapS = 240, PackCoolS = 900, ChargeS = 2700, SameWithinK = 2;
    const int Packs = 4, Chargers = 2, FromMin = 10 * 60, Days = 200;

    /// <summary>The command.</summary>
    public static Command On(Terminal terminal)
    {
        var options = new Option<string?>("--options") { HelpName = "N|NAME,NAME,...", Description = "How many cooling options, or their names. Otherwise the six of the demo." };
        var length = new QuantityOption("--length", "3h|180min", "From the first go to the last halt: hours, daylight. Otherwise 4h.", Typed.Stretch);
        var from = new Option<string?>("--from") { HelpName = "HH:MM", Description = "Clock time of the first go. Otherwise 10:00." };
        var drive = new QuantityOption("--drive", "360s|6min|6:00", "A drive. Otherwise 360s.", Typed.Drive);
        var cool = new QuantityOption("--cool", "20min", "Cool-down between runs; `coolproof cooldown` says how long. Otherwise 20min.", Typed.Stretch);
        var swap = new QuantityOption("--swap", "4min", "To change from one option to another. Otherwise 4min.", Typed.Stretch);
        var packs = QuantityOption.Whole("--packs", "Charged packs at the start. Otherwise 4.", 1, 50);
        var chargers = QuantityOption.Whole("--chargers", "Chargers at the track; 0: each pack is driven once. Otherwise 2.", 0, 50);
        var charging = new QuantityOption("--charging", "45min", "To charge a pack. Otherwise 45min, after 15min of cooling.", Typed.Stretch);
        var last = new Option<string?>("--last") { HelpName = "NAME,NAME", Description = "Options that can't be undone, such as a cut shell: driven after all others." };
        var reference = new Option<string?>("--reference") { HelpName = "NAME", Description = "An option to be driven first and last; ties evenings together." };
        var spot = new Option<string?>("--spot") { HelpName = "TEXT", Description = "The one spot that every option leaves free, for the check list." };
        var days = QuantityOption.Whole("--days", "Simulated days for how many rounds are enough; 0: none. Otherwise 200.", 0, MostDays);
        var known = new Option<string?>("--known") { HelpName = "FILE", Description = "A readings table of earlier days: what is known of these options already." };
        var soFar = new Option<string?>("--so-far") { HelpName = "FILE", Description = "Today's readings table: go on or stop, and which option next. No new order is made." };
        var checks = GunChecksFile.Option();
        var rain = new QuantityOption("--rain-in", "45min", "With --so-far: the day ends so soon from now.", Typed.Stretch);
        var same = new QuantityOption("--same-within", "2K|3.6F", "Options this close count as the same. Otherwise 2K.", Typed.Difference);
        var seed = QuantityOption.Whole("--random-seed", "The same question and seed give the same plan. Otherwise 1.", 0, int.MaxValue);
        var picture = PictureFile.Option("Also draws the timeline to a file.");
        var units = WordOption.Units("Degrees for people.");
        var json = new Option<bool>("--json") { Description = "Prints JSON, version 1 (docs/formats). Always in K and s." };
        from.Validators.Add(result =>
        {
            if (result.GetValueOrDefault<string?>() is { } text && Typed.MinuteOfDay(text) is null) result.AddError($"--from {text}: expected a clock time like 16:30");
        });
        var command = new Command("plan", "Plans a test day: the order of runs, when, how many are enough; and steers it while it runs.")
        {
            options, length.Option, from, drive.Option, cool.Option, swap.Option, packs.Option, chargers.Option, charging.Option, last, reference, spot,
            days.Option, known, soFar, checks, rain.Option, same.Option, seed.Option, picture, units.Option, json,
        };
        command.Validators.Add(result =>
        {
            if (result.GetValue(checks) is not null && (result.GetValue(known) ?? result.GetValue(soFar)) is null) result.AddError("--gun-checks tells of the guns that took the readings of a table: give it by --known or --so-far");
            string? text = result.GetValue(options);
            var listed = text is null ? RehearseCommand.Demo : RehearseCommand.Named(text, out _);
            if (listed is null || listed.Count > MostOptions)
            {
                result.AddError($"--options {text}: expected 1 to {MostOptions}, or names with commas between them, each once");
                return;
            }
            foreach (var (name, asked) in new[] { ("--last", result.GetValue(last)), ("--reference", result.GetValue(reference)) })
                foreach (string one in Split(asked))
                    if (Place(listed, one) < 0) result.AddError($"{name} {one}: expected one of the options: {string.Join(", ", listed.Select(o => o.Name))}");
            if (Split(result.GetValue(reference)).Any(r => Split(result.GetValue(last)).Contains(r, StringComparer.OrdinalIgnoreCase)))
                result.AddError($"--reference {result.GetValue(reference)}: it is driven first, and --last says it can't be undone; choose another");
            if (Split(result.GetValue(last)).Distinct(StringComparer.OrdinalIgnoreCase).Count() == listed.Count && listed.Count > 0)
                result.AddError($"--last {result.GetValue(last)}: at least one option must be left to drive first");
        });
        command.SetAction((parsed, cancel) =>
        {
            var listed = parsed.GetValue(options) is { } text ? RehearseCommand.Named(text, out _)! : RehearseCommand.Demo;
            double swapS = swap.In(parsed) ?? SwapS;
            double[,] swaps = new double[listed.Count, listed.Count];
            for (int a = 0; a < listed.Count; a++)
                for (int b = 0; b < listed.Count; b++)
                    swaps[a, b] = a == b ? 0 : swapS;
            var limits = new DayLimits(
                length.In(parsed) ?? LengthS, drive.In(parsed) ?? DriveS, cool.In(parsed) ?? CoolS, ReadS, swaps, (int)(packs.In(parsed) ?? Packs),
                (int)(chargers.In(parsed) ?? Chargers), PackCoolS, charging.In(parsed) ?? ChargeS, [.. Split(parsed.GetValue(last)).Select(o => Place(listed, o)).Distinct()],
                Split(parsed.GetValue(reference)).Select(o => (int?)Place(listed, o)).FirstOrDefault());
            return Task.FromResult(new Planning(terminal).Run(
                new PlanRequest(
                    listed, limits, Typed.MinuteOfDay(parsed.GetValue(from) ?? "") ?? FromMin, parsed.GetValue(spot), (int)(days.In(parsed) ?? Days), parsed.GetValue(known),
                    parsed.GetValue(soFar), rain.In(parsed), same.In(parsed) ?? SameWithinK, (long)(seed.In(parsed) ?? 1), parsed.GetValue(picture),
                    units.UnitIn(parsed), parsed.GetValue(json))
                { GunChecks = parsed.GetValue(checks) },
                cancel));
        });
        return command;
    }

    static string[] Split(string? names) => names?.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries) ?? [];

    static int Place(IReadOnlyList<RehearsalOption> options, string name) => options.ToList().FindIndex(o => string.Equals(o.Name, name, StringComparison.OrdinalIgnoreCase));
}
