using System.CommandLine;
using System.Globalization;
using Coolproof.Advice.Instruments;
using Coolproof.Json;
using Coolproof.Screen;
using Coolproof.Words;

namespace Coolproof.Commands;

/// <summary>`coolproof winding`: the copper's own temperature by its resistance, brought back to the stop.</summary>
internal static class WindingCommand
{
    const double LeastOhm = 0.5, MostOhm = 5000, UsualDriveS = 360, UsualColdK = 0.5;

    /// <summary>The command.</summary>
    public static Command On(Terminal terminal)
    {
        var cold = Parts("--cold", "50.0mohm@23C", "Resistance between two tabs with the motor as cold as the air, @ that air.");
        var hot = new Option<string[]>("--hot") { HelpName = "61.2mohm@12s", Description = "Resistance of the same two tabs after the stop, @ seconds from power off. May come several times, in the order of time.", AllowMultipleArgumentsPerToken = false };
        hot.Validators.Add(result =>
        {
            foreach (var text in result.GetValueOrDefault<string[]>() ?? [])
                if (Hot(text, out _) is { } wrong) result.AddError($"--hot {text}: {wrong}");
        });
        var meter = new WordOption("--meter", "How the meter is wired.", "four-wire", "two-wire");
        var step = new QuantityOption("--step", "0.1mohm", "Step of the meter's display. Otherwise 0.1mohm.", (string text, out double value) => Typed.Figure(text, "mohm", 0.0001, 100, out value));
        var brushed = new Option<bool>("--brushed") { Description = "The motor has brushes." };
        var air = new QuantityOption("--air", "28C|82F", "Air at the run. Otherwise the cold temperature.", Typed.Air);
        var drive = new QuantityOption("--drive", "360s|6min", "How long was driven before the stop. Otherwise 6min.", Typed.Drive);
        var fan = new WordOption("--fan-after-stop", "Whether the fan ran on.", "unknown", "on", "off");
        var seed = QuantityOption.Whole("--random-seed", "Seed. Otherwise 1.", 0, int.MaxValue);
        var (units, json) = (WordOption.Units("Degrees for people."), new Option<bool>("--json") { Description = "Prints JSON, version 1 (docs/formats). Always in °C and K." });
        var command = new Command("winding", "Temperature of the winding by its resistance (IEC 60034-1), brought back to the stop.") { cold, hot, meter.Option, step.Option, brushed, air.Option, drive.Option, fan.Option, seed.Option, units.Option, json };
        command.SetAction((parsed, _) =>
        {
            ResistanceMeter by = new(step.In(parsed) ?? 0.1);
            if (by.Refusal(parsed.GetValue(brushed), meter.In(parsed) == "four-wire") is { } refused) return Refuse(terminal, refused);
            if (parsed.GetValue(cold) is not { } coldText) return Refuse(terminal, "--cold is needed: the same two tabs, the motor as cold as the air, like --cold 50.0mohm@23C. A hot value without a cold one tells nothing.");
            if (parsed.GetValue(hot) is not { Length: > 0 } hotTexts) return Refuse(terminal, "--hot is needed: the same two tabs after the stop, like --hot 61.2mohm@12s.");
            if (Cold(coldText, out var coldValue) is { } wrong) return Refuse(terminal, wrong);
            HotResistance[] hots = [.. hotTexts.Select(text => Hot(text, out var value) is null ? value! : throw new InvalidOperationException(text))];
            if (hots.Zip(hots.Skip(1)).Any(pair => pair.First.AtS >= pair.Second.AtS)) return Refuse(terminal, "--hot values must come in the order of time, the seconds rising.");
            if (hots.FirstOrDefault(h => h.Milliohm < 0.9 * coldValue.Milliohm || h.Milliohm > 2.2 * coldValue.Milliohm) is { } odd)
                return Refuse(terminal, $"{odd.Milliohm.ToString(CultureInfo.InvariantCulture)} mΩ against {coldValue.Milliohm.ToString(CultureInfo.InvariantCulture)} mΩ cold is no temperature of a winding that lives. Look for another pair of tabs, a lead in the way, or a rotor that turned.");
            WindingByResistance[] read = [.. hots.Select(h => WindingByResistance.Of(h, coldValue.Milliohm, coldValue.C, UsualColdK, by, (long)(seed.In(parsed) ?? 1)))];
            return Tell(terminal, coldValue, read, air.In(parsed) ?? coldValue.C, drive.In(parsed) ?? UsualDriveS, fan.In(parsed) switch { "on" => true, "off" => false, _ => null }, (long)(seed.In(parsed) ?? 1),
                parsed.GetValue(json) ? null : new PageSettings(new DegreeWords(units.UnitIn(parsed)), terminal.Width, terminal.Ink));
        });
        return command;
    }

    static Task<int> Tell(Terminal terminal, (double Milliohm, double C) cold, WindingByResistance[] read, double airC, double driveS, bool? fanOn, long seed, PageSettings? page)
    {
        BackToTheStop? stop = null;
        if (read.All(r => r.Hot.AtS is not null))
        {
            double shared = Math.Sqrt(Math.Max(read[0].StandardUncertaintyK * read[0].StandardUncertaintyK - read[0].OwnK * read[0].OwnK, 0));
            stop = BackToTheStop.Of([.. read.Select(r => new LateReading(r.Hot.AtS!.Value, r.C, r.OwnK))], shared, airC, driveS, fanOn, seed);
        }
        terminal.Out.Write(page is null ? WindingJson.Text(cold.Milliohm, cold.C, read, stop) : string.Join('\n', WindingPage.Lines(read, stop, page)) + "\n");
        return Task.FromResult(Exit.Done);
    }

    static Option<string?> Parts(string name, string example, string description)
    {
        var option = new Option<string?>(name) { HelpName = example, Description = description };
        option.Validators.Add(result =>
        {
            if (result.GetValueOrDefault<string?>() is { } text && Cold(text, out _) is { } wrong) result.AddError($"{name} {text}: {wrong}");
        });
        return option;
    }

    static string? Cold(string text, out (double Milliohm, double C) value)
    {
        value = default;
        if (text.Split('@') is not [var ohms, var air]) return "expected a resistance, @ and the air's temperature, like 50.0mohm@23C";
        return Typed.Figure(ohms, "mohm", LeastOhm, MostOhm, out value.Milliohm) ?? Typed.Air(air, out value.C);
    }

    static string? Hot(string text, out HotResistance? value)
    {
        value = null;
        var parts = text.Split('@');
        if (parts.Length > 2) return "expected a resistance, and perhaps @ seconds from power off, like 61.2mohm@12s";
        if (Typed.Figure(parts[0], "mohm", LeastOhm, MostOhm, out var ohm) is { } wrong) return wrong;
        double? at = null;
        if (parts.Length == 2)
        {
            if (Typed.Figure(parts[1], "s", 0, 600, out var seconds) is { } late) return late;
            at = seconds;
        }
        value = new(ohm, at);
        return null;
    }

    static Task<int> Refuse(Terminal terminal, string words)
    {
        terminal.Error.WriteLine($"coolproof winding: {words}");
        return Task.FromResult(Exit.BadInput);
    }
}
