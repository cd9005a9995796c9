using Coolproof.Thermal;

namespace Coolproof.Evidence.Model;

/// <summary>Undoes a gun's own emissivity setting.</summary>
internal static class GunSetting
{
    /// <summary>The setting that the gain's prior stands for: what most guns are fixed at (common practice, no source).</summary>
    public const double Usual = 0.95;

    /// <summary>
    /// What the gun would have shown, °C, at the usual setting, had it been there (band radiance by Planck's law, the gun at the air's temperature);
    /// unchanged where the setting is unknown or no temperature fits.
    /// </summary>
    public static double Undo(double readC, double? setting, double airC)
    {
        if (setting is not { } set || Math.Abs(set - Usual) < 1e-9)
            return readC;
        double undone = Gun.Usual.AtSettingC(readC, set, Usual, airC);
        return double.IsFinite(undone) ? undone : readC;
    }
}
