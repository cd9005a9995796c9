namespace Coolproof.Thermal;

/// <summary>How far a gun can be trusted on a surface.</summary>
public enum GunTrust
{
    /// <summary>Shoot it: it radiates nearly as a black surface does.</summary>
    Shoot,

    /// <summary>A correction helps, and leaves some kelvin of doubt.</summary>
    Correct,

    /// <summary>It mirrors more than it radiates: no correction is worth much; put matt tape on it.</summary>
    Tape,
}

/// <summary>A kind of surface on or about a motor, with the emissivities that tables give for it.</summary>
/// <param name="Key">Its short name, for a command line and an address.</param>
/// <param name="Words">What it is.</param>
/// <param name="Low">Lowest emissivity.</param>
/// <param name="High">Highest emissivity.</param>
/// <param name="Source">Where the figures stand.</param>
public sealed record SurfaceEmissivity(string Key, string Words, double Low, double High, string Source)
{
    const string Handbook = "handbook tables (two infrared handbooks of the US Office of Naval Research; a 1999 technical report, 8 to 14 µm at 70 °C; typical 8 to 14 µm columns)";
    const double Matt = 0.9, Mirror = 0.6;

    /// <summary>All of them, the surest first. Ranges span the rows of the reference table for the kind (tests compare each).</summary>
    public static IReadOnlyList<SurfaceEmissivity> All { get; } =
    [
        new("tape", "matt black tape", 0.94, 0.97, "a thermography publication: vinyl tape 0.96 below about 80 to 105 °C; ± 0.01 to 0.02 from roll to roll (common practice, no source)"),
        new("paint", "matt paint", 0.94, 0.98, Handbook),
        new("lacquer", "gloss or coloured lacquer", 0.92, 0.94, Handbook),
        new("anodised-matt", "anodised aluminium, dull", 0.95, 0.97, Handbook),
        new("anodised", "anodised aluminium, unknown finish", 0.55, 0.97, Handbook),
        new("water", "still water", 0.95, 0.97, Handbook),
        new("steel-oxidised", "oxidised or rusty steel", 0.5, 0.9, Handbook),
        new("aluminium-cast", "cast or blasted aluminium", 0.36, 0.56, "a 1999 technical report, 8 to 14 µm at 70 °C: 0.46; ± 0.1 about a single figure (common practice, no source)"),
        new("aluminium-oxidised", "oxidised aluminium", 0.2, 0.4, Handbook),
        new("aluminium-rough", "roughened aluminium, brushed fins", 0.06, 0.3, Handbook),
        new("steel-polished", "polished or plated steel can", 0.05, 0.2, Handbook),
        new("aluminium-polished", "polished aluminium", 0.02, 0.1, Handbook),
        new("copper-oxidised", "oxidised copper", 0.4, 0.88, Handbook),
        new("copper-polished", "bright copper or brass", 0.01, 0.1, Handbook),
    ];

    /// <summary>The one of a short name; null when there is none.</summary>
    public static SurfaceEmissivity? Find(string key) => All.FirstOrDefault(s => string.Equals(s.Key, key, StringComparison.OrdinalIgnoreCase));

    /// <summary>Middle of the range.</summary>
    public double Middle => (Low + High) / 2;

    /// <summary>Standard uncertainty of a rectangular distribution over the range (JCGM 100, 4.3.7).</summary>
    public double StandardUncertainty => (High - Low) / 2 / Math.Sqrt(3);

    /// <summary>What a gun can be trusted with.</summary>
    public GunTrust Trust => Low >= Matt ? GunTrust.Shoot : Middle >= Mirror ? GunTrust.Correct : GunTrust.Tape;
}
