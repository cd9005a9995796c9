using Coolproof.Notebook;

namespace Coolproof.Pictures.Tests;

/// <summary>Mounts of every kind, made up.</summary>
static class MountSheets
{
    static readonly MountFan TwentyFive = new(0.025, 0.013, 0.010, 4.5 / 3600, 30, 1.2), Thirty = new(0.030, 0.015, 0.010, 8.0 / 3600, 45, 1), Forty = new(0.040, 0.022, 0.015, 16.0 / 3600, 90, 1);

    public static MountSheet All() => Sheet(
        new() { Name = "bare can" },
        new() { Name = "clamp with a 25 mm fan", Fans = [TwentyFive], GapM = 0.008, ShellFromCanM = 0.024, RimOpen = 0.7, FinsM2 = 6e-3, ClampCovers = 0.35 },
        new() { Name = "twin 30 mm fans", Fans = [Thirty, Thirty], GapM = 0.006, ShellFromCanM = 0.030, ShellHoleM2 = 6e-4, GrilleOpen = 0.6, AsideM = 0.004 },
        new() { Name = "two in a row, tilted", Fans = [TwentyFive, TwentyFive], InRow = true, GapM = 0.012, AngleDeg = 25 },
        new() { Name = "shrouded 40 mm fan", Fans = [Forty], GapM = 0.006, Shroud = new(0.003, 0.8, 0.8e-4), ShellFromCanM = 0.036 },
        new() { Name = "nose-scoop duct", GapM = 0.020, Duct = new(6e-4, 3e-4, 0.15, 1, true) });

    public static MountSheet Sheet(params Mount[] mounts) => new(28, 0.6, 0, 6, new(0.036, 0.052, 0.165, 70), mounts);
}
