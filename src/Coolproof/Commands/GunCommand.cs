using System.CommandLine;
using Coolproof.Notebook;
using Coolproof.Screen;

namespace Coolproof.Commands;

/// <summary>`coolproof gun …`: what a temperature gun's number means, and whether the gun can be trusted.</summary>
internal static class GunCommand
{
    const double UsualSetting = 0.95, UsualAirC = 22;

    /// <summary>The command.</summary>
    public static Command On(Terminal terminal) => new("gun", "What a temperature gun's number means: a shot put right, a gun checked, its spot, surfaces, probes.")
    {
        Correct(terminal), Check(terminal), Spot(terminal), Surfaces(terminal), Probe(terminal),
    };

    static Command Correct(Terminal terminal)
    {
        var read = new Argument<string>("READING") { Description = "What the gun shows, like 62C or 144F." };
        var surface = new Option<string?>("--surface") { HelpName = "KEY", Description = "What was shot, by the first column of `coolproof gun surfaces`. Otherwise tape." };
        var emissivity = new QuantityOption("--emissivity", "0.3", "Emissivity of what was shot, where you know it better.", (string text, out double value) => Typed.Figure(text, "", 0.01, 1, out value));
        var set = Setting();
        var around = new QuantityOption("--surroundings", "25C|77F", "What the surface mirrors: the air, the pit roof. Otherwise 25C.", Typed.Air);
        var off = new QuantityOption("--off", "20%", "Share of the spot beside what was to be read (coolproof gun spot). Otherwise none.", (string text, out double value) => Typed.Figure(text.TrimEnd('%'), "", 0, 90, out value));
        var (units, json) = (WordOption.Units("Degrees for people."), Json());
        var command = new Command("correct", "Puts one shot right for emissivity, surroundings and spot, with its doubt.") { read, surface, emissivity.Option, set.Option, around.Option, off.Option, units.Option, json };
        command.SetAction((parsed, _) => Task.FromResult(new GunAsking(terminal, units.UnitIn(parsed), parsed.GetValue(json)).Correct(
            parsed.GetValue(read)!, parsed.GetValue(surface), emissivity.In(parsed), set.In(parsed) ?? UsualSetting, around.In(parsed) ?? 25, (off.In(parsed) ?? 0) / 100)));
        return command;
    }

    static Command Check(Terminal terminal)
    {
        var ice = Shots("--ice", "0.9C,0.7C,1.0C", "Shots at stirred ice and water, by commas.");
        var boiling = Shots("--boiling", "95.1C", "Shots at boiling water, from aside, steam blown off.");
        var mug = Shots("--mug", "62.1C,61.9C@60.0C", "Shots at a matt-taped metal mug of stirred warm water, @ what the probe in it shows.");
        var tape = Shots("--beside-tape", "64C@62C", "Shots at the tape on the warm can, @ what a probe beside it shows.");
        var altitude = new QuantityOption("--altitude", "300m", "Altitude of the boiling water.", (string text, out double value) => Typed.Figure(text, "m", -430, 6000, out value));
        var pressure = new QuantityOption("--pressure", "987hPa", "The day's air pressure there, as a barometer shows it, not reduced to sea level.", (string text, out double value) => Typed.Figure(text, "hPa", 450, 1100, out value));
        var set = Setting();
        var air = new QuantityOption("--air", "22C|72F", "Air at the check. Otherwise 22C.", Typed.Air);
        var name = new Option<string?>("--gun") { HelpName = "NAME", Description = "Name of the gun, as in the readings table. Otherwise gun." };
        var keep = new Option<string?>("--keep") { HelpName = "FILE.json", Description = "Also writes the check to a file for `coolproof compare --gun-checks`." };
        var seed = QuantityOption.Whole("--random-seed", "Seed of the Monte Carlo method. Otherwise 1.", 0, int.MaxValue);
        var (units, json) = (WordOption.Units("Degrees for people."), Json());
        var command = new Command("check", "Gain and offset of a gun, with their doubt, by JCGM 100 and JCGM 101.") { ice, boiling, mug, tape, altitude.Option, pressure.Option, set.Option, air.Option, name, keep, seed.Option, units.Option, json };
        command.SetAction((parsed, _) => Task.FromResult(new GunChecking(terminal, units.UnitIn(parsed), parsed.GetValue(json)).Run(new(
            [(CheckedAgainst.Ice, parsed.GetValue(ice)), (CheckedAgainst.Boiling, parsed.GetValue(boiling)), (CheckedAgainst.ProbeInWater, parsed.GetValue(mug)), (CheckedAgainst.BesideTape, parsed.GetValue(tape))],
            altitude.In(parsed), pressure.In(parsed) * 100, set.In(parsed), air.In(parsed) ?? UsualAirC, parsed.GetValue(name) ?? "gun", parsed.GetValue(keep), (long)(seed.In(parsed) ?? 1)))));
        return command;
    }

