namespace Coolproof.Evidence.Model;

/// <summary>Rise of the can of the typical run for one K/s of heat, and its adjoint. Keeps a workspace: one per density.</summary>
internal sealed class MeanLevelKernel(MeanLevel level)
{
    private const int Drive = 0, Roll = 1, Wait = 2;
    private readonly TwoNodeKernel _kernel = Kernel(level);
    private readonly TwoNodeAdjoint _adjoint = new(Kernel(level).Seconds.Length);
    private double _go, _end1, _end2, _halt1, _halt2, _rise;

    /// <summary>Log of the rise for one K/s.</summary>
    /// <param name="c">Constants of the motor.</param>
    /// <param name="logG">log conductance while driving, 1/s over core capacity.</param>
    /// <param name="rollRatio">log of rolling over driving conductance.</param>
    /// <param name="stoppedRatio">log of stopped over driving conductance.</param>
    public double LogRise(in Constants c, double logG, double rollRatio, double stoppedRatio)
    {
        TwoNodeKernel k = _kernel;
        double logGamma = logG + c.LogRho;
        (k.LogGamma[Drive], k.LogGamma[Roll], k.LogGamma[Wait]) = (logGamma, logGamma + rollRatio, logGamma + stoppedRatio);
        k.Forward(c.Kappa, c.Rho, c.Nu);
        double heat = 1 - c.Copper + c.Copper * level.Warm, w = Excess(c);
        _go = -c.Share * c.Slot * c.Copper * level.Warm;
        _end1 = k.E11[Drive] * _go + heat * k.F1[Drive];
        _end2 = k.E21[Drive] * _go + heat * k.F2[Drive];
        _halt1 = k.E11[Roll] * _end1 + k.E12[Roll] * _end2 + w * k.F1[Roll];
        _halt2 = k.E21[Roll] * _end1 + k.E22[Roll] * _end2 + w * k.F2[Roll];
        _rise = k.E21[Wait] * _halt1 + k.E22[Wait] * _halt2 + w * k.Decay[Roll] * k.F2[Wait];
        return Math.Log(_rise);
    }

    /// <summary>Adjoint of <see cref="LogRise"/> at its last point: adds to the constants' and returns those of the three logarithms.</summary>
    /// <param name="c">Constants of the motor.</param>
    /// <param name="bar">Adjoint of the log rise.</param>
    /// <param name="cBar">Adjoints of the constants.</param>
    public (double LogG, double RollRatio, double StoppedRatio) Backward(in Constants c, double bar, ref Constants cBar)
    {
        TwoNodeKernel k = _kernel;
        TwoNodeAdjoint a = _adjoint;
        double riseBar = bar / _rise, w = Excess(c), heat = 1 - c.Copper + c.Copper * level.Warm;
        (a.E21[Wait], a.E22[Wait], a.F2[Wait]) = (riseBar * _halt1, riseBar * _halt2, riseBar * w * k.Decay[Roll]);
        double halt1 = riseBar * k.E21[Wait], halt2 = riseBar * k.E22[Wait], wBar = riseBar * k.Decay[Roll] * k.F2[Wait];
        a.Decay[Roll] = riseBar * w * k.F2[Wait];
        Step(Roll, halt1, halt2, _end1, _end2, w);
        wBar += halt1 * k.F1[Roll] + halt2 * k.F2[Roll];
        double end1 = k.E11[Roll] * halt1 + k.E21[Roll] * halt2, end2 = k.E12[Roll] * halt1 + k.E22[Roll] * halt2;
        Step(Drive, end1, end2, _go, 0, heat);
        double goBar = k.E11[Drive] * end1 + k.E21[Drive] * end2, heatBar = k.F1[Drive] * end1 + k.F2[Drive] * end2;
        (double kappa, double rho, double nu) = k.Backward(c.Kappa, c.Rho, c.Nu, a);
        double sum = a.LogGamma[Drive] + a.LogGamma[Roll] + a.LogGamma[Wait];
        cBar.Kappa += kappa;
        cBar.Rho += rho + sum / c.Rho;
        cBar.Slot -= nu * c.Nu / c.Slot + goBar * c.Share * c.Copper * level.Warm;
        cBar.Share -= nu * c.Nu / c.Share + goBar * c.Slot * c.Copper * level.Warm;
        cBar.Copper += heatBar * (level.Warm - 1) + wBar * Hot - goBar * c.Share * c.Slot * level.Warm;
        return (sum, a.LogGamma[Roll], a.LogGamma[Wait]);
    }

    private double Hot => level.Warm + Priors.Alpha25 * Priors.TypicalCoreRise;

    // Warmth that the winding releases at the end of driving, K/s.
    private double Excess(in Constants c) => c.Copper * Hot;

    private void Step(int q, double bar1, double bar2, double x1, double x2, double w)
    {
        (_adjoint.E11[q], _adjoint.E12[q], _adjoint.E21[q], _adjoint.E22[q]) = (bar1 * x1, bar1 * x2, bar2 * x1, bar2 * x2);
        (_adjoint.F1[q], _adjoint.F2[q]) = (bar1 * w, bar2 * w);
    }

    private static TwoNodeKernel Kernel(MeanLevel level)
    {
        TwoNodeKernel k = new(3);
        (k.Seconds[Drive], k.Seconds[Roll], k.Seconds[Wait]) = (level.DriveS, level.RollInS, level.DelayS);
        (k.Releases[Roll], k.Releases[Wait]) = (1, 1);
        k.Feedback[Drive] = Priors.Alpha25 * level.CopperHeat;
        return k;
    }
}
