using System.CommandLine;
using Coolproof.Advice.CoolDowns;
using Coolproof.Screen;
using Coolproof.Words;

namespace Coolproof.Commands;

/// <summary>`coolproof cooldown` as it is typed.</summary>
internal static class CooldownCommand
{
    const double WithinK = 3, WaitS = 600, DriveS = 360, CooledByK = 8;

    /// <summary>The command.</summary>
    public static Command On(Terminal terminal)
    {
        var file = new Argument<string?>("FILE") { Arity = ArgumentArity.ZeroOrOne, Description = "A readings table of this motor (CSV); - reads it from standard input. Without one the doubt is wide." };
        var air = new QuantityOption("--air", "27C|81F", "Air in the shade. Otherwise the middle of the table, or 25C.", Typed.Air);
        var can = new QuantityOption("--can", "62C|144F", "The can as read soon after the halt. Otherwise as the drive is believed to leave it.", Typed.Body);
        var within = new QuantityOption("--within", "3K|5.4F", "How near to the air winding, laminations, rotor and can must come. Otherwise 3K.", Typed.Difference);
        var option = new Option<string?>("--option") { HelpName = "NAME", Description = "The option of the table that is fitted. Otherwise the first." };
        var noFan = new Option<bool>("--no-fan") { Description = "The option has no fan of its own." };
        var checks = GunChecksFile.Option();
        var looks = new Option<string[]>("--look") { HelpName = "5min=48C", Description = $"The can as read while it cools; may be given more than once. Narrows the promise: {CooldownPage.WhenToLook}." };
        var by = new WordOption("--by", "How it is cooled while it was looked at.", "shade", "own-fan", "pit-fan", "cooled-air");
        var cooled = new QuantityOption("--cooled-by", "8K|14F", "How much colder than the air cooled air is. Otherwise 8K.", Typed.Difference);
        var drive = new QuantityOption("--drive", "360s|6min|6:00", "The drive. Otherwise the middle of the table, or 360s.", Typed.Drive);
        var wait = new QuantityOption("--wait", "10min", "If the next run starts so soon after the halt: what it inherits. Otherwise 10min.", Typed.Stretch);
        var seed = QuantityOption.Whole("--random-seed", "The same question and seed give the same answer. Otherwise 1.", 0, int.MaxValue);
        var units = WordOption.Units("Degrees for people.");
        var json = new Option<bool>("--json") { Description = "Prints JSON, version 1 (docs/formats). Always in °C, K and minutes." };
        looks.Validators.Add(result =>
        {
            foreach (string text in result.GetValueOrDefault<string[]?>() ?? [])
                if (Look(text) is null) result.AddError($"--look {text}: expected a time and a temperature within {CoolDown.LongestMin}min, like 5min=48C");
        });
        var command = new Command("cooldown", "How long until the core, not only the can, is near the air.")
        {
            file, air.Option, can.Option, within.Option, option, noFan, checks, looks, by.Option, cooled.Option, drive.Option, wait.Option, seed.Option, units.Option, json,
        };
        command.Validators.Add(result =>
        {
            if (result.GetValue(file) is null && result.GetValue(checks) is not null) result.AddError("--gun-checks tells of the guns that took the readings of a table: give the table too");
        });
        command.SetAction((parsed, cancel) => Task.FromResult(new CoolingDown(terminal).Run(
            new CooldownRequest(
                parsed.GetValue(file) is { } table ? new(table, parsed.GetValue(checks)) : null, air.In(parsed), parsed.GetValue(option), drive.In(parsed), units.UnitIn(parsed), parsed.GetValue(json),
                new CoolDownQuestion(air.In(parsed) ?? 25, within.In(parsed) ?? WithinK, can.In(parsed))
                {
                    HasFan = !parsed.GetValue(noFan),
                    DriveS = drive.In(parsed) ?? DriveS,
                    CooledByK = cooled.In(parsed) ?? CooledByK,
                    WaitMin = Math.Min((wait.In(parsed) ?? WaitS) / 60, CoolDown.LongestMin),
                    Looks = [.. (parsed.GetValue(looks) ?? []).Select(text => Look(text)!.Value)],
                    LookedAtBy = by.In(parsed) switch { "own-fan" => CoolingBy.OwnFan, "pit-fan" => CoolingBy.PitFan, "cooled-air" => CoolingBy.CooledAir, _ => CoolingBy.Shade },
                    Seed = (long)(seed.In(parsed) ?? 1),
                }),
            cancel)));
        return command;
    }

    static CanLook? Look(string text) => text.Split('=') is [var time, var can] && Typed.Stretch(time, out double seconds) is null && Typed.Body(can, out double celsius) is null
        && seconds / 60 <= CoolDown.LongestMin ? new(seconds / 60, celsius) : null;
}
