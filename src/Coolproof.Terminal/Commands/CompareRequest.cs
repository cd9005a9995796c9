using Coolproof.Notebook;

namespace Coolproof.Commands;

/// <summary>What `coolproof compare` was asked.</summary>
/// <param name="File">Path of the readings table; "-" for standard input.</param>
/// <param name="AmbientC">Fair air, °C; null: the median noted.</param>
/// <param name="DriveS">Fair seconds of driving; null: the median.</param>
/// <param name="SameWithinK">Half-width of the "same" band, K.</param>
/// <param name="Seed">Random seed.</param>
/// <param name="Picture">Where to draw the verdict; null: nowhere.</param>
/// <param name="Units">Degrees for people.</param>
/// <param name="Json">Whether to print JSON.</param>
/// <param name="Details">Whether to print everything.</param>
internal sealed record CompareRequest(
    string File, double? AmbientC, double? DriveS, double SameWithinK, long Seed, string? Picture, TemperatureUnitChoice Units, bool Json, bool Details)
{
    /// <summary>Paths of readings tables of earlier days.</summary>
    public IReadOnlyList<string> Earlier { get; init; } = [];

    /// <summary>Path of checks of the guns; null: none.</summary>
    public string? GunChecks { get; init; }
}
