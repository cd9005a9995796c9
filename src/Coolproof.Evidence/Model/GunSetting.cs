namespace Coolproof.Evidence.Model;

/// <summary>Undoes a gun's own emissivity setting.</summary>
internal static class GunSetting
{
    /// <summary>The setting that the gain's prior stands for: what most guns are fixed at (common practice, no source).</summary>
    public const double Usual = 0.95;

    /// <summary>What the gun would have shown, °C, at the usual setting, had it been there; unchanged where the setting is unknown.</summary>
    public static double Undo(double readC, double? setting, double airC) =>
        setting is not { } set || Math.Abs(set - Usual) < 1e-9 ? readC : Convert(readC, set, airC);

    private static double Convert(double readC, double setting, double airC) => throw new InvalidOperationException($"{readC} {setting} {airC}");
}
