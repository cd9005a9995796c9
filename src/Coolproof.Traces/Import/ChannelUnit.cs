namespace Coolproof.Traces.Import;

/// <summary>What a channel measures.</summary>
public enum Measured
{
    /// <summary>Something that no unit tells.</summary>
    Other,
    /// <summary>Temperature; its own unit is °C.</summary>
    Temperature,
    /// <summary>Current; A.</summary>
    Current,
    /// <summary>Voltage; V.</summary>
    Voltage,
    /// <summary>Speed over the ground; m/s.</summary>
    Speed,
    /// <summary>Turns per minute; 1/min.</summary>
    Turning,
    /// <summary>Share of full (throttle, duty); %.</summary>
    Share,
    /// <summary>Pressure; bar.</summary>
    Pressure,
    /// <summary>Power; W.</summary>
    Power,
}

/// <summary>A unit in which a logger writes a channel: own value = written value × <see cref="Scale"/> + <see cref="Shift"/>.</summary>
/// <param name="Name">The unit as it is shown after conversion: °C, A, V, m/s, 1/min, %, bar, W, or as written.</param>
/// <param name="Measures">What it measures.</param>
/// <param name="Scale">Factor from written to own.</param>
/// <param name="Shift">Added after it.</param>
/// <param name="Least">Least own value that can be right.</param>
/// <param name="Most">Greatest own value that can be right. Limits of both ends: what sensors of these vehicles can meet (common practice, no source).</param>
public sealed record ChannelUnit(string Name, Measured Measures, double Scale, double Shift, double Least, double Most)
{
    /// <summary>A channel without a unit: anything finite may be right.</summary>
    public static ChannelUnit None { get; } = new("", Measured.Other, 1, 0, double.NegativeInfinity, double.PositiveInfinity);

    static readonly ChannelUnit Celsius = new("°C", Measured.Temperature, 1, 0, -60, 400);
    static readonly ChannelUnit Ampere = new("A", Measured.Current, 1, 0, -1000, 1000);
    static readonly ChannelUnit Volt = new("V", Measured.Voltage, 1, 0, -100, 100);
    static readonly ChannelUnit MetreASecond = new("m/s", Measured.Speed, 1, 0, -10, 100);
    static readonly ChannelUnit Turns = new("1/min", Measured.Turning, 1, 0, -200_000, 200_000);
    static readonly ChannelUnit Percent = new("%", Measured.Share, 1, 0, -150, 150);
    static readonly ChannelUnit Bar = new("bar", Measured.Pressure, 1, 0, -1, 20);
    static readonly ChannelUnit Watt = new("W", Measured.Power, 1, 0, -10_000, 10_000);

    /// <summary>The unit that a word means; null when it is none that is known.</summary>
    public static ChannelUnit? Of(string word)
    {
        ArgumentNullException.ThrowIfNull(word);
        return word.Trim().TrimStart('°', 'º', '˚').Replace("deg", "", StringComparison.OrdinalIgnoreCase).Trim().ToLowerInvariant() switch
        {
            "c" or "℃" or "celsius" => Celsius,
            "f" or "℉" or "fahrenheit" => Celsius with { Scale = 1 / 1.8, Shift = -32 / 1.8 },
            "k" or "kelvin" => Celsius with { Shift = -273.15 },
            "a" or "amp" or "amps" or "ampere" => Ampere,
            "ma" => Ampere with { Scale = 1e-3 },
            "v" or "volt" or "volts" => Volt,
            "mv" => Volt with { Scale = 1e-3 },
            "m/s" or "mps" => MetreASecond,
            "km/h" or "kmh" or "kph" or "kmph" => MetreASecond with { Scale = 1 / 3.6 },
            "mph" => MetreASecond with { Scale = 0.44704 }, // 1609.344 m an hour, exact
            "rpm" or "1/min" or "/min" or "min-1" or "u/min" or "r/min" => Turns,
            "krpm" => Turns with { Scale = 1e3 },
            "1/s" or "rps" => Turns with { Scale = 60 },
            "%" or "pct" or "percent" => Percent,
            "bar" => Bar,
            "kpa" => Bar with { Scale = 1e-2 },
            "psi" => Bar with { Scale = 0.0689475729 }, // pound-force a square inch, NIST SP 811, B.8
            "w" or "watt" or "watts" => Watt,
            "kw" => Watt with { Scale = 1e3 },
            _ => null,
        };
    }

    /// <summary>The unit that a channel's name suggests, where neither it nor a row of units says one; null when none.</summary>
    public static ChannelUnit? Suggested(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        string word = name.ToLowerInvariant();
        bool Has(params ReadOnlySpan<string> parts)
        {
            foreach (string part in parts)
                if (word.Contains(part, StringComparison.Ordinal)) return true;
            return false;
        }

        return Has("rpm") ? Turns : Has("temp", "_tc", "thermo") ? Celsius : Has("current", "amp") ? Ampere : Has("volt") ? Volt : Has("throttle", "duty") ? Percent : null;
    }

    /// <summary>Own value of a written one.</summary>
    public double Own(double written) => (written * Scale) + Shift;

    /// <summary>Least and greatest written value that can be right.</summary>
    public (double Least, double Most) WrittenLimits() => ((Least - Shift) / Scale, (Most - Shift) / Scale);
}
