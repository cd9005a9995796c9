namespace Coolproof.Thermal;

/// <summary>Thermal class of an insulation (IEC 60085; read from secondary pages, 90 and 250 from memory).</summary>
/// <param name="Letter">Letter of the class; empty for 250.</param>
/// <param name="LimitC">Highest temperature for which it is made, °C, also the class's number.</param>
public sealed record ThermalClass(string Letter, double LimitC)
{
    /// <summary>All classes, coolest first.</summary>
    public static IReadOnlyList<ThermalClass> All { get; } =
        [new("Y", 90), new("A", 105), new("E", 120), new("B", 130), new("F", 155), new("H", 180), new("N", 200), new("R", 220), new("", 250)];

    /// <summary>The class of a letter, or null.</summary>
    public static ThermalClass? Find(string letter) =>
        All.FirstOrDefault(c => c.Letter.Length > 0 && c.Letter.Equals(letter.Trim(), StringComparison.OrdinalIgnoreCase));

    /// <summary>Life relative to life at the class temperature by the rule that 10 K halve it (rule of thumb, secondary pages).</summary>
    /// <param name="temperatureC">Steady temperature of the insulation, °C.</param>
    public double RelativeLife(double temperatureC) => Math.Pow(2, (LimitC - temperatureC) / 10);
}
