using Coolproof.Json;
using Coolproof.Notebook;
using Coolproof.Screen;
using Coolproof.Thermal;
using Coolproof.Words;

namespace Coolproof.Commands;

/// <summary>`coolproof gun probe`: thermocouples and platinum probes, both ways.</summary>
internal sealed class ProbeAsking(Terminal terminal, TemperatureUnitChoice unit, bool json)
{
    /// <summary>Turns a voltage or a resistance into a temperature, or the other way.</summary>
    /// <returns>The exit code.</returns>
    public int Run(string kind, string value, double? junctionC)
    {
        var name = kind.ToLowerInvariant();
        if (name is not ("k" or "t" or "pt100")) return Refuse($"KIND {kind}: expected k, t or pt100.");
        if (name == "pt100" && junctionC is not null) return Refuse("--junction is a thermocouple's; a Pt100 has none. Take it out.");
        var couple = name == "k" ? Thermocouple.K : Thermocouple.T;
        var electric = name == "pt100" ? "ohm" : "mV";
        double celsius, shown;
        if (Typed.Degrees(value, out celsius))
        {
            var (least, most) = name == "pt100" ? (PlatinumProbe.LeastC, PlatinumProbe.MostC) : (Thermocouple.LeastC, couple.MostC);
            if (!(celsius >= least && celsius <= most)) return Refuse($"VALUE {value}: expected {least:0}C to {most:0}C.");
            shown = name == "pt100" ? PlatinumProbe.Ohm(celsius) : (couple.Microvolt(celsius) - couple.Microvolt(junctionC ?? 0)) / 1000;
        }
        else
        {
            if (Typed.Figure(value, electric, -10_000, 10_000, out shown) is not null) return Refuse($"VALUE {value}: expected a number with its unit, like {(name == "pt100" ? "123.24ohm" : "2.436mV")} or 60C.");
            celsius = name == "pt100" ? PlatinumProbe.TemperatureC(shown) : couple.TemperatureC(1000 * shown, junctionC ?? 0);
            if (double.IsNaN(celsius)) return Refuse($"VALUE {value}: no temperature of a {Named(name)} gives it. Look at the unit and at the wires' sign.");
        }
        if (json) terminal.Out.Write(GunJson.Probe(name, celsius, shown, name == "pt100" ? null : junctionC ?? 0));
        else terminal.Out.Write(string.Join('\n', Said(name, celsius, shown, electric, junctionC)) + "\n");
        return Exit.Done;
    }

    IEnumerable<string> Said(string name, double celsius, double shown, string electric, double? junctionC)
    {
        DegreeWords degrees = new(unit);
        yield return name == "pt100"
            ? $"{DegreeWords.Number(shown, 2)} Ω is {degrees.Say(celsius, 2)} (Pt100, IEC 60751). Class A ± {degrees.SayDifference(PlatinumProbe.ClassAToleranceK(celsius), 2)}, class B ± {degrees.SayDifference(PlatinumProbe.ClassBToleranceK(celsius), 2)}."
            : $"{DegreeWords.Number(shown, 3)} {electric} is {degrees.Say(celsius, 2)} ({Named(name)}, ITS-90; wires meet the meter at {degrees.Say(junctionC ?? 0, 1)}).";
    }

    static string Named(string name) => name == "pt100" ? "Pt100" : $"type {name.ToUpperInvariant()} thermocouple";

    int Refuse(string words)
    {
        terminal.Error.WriteLine($"coolproof gun probe: {Cells.Clean(words)}");
        return Exit.BadInput;
    }
}