    static Command Spot(Terminal terminal)
    {
        var ratio = new QuantityOption("--ratio", "12", "Distance to spot size, as printed on the gun (12 for 12:1).", (string text, out double value) => Typed.Figure(text.EndsWith(":1", StringComparison.Ordinal) ? text[..^2] : text, "", 0.5, 100, out value));
        var distance = new QuantityOption("--distance", "150mm", "From the gun to the motor.", (string text, out double value) => Typed.Figure(text, "mm", 1, 5000, out value));
        var target = new QuantityOption("--target", "12mm", "Width of what is to be read: the band of the can that every option leaves free, or the tape.", (string text, out double value) => Typed.Figure(text, "mm", 1, 500, out value));
        var smallest = new QuantityOption("--smallest", "13mm", "The spot close up, where the gun's sheet states one. Otherwise none.", (string text, out double value) => Typed.Figure(text, "mm", 0, 200, out value));
        var shape = new WordOption("--shape", "Whether it is a band across the can or a round piece.", "band", "round");
        var picture = PictureFile.Option("Also draws the spot on the can at this distance, half of it and twice it.");
        var json = Json();
        var command = new Command("spot", "How large the gun's spot is, and how much of it lies beside the can.") { ratio.Option, distance.Option, target.Option, smallest.Option, shape.Option, picture, json };
        command.SetAction((parsed, _) => Task.FromResult(new SpotAsking(terminal, parsed.GetValue(json)).Run(
            ratio.In(parsed), distance.In(parsed), target.In(parsed), smallest.In(parsed) ?? 0, shape.In(parsed) == "band", parsed.GetValue(picture))));
        return command;
    }

    static Command Surfaces(Terminal terminal)
    {
        var json = Json();
        var command = new Command("surfaces", "Emissivities of the surfaces about a motor, and what to do with each.") { json };
        command.SetAction((parsed, _) => Task.FromResult(new GunAsking(terminal, TemperatureUnitChoice.Celsius, parsed.GetValue(json)).Surfaces()));
        return command;
    }

    static Command Probe(Terminal terminal)
    {
        var kind = new Argument<string>("KIND") { Description = "k or t for a thermocouple, pt100 for a platinum probe." };
        var value = new Argument<string>("VALUE") { Description = "Like 2.436mV or 123.24ohm; or like 60C, to be turned the other way." };
        var junction = new QuantityOption("--junction", "25C|77F", "Where a thermocouple's wires meet the meter. Otherwise 0C (a meter that allows for it shows degrees already).", Typed.Air);
        var (units, json) = (WordOption.Units("Degrees for people."), Json());
        var command = new Command("probe", "Thermocouples K and T by ITS-90 and Pt100 by IEC 60751, both ways.") { kind, value, junction.Option, units.Option, json };
        command.SetAction((parsed, _) => Task.FromResult(new ProbeAsking(terminal, units.UnitIn(parsed), parsed.GetValue(json)).Run(parsed.GetValue(kind)!, parsed.GetValue(value)!, junction.In(parsed))));
        return command;
    }

    static QuantityOption Setting() => new("--set", "0.95", "The gun's own emissivity setting. Otherwise 0.95, as most are fixed at.", (string text, out double value) => Typed.Figure(text, "", 0.05, 1, out value));

    static Option<bool> Json() => new("--json") { Description = "Prints JSON, version 1 (docs/formats). Always in °C and K." };

    static Option<string?> Shots(string name, string example, string description)
    {
        var option = new Option<string?>(name) { HelpName = example, Description = description };
        option.Validators.Add(result =>
        {
            if (result.GetValueOrDefault<string?>() is { } text && TypedShots.Wrong(text, name is "--mug" or "--beside-tape") is { } wrong) result.AddError($"{name} {text}: {wrong}");
        });
        return option;
    }
}
