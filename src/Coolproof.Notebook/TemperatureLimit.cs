namespace Coolproof.Notebook;

/// <summary>What a limit holds for.</summary>
public enum LimitOn
{
    /// <summary>The can's surface.</summary>
    Can,
    /// <summary>The winding's insulation.</summary>
    Winding,
    /// <summary>The magnets.</summary>
    Magnet,
    /// <summary>The speed controller.</summary>
    Controller
}

/// <summary>A temperature that must not be passed, as the person, the maker or a standard gives it.</summary>
public sealed record TemperatureLimit
{
    /// <summary>A limit.</summary>
    /// <param name="on">What it holds for.</param>
    /// <param name="celsius">The limit, °C; 30 to 350.</param>
    /// <param name="source">Where it comes from, such as "own" or "insulation class F".</param>
    /// <exception cref="ArgumentOutOfRangeException">A limit out of its range.</exception>
    /// <exception cref="ArgumentException">A blank source.</exception>
    public TemperatureLimit(LimitOn on, double celsius, string source = "own")
    {
        if (celsius is not (>= 30 and <= 350)) throw new ArgumentOutOfRangeException(nameof(celsius), celsius, "A limit lies between 30 °C and 350 °C.");
        ArgumentException.ThrowIfNullOrWhiteSpace(source);
        On = on;
        Celsius = celsius;
        Source = source;
    }

    /// <summary>What it holds for.</summary>
    public LimitOn On { get; }

    /// <summary>The limit, °C.</summary>
    public double Celsius { get; }

    /// <summary>Where it comes from.</summary>
    public string Source { get; }
}
