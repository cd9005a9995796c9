using Coolproof.Thermal.FullModel;

namespace Coolproof.Rehearsal;

/// <summary>Where can and winding truly peak, °C, at the end of hard driving.</summary>
/// <param name="Option">Name of the option.</param>
/// <param name="CanC">Can, true surface temperature, °C.</param>
/// <param name="WindingC">Mean winding temperature, °C.</param>
public readonly record struct TruePeak(string Option, double CanC, double WindingC);

/// <summary>A run driven again at fair conditions with its own true heat and mounting: what perfect correction would leave.</summary>
/// <param name="Run">The run's truth.</param>
/// <param name="CanC">Can at the end of hard driving, °C.</param>
/// <param name="WindingC">Winding then, °C.</param>
public readonly record struct RunFloor(RunTruth Run, double CanC, double WindingC);

/// <summary>What is true of a simulated day, and what it would have shown at fair conditions.</summary>
public sealed partial class Truth
{
    readonly World _world;
    readonly double _fairLogHeat;

    internal Truth(World world, IReadOnlyList<TrueOption> options, IReadOnlyList<RunTruth> runs, Hyperparameters hyper, double fairLogHeat)
    {
        (_world, Options, Runs, Hyperparameters, _fairLogHeat) = (world, options, runs, hyper, fairLogHeat);
    }

    /// <summary>Options in the order of the settings.</summary>
    public IReadOnlyList<TrueOption> Options { get; }

    /// <summary>Runs in the order of time, void ones too.</summary>
    public IReadOnlyList<RunTruth> Runs { get; }

    /// <summary>What an oracle may be told.</summary>
    public Hyperparameters Hyperparameters { get; }

    /// <summary>The motor as it truly is.</summary>
    public MotorBody Motor => _world.Body;

    /// <summary>Mass of the motor, kg.</summary>
    public double MotorMassKg => _world.MassScale * MotorBody.ReferenceMassKg;

    /// <summary>
    /// True peaks at fair conditions, by the full model: all bodies start at air; run, day, mounting and trend deviations 0; heat
    /// exp(mean log heat) with the most frequent driver; even load; no roll-in.
    /// </summary>
    /// <param name="ambientC">Fair air, °C.</param>
    /// <param name="driveS">Fair seconds of hard driving.</param>
    /// <returns>One for each option, in order.</returns>
    public IReadOnlyList<TruePeak> Peaks(double ambientC, double driveS) =>
    [
        .. Options.Select(option =>
        {
            double[] t = FairRun.Peak(_world, option.Cooling, _fairLogHeat, ambientC, driveS);
            return new TruePeak(option.Name, t[(int)Node.Can], t[(int)Node.Winding]);
        }),
    ];

    /// <summary>
    /// Each run that counts driven again at fair conditions (start at air, even load, no roll-in) with its own true mean heat, which holds
    /// driver, day, trend and run, and its own true mounting and day's conductance. Averaged over an option's runs, the floor of any correction.
    /// </summary>
    /// <param name="ambientC">Fair air, °C.</param>
    /// <param name="driveS">Fair seconds of hard driving.</param>
    public IReadOnlyList<RunFloor> Floors(double ambientC, double driveS) =>
    [
        .. Runs.Where(r => r.CountsInRanking).Select(run =>
        {
            TrueOption option = Options.First(o => o.Name == run.Option);
            double pace = Evening.Pace(run.LogLoad);
            double[] t = FairRun.Peak(_world, option.Cooling.Times(Math.Exp(run.LogConductance)), run.LogHeat, ambientC, driveS, pace);
            return new RunFloor(run, t[(int)Node.Can], t[(int)Node.Winding]);
        }),
    ];
}
