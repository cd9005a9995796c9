using System.Runtime.CompilerServices;
using Coolproof.Evidence.Model;

namespace Coolproof.Evidence.Causes;

/// <summary>First readings of many runs that differ in their inputs only, by the density's own steps: drive, roll-in, stopped, and on with the fan off.</summary>
internal sealed class FirstReadings(int runs)
{
    private const int Drive = 0, Roll = 1, Stop = 2, Read = 3, Steps = 4;
    private readonly TwoNodeKernel _kernel = Kernel(runs);
    private readonly double[] _heat = new double[runs], _copper = new double[runs], _meanCopper = new double[runs];

    /// <summary>Fills what each run's first reading is expected to show, its mean aim loss taken off, °C.</summary>
    /// <param name="motor">The motor.</param>
    /// <param name="logRolling">Log of rolling over driving conductance.</param>
    /// <param name="inputs">The runs.</param>
    /// <param name="readC">Receives the readings.</param>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void Fill(in Constants motor, double logRolling, ReadOnlySpan<RunInputs> inputs, Span<double> readC)
    {
        for (int i = 0; i < inputs.Length; i++)
            Prepare(motor, logRolling, inputs[i], i);
        _kernel.Forward(motor.Kappa, motor.Rho, motor.Nu);
        for (int i = 0; i < inputs.Length; i++)
            readC[i] = Shown(motor, inputs[i], i);
    }

    private void Prepare(in Constants motor, double logRolling, in RunInputs x, int i)
    {
        double meanHeat = Math.Exp(x.DayHeat + x.Driver + x.Surface + x.Gearing + x.Timing + x.LogDriven);
        _heat[i] = meanHeat * Math.Exp(x.Load);
        (_meanCopper[i], _copper[i]) = (motor.CopperHeat(meanHeat), motor.CopperHeat(_heat[i]));
        double logGamma = x.OptionConductance + x.Mounting + x.DayConductance + motor.LogRho;
        bool fanStops = !double.IsNaN(x.FanStopsS) && !double.IsNaN(x.Still);
        int at = Steps * i;
        _kernel.Feedback[at + Drive] = Priors.Alpha25 * _meanCopper[i];
        Step(at + Drive, x.DriveS, logGamma);
        Step(at + Roll, x.RollInS, logGamma + logRolling);
        Step(at + Stop, fanStops ? Math.Min(x.FanStopsS, x.DelayS) : 0, logGamma + x.Stopped);
        Step(at + Read, fanStops ? Math.Max(x.DelayS - x.FanStopsS, 0) : x.DelayS, logGamma + (fanStops ? x.Still : x.Stopped));
    }

    private void Step(int at, double seconds, double logGamma) => (_kernel.Seconds[at], _kernel.LogGamma[at]) = (seconds, logGamma);

    private double Shown(in Constants motor, in RunInputs x, int i)
    {
        double warm = 1 + Priors.Alpha25 * (x.AirC - 25), copper = _copper[i];
        double drive = (1 - motor.Copper) * _heat[i] + copper * warm + Priors.Alpha25 * (copper - _meanCopper[i]) * Priors.TypicalCoreRise;
        double core = x.Core - motor.Share * motor.Slot * copper * (warm + Priors.Alpha25 * x.Core), can = x.Can;
        int at = Steps * i;
        Next(at + Drive, drive, ref core, ref can);
        double excess = motor.Slot * copper * (warm + Priors.Alpha25 * core);
        for (int step = Roll; step < Steps; step++)
        {
            Next(at + step, excess * motor.PerSlot, ref core, ref can);
            excess *= _kernel.Decay[at + step];
        }
        double body = x.Spot * can;
        return x.AirC + x.Gain * body + x.OffsetK - x.Loss * Math.Sqrt(body * body + 1) + x.UndoneK;
    }

    private void Next(int at, double w, ref double core, ref double can)
    {
        (double x1, double x2) = (core, can);
        core = _kernel.E11[at] * x1 + _kernel.E12[at] * x2 + w * _kernel.F1[at];
        can = _kernel.E21[at] * x1 + _kernel.E22[at] * x2 + w * _kernel.F2[at];
    }

    private static TwoNodeKernel Kernel(int runs)
    {
        TwoNodeKernel kernel = new(Steps * runs);
        for (int i = 0; i < runs; i++)
            (kernel.Releases[Steps * i + Roll], kernel.Releases[Steps * i + Stop], kernel.Releases[Steps * i + Read]) = (1, 1, 1);
        return kernel;
    }
}
