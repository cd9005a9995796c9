namespace Coolproof.Pictures;

/// <summary>Celsius or Fahrenheit. A temperature and a difference of temperatures convert differently, so each has its own door.</summary>
public sealed class Degrees
{
    private readonly double perKelvin;
    private readonly double atFreezing;

    private Degrees(string symbol, double perKelvin, double atFreezing)
    {
        Symbol = symbol;
        this.perKelvin = perKelvin;
        this.atFreezing = atFreezing;
    }

    /// <summary>Degrees Celsius.</summary>
    public static Degrees Celsius { get; } = new("°C", 1, 0);

    /// <summary>Degrees Fahrenheit: 1.8 a kelvin, 32 at the freezing of water (NIST SP 811, appendix B.8).</summary>
    public static Degrees Fahrenheit { get; } = new("°F", 1.8, 32);

    /// <summary>°C or °F, for temperatures and differences.</summary>
    public string Symbol { get; }

    /// <summary>A temperature.</summary>
    /// <param name="celsius">°C.</param>
    public double Temperature(double celsius) => celsius * perKelvin + atFreezing;

    /// <summary>A difference of temperatures.</summary>
    /// <param name="kelvin">K.</param>
    public double Difference(double kelvin) => kelvin * perKelvin;
}
