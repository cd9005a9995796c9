using Coolproof.Thermal.FullModel;

namespace Coolproof.Rehearsal;

/// <summary>What a run truly put into its first reading. Of two runs, any mixture can be driven again.</summary>
/// <param name="AirC">Air, °C.</param>
/// <param name="StartOverAirK">Winding, laminations, rotor, can, endbell and the shell's air over the air at go, K.</param>
/// <param name="DriveS">Hard driving, s.</param>
/// <param name="LogDriver">Deviation of log heat of the driver.</param>
/// <param name="LogDay">Log heat without driver and load: mean, day and trend.</param>
/// <param name="LogDayConductance">Deviation of log conductance common to the day.</param>
/// <param name="LogLoad">Deviation of log heat of this run alone.</param>
/// <param name="Option">Name of the option.</param>
/// <param name="LogMounting">Deviation of log conductance of this refit.</param>
/// <param name="RollInS">Roll-in, s.</param>
/// <param name="PowerOffS">From halt to the fan's stop, s; null where it runs on.</param>
/// <param name="DelayS">From halt to the first reading, s.</param>
public sealed record TrueInputs(
    double AirC, IReadOnlyList<double> StartOverAirK, double DriveS, double LogDriver, double LogDay, double LogDayConductance, double LogLoad, string Option, double LogMounting,
    double RollInS, double? PowerOffS, double DelayS)
{
    /// <summary>Those of a run.</summary>
    public static TrueInputs Of(RunTruth run) => new(
        run.AirC, [.. run.StartC.Select(t => t - run.AirC)], run.DriveS, run.LogDriver, run.LogHeat - run.LogDriver - run.LogLoad, run.LogConductance - run.LogMounting, run.LogLoad, run.Option,
        run.LogMounting, run.RollInS, run.PowerOffS, run.DelaysS[0]);
}

public sealed partial class Truth
{
    // In the middle of its range: when exactly the shell comes off moves a reading by hundredths of a kelvin.
    static readonly double ShellOffS = (TruthRanges.ShellOffS.Low + TruthRanges.ShellOffS.High) / 2;

    /// <summary>What the gun is expected to show at the first reading, its mean aim loss taken off and no scatter, by the full model at even load, °C.</summary>
    public double FirstReadingC(TrueInputs run)
    {
        TrueOption option = Options.First(o => o.Name == run.Option);
        CoolingOption cooling = option.Cooling.Times(Math.Exp(run.LogDayConductance + run.LogMounting));
        double[] t = [.. run.StartOverAirK.Select(k => run.AirC + k)];
        double logHeat = run.LogDay + run.LogDriver + run.LogLoad, pace = Evening.Pace(run.LogLoad);
        FastPath.Advance(_world.Body, cooling, FairRun.Driving(_world, logHeat, run.AirC, pace), run.DriveS, t);
        FastPath.Advance(_world.Body, cooling, FairRun.RollingIn(_world, logHeat, run.AirC, pace), run.RollInS, t);
        double powerOff = run.PowerOffS ?? double.PositiveInfinity, at = 0;
        foreach (double next in new[] { ShellOffS, powerOff, run.DelayS }.Where(e => e <= run.DelayS).Order())
        {
            FastPath.Advance(_world.Body, cooling, Evening.Standing(_world, option, cooling, run.AirC, at < powerOff, 0, at >= ShellOffS), next - at, t);
            at = next;
        }
        double seen = Hyperparameters.GunGain - Hyperparameters.AimLossMean;
        return run.AirC + seen * (t[(int)Node.Can] - run.AirC) + Hyperparameters.GunOffsetK;
    }
}
