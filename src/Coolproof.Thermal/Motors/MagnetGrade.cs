namespace Coolproof.Thermal;

/// <summary>
/// Grade of a sintered NdFeB magnet by its suffix. Limits and coefficients from public grade tables where read (none to SH, AH), else from memory (UH, EH; IEC
/// 60404-8-1 from memory). The limit is a guide tied to the load line.
/// </summary>
/// <param name="Suffix">Suffix of the grade; empty for the plain and N grades.</param>
/// <param name="LimitC">Highest working temperature, °C.</param>
/// <param name="PerKelvin">Reversible coefficient of remanence, 1/K (20 to 100 °C).</param>
public sealed record MagnetGrade(string Suffix, double LimitC, double PerKelvin)
{
    /// <summary>All grades, coolest first.</summary>
    public static IReadOnlyList<MagnetGrade> All { get; } =
    [
        new("", 80, -0.0012), new("M", 100, -0.0012), new("H", 120, -0.0011), new("SH", 150, -0.0010), new("UH", 180, -0.0010),
        new("EH", 200, -0.0010), new("AH", 230, -0.0010),
    ];

    /// <summary>The grade of a suffix, or null.</summary>
    public static MagnetGrade? Find(string suffix) =>
        All.FirstOrDefault(g => g.Suffix.Equals(suffix.Trim(), StringComparison.OrdinalIgnoreCase));

    /// <summary>Strength of the magnet relative to 20 °C, for temperatures below the limit.</summary>
    /// <param name="temperatureC">Temperature of the magnet, °C.</param>
    public double RelativeStrength(double temperatureC) => 1 + PerKelvin * (temperatureC - 20);
}
