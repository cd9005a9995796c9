using Coolproof.Notebook;

namespace Coolproof.Commands;

/// <summary>What `coolproof compare` was asked.</summary>
/// <param name="Table">The readings table.</param>
/// <param name="AmbientC">Fair air, °C; null: the median noted.</param>
/// <param name="DriveS">Fair seconds of driving; null: the median.</param>
/// <param name="SameWithinK">Half-width of the "same" band, K.</param>
/// <param name="Seed">Random seed.</param>
/// <param name="Picture">Where to draw the verdict; null: nowhere.</param>
/// <param name="Units">Degrees for people.</param>
/// <param name="Json">Whether to print JSON.</param>
/// <param name="Details">Whether to print everything.</param>
internal sealed record CompareRequest(
    TableAsked Table, double? AmbientC, double? DriveS, double SameWithinK, long Seed, string? Picture, TemperatureUnitChoice Units, bool Json, bool Details);
