using Coolproof.Evidence.Forecasts;
using Coolproof.Evidence.Model;

namespace Coolproof.Evidence;

/// <summary>One motor driven once at fair conditions with a conductance that need not be of any option driven yet.</summary>
public static class FairPeak
{
    /// <summary>Can and mean winding as hard driving ends, °C: started at the air, no roll-in, no deviations.</summary>
    /// <param name="motor">The motor.</param>
    /// <param name="conductancePerS">Can to air over core capacity, 1/s.</param>
    /// <param name="fair">Air and length.</param>
    public static (double CanC, double WindingC) Of(MotorDraw motor, double conductancePerS, FairConditions fair) => FairDrive.Peak(
        new Constants { Rho = motor.CoreOverCan, Kappa = motor.CoreToCanPerS, Share = motor.WindingShare, Slot = motor.SlotS, Copper = motor.CopperShare, LogHeat = Math.Log(motor.HeatKPerS) },
        Math.Log(conductancePerS), fair.AmbientC, fair.DriveS);

    /// <summary>The motors of a judged table's draws, with what is believed of each option.</summary>
    /// <param name="evidence">What a judged table says.</param>
    public static IReadOnlyList<MotorDraw> Motors(RaceEvidence evidence) => [.. evidence.Draws.Select(d => new MotorDraw(
        d.CoreOverCan, d.CoreToCanPerS, d.WindingShare, d.SlotS, d.CopperShare, Math.Exp(d.LogHeat), Math.Exp(d.Options[0].LogStoppedFanOn),
        [.. d.Options.Select(o => Math.Exp(o.LogConductance))]))];
}
